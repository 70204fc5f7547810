using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Jobs.Sessions;

/// <summary>
/// The one word of each group that suits what is looked at or listened to: a pump runs, a lamp is bright. The others of a
/// group are taken too.
/// </summary>
public static class OfferedWords
{
    /// <summary>One word per group, in the order of the groups.</summary>
    public static ImmutableArray<AnswerWord> Of(Circuit circuit, Check check)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(check);
        var suited = !check.Subject.IsOfALoad() ? [] : circuit.Find(check.Probe.About!) switch
        {
            Lamp or Led => (AnswerWord[])[AnswerWord.Bright, AnswerWord.Dim, AnswerWord.Dark],
            Motor or Starter => [AnswerWord.Runs, AnswerWord.RunsSlowly, AnswerWord.Silent],
            _ => [AnswerWord.Works, AnswerWord.Weak, AnswerWord.Dead],
        };
        return [.. check.Answers.Select(group => group.FirstOrDefault(suited.Contains) ?? group[0])];
    }

    /// <summary>The suited word of the group that a word belongs to; the word itself where it belongs to none.</summary>
    public static AnswerWord For(Circuit circuit, Check check, AnswerWord word)
    {
        var group = check.GroupOf(word);
        return group < 0 ? word : Of(circuit, check)[group];
    }
}
