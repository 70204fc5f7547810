namespace Halfsplit.Circuits.Model;

/// <summary>
/// A point of a part that a lead can touch, written <c>K1.87</c>, <c>C3.4a</c>, <c>F19.1p</c>, or just the part's
/// name where it has one terminal only (ground points, splices, the body).
/// Suffixes: <c>a</c>/<c>b</c> after a connector's cavity name the half; <c>p</c> names the removable part's own pin
/// as opposed to its socket's terminal.
/// </summary>
/// <param name="Part">The part's name in the sheet.</param>
/// <param name="Name">The terminal's name in the part; empty for parts with a single terminal.</param>
public readonly record struct TerminalName(string Part, string Name) : IComparable<TerminalName>
{
    /// <summary>The terminal of a part that has only one.</summary>
    public TerminalName(string part) : this(part, "") { }

    public override string ToString() => Name.Length == 0 ? Part : $"{Part}.{Name}";

    /// <summary>Splits at the first dot; does not look whether such a part exists.</summary>
    public static TerminalName Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var dot = text.IndexOf('.', StringComparison.Ordinal);
        return dot < 0 ? new(text, "") : new(text[..dot], text[(dot + 1)..]);
    }

    public int CompareTo(TerminalName other)
    {
        var byPart = string.CompareOrdinal(Part, other.Part);
        return byPart != 0 ? byPart : string.CompareOrdinal(Name, other.Name);
    }

    public static bool operator <(TerminalName left, TerminalName right) => left.CompareTo(right) < 0;
    public static bool operator <=(TerminalName left, TerminalName right) => left.CompareTo(right) <= 0;
    public static bool operator >(TerminalName left, TerminalName right) => left.CompareTo(right) > 0;
    public static bool operator >=(TerminalName left, TerminalName right) => left.CompareTo(right) >= 0;
}
