using System.Collections.Immutable;

namespace Halfsplit.Circuits.Data;

/// <summary>Wire colours of IEC 60757 (<c>data/wire-colours.csv</c>).</summary>
public static class WireColours
{
    /// <summary>Green and yellow together are one colour of their own.</summary>
    public const string GreenYellow = "GNYE";

    /// <summary>Every code, in the table's order, which is also that of several colours on one wire.</summary>
    public static ImmutableArray<string> Codes { get; } = [.. DataFile.Read("wire-colours.csv").Select(r => r.Text("code"))];
}
