using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Halfsplit.Circuits.Data;

/// <summary>Wire colours of IEC 60757 (<c>data/wire-colours.csv</c>), and what people call them (<c>data/colour-words.csv</c>).</summary>
public static class WireColours
{
    /// <summary>Green and yellow together are one colour of their own.</summary>
    public const string GreenYellow = "GNYE";

    /// <summary>Every code, in the table's order, which is also that of several colours on one wire.</summary>
    public static ImmutableArray<string> Codes { get; } = [.. DataFile.Read("wire-colours.csv").Select(r => r.Text("code"))];

    private static readonly FrozenDictionary<string, string> Words = DataFile.Read("colour-words.csv")
        .ToFrozenDictionary(r => PlainText.Of(r.Text("word")), r => r.Text("code"), StringComparer.Ordinal);

    /// <summary>The code of one colour by its code, name or a usual short form, whatever its capitals; null where it is none.</summary>
    public static string? Named(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var code = text.Trim().ToUpperInvariant();
        // A slash divides a wire's colour from that of its stripe: green/yellow is no green-yellow.
        return Codes.Contains(code) ? code : text.Contains('/', StringComparison.Ordinal) ? null : Words.GetValueOrDefault(PlainText.Of(text));
    }

    /// <summary>By IEC 60757, "YE/BK"; null where it is no colour. Two colours are that of the wire and that of its stripe.</summary>
    public static string? Spelled(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var codes = text.Split(['/', '-', '+', ',', ';', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Where(w => PlainText.Of(w) is not ("with" or "mit" or "stripe" or "tracer" or "streifen"))
            .Select(Code)
            .ToList();
        return codes.Count > 0 && codes.TrueForAll(c => c is not null) ? string.Join('/', codes) : null;
    }

    /// <summary>One colour's code; a code of several letters for several colours is taken apart.</summary>
    private static string? Code(string word)
    {
        var code = word.Trim().ToUpperInvariant();
        // Green with a yellow stripe is usual in vehicles; the one colour green-yellow is meant only by its code.
        var named = Named(word) is { } one && (one != GreenYellow || one == code) ? one : null;
        return named ?? (IsCodes(code) ? code : null);
    }

    private static bool IsCodes(string code) =>
        code.Length is 4 or 6 && Enumerable.Range(0, code.Length / 2).All(i => Codes.Contains(code.Substring(2 * i, 2)));
}
