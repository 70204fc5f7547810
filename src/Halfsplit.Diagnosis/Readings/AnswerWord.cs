using System.Collections.Immutable;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>
/// An observation that is a word and not a number. Job files store the <see cref="Id"/>, which never changes its
/// meaning; what people type for it, in any language, is in <see cref="AnswerWords"/>.
/// </summary>
public sealed record AnswerWord
{
    public static readonly AnswerWord Beeps = new("beeps");
    public static readonly AnswerWord NoBeep = new("no-beep");
    public static readonly AnswerWord Clicks = new("clicks");
    public static readonly AnswerWord Silent = new("silent");
    public static readonly AnswerWord Bright = new("bright");
    public static readonly AnswerWord Dim = new("dim");
    public static readonly AnswerWord Dark = new("dark");
    public static readonly AnswerWord Runs = new("runs");
    public static readonly AnswerWord RunsSlowly = new("runs-slowly");
    public static readonly AnswerWord Hums = new("hums");
    public static readonly AnswerWord Hot = new("hot");
    public static readonly AnswerWord Warm = new("warm");
    public static readonly AnswerWord Cool = new("cool");
    public static readonly AnswerWord Jumps = new("jumps");
    public static readonly AnswerWord Steady = new("steady");
    public static readonly AnswerWord Blown = new("blown");
    public static readonly AnswerWord Whole = new("whole");
    public static readonly AnswerWord Works = new("works");
    public static readonly AnswerWord Weak = new("weak");
    public static readonly AnswerWord Dead = new("dead");
    public static readonly AnswerWord Tight = new("tight");
    public static readonly AnswerWord Loose = new("loose");
    public static readonly AnswerWord Corroded = new("corroded");
    public static readonly AnswerWord Burnt = new("burnt");
    public static readonly AnswerWord Commanded = new("commanded");
    public static readonly AnswerWord NotCommanded = new("not-commanded");
    public static readonly AnswerWord CodeStored = new("code-stored");
    public static readonly AnswerWord NoCode = new("no-code");
    public static readonly AnswerWord Cured = new("cured");
    public static readonly AnswerWord NotCured = new("not-cured");
    public static readonly AnswerWord Passes = new("passes");
    public static readonly AnswerWord Fails = new("fails");
    public static readonly AnswerWord Done = new("done");
    public static readonly AnswerWord NotSure = new("not-sure");

    private AnswerWord(string id) => Id = id;

    /// <summary>Every word there is, in the order in which they are offered.</summary>
    public static ImmutableArray<AnswerWord> All { get; } =
    [
        Beeps, NoBeep, Clicks, Silent, Bright, Dim, Dark, Runs, RunsSlowly, Hums, Hot, Warm, Cool, Jumps, Steady,
        Blown, Whole, Works, Weak, Dead, Tight, Loose, Corroded, Burnt, Commanded, NotCommanded, CodeStored, NoCode,
        Cured, NotCured, Passes, Fails, Done, NotSure,
    ];

    /// <summary>The word in kebab case, as job files and scripts have it: <c>no-beep</c>.</summary>
    public string Id { get; }

    /// <summary>The word spelled out in English, with blanks: <c>no beep</c>. It is always accepted as typed.</summary>
    public string Text => Id.Replace('-', ' ');

    /// <summary>The word with exactly this id, or null.</summary>
    public static AnswerWord? Find(string? id)
    {
        foreach (var word in All)
        {
            if (string.Equals(word.Id, id, StringComparison.Ordinal)) return word;
        }

        return null;
    }

    public override string ToString() => Id;
}
