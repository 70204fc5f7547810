using Halfsplit.Bench.Answers;
using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Xunit;

namespace Halfsplit.Bench.Tests;

/// <summary>What an answer says, for tests.</summary>
internal static class Said
{
    private static readonly TextCatalog Texts = new(Language.English, BenchTexts.Source, DiagnosisTexts.Source, CircuitTexts.Source);

    public static string Text(Message message) => Texts.Say(message);

    /// <summary>The result of an aid whose inputs are good.</summary>
    public static T Good<T>(Outcome<T> outcome)
        where T : class
    {
        Assert.True(outcome.IsGood, string.Join('\n', outcome.Problems.Select(Text)));
        return outcome.Result!;
    }

    /// <summary>The one thing that is wrong with the inputs; it must say both ends of the range.</summary>
    public static void Refused<T>(Outcome<T> outcome, string low, string high)
        where T : class
    {
        var problem = Text(Assert.Single(outcome.Problems));
        Assert.Contains(low, problem, StringComparison.Ordinal);
        Assert.Contains(high, problem, StringComparison.Ordinal);
    }

    public static Measure Line(Answer answer, string name, string about = "") =>
        Assert.Single(answer.Lines, l => l.Name == name && l.About == about).Measure!;
}
