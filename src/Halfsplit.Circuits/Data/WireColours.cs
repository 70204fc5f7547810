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
}
