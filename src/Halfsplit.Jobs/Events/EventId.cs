namespace Halfsplit.Jobs.Events;

/// <summary>
/// The name of an event: 48 bits of milliseconds since 1970 (UTC), then 80 random bits. Written as 26 characters of
/// Crockford's base 32 (the ULID text form), which sort as text in the order of time.
/// </summary>
public readonly record struct EventId(UInt128 Value) : IComparable<EventId>
{
    public const int TextLength = 26;
    private const string Symbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

    internal const long LargestMilliseconds = (1L << 48) - 1;

    /// <summary>Milliseconds since 1970-01-01T00:00Z, 0 to 2^48 - 1.</summary>
    public long Milliseconds => (long)(Value >> 80);

    public static bool operator <(EventId left, EventId right) => left.Value < right.Value;

    public static bool operator >(EventId left, EventId right) => left.Value > right.Value;

    public static bool operator <=(EventId left, EventId right) => left.Value <= right.Value;

    public static bool operator >=(EventId left, EventId right) => left.Value >= right.Value;

    /// <summary>Reads the text form, in either case. False for anything else, and for values above 128 bits.</summary>
    public static bool TryParse(string? text, out EventId id)
    {
        id = default;
        if (text is not { Length: TextLength } || text[0] > '7') return false;
        UInt128 value = 0;
        foreach (var character in text)
        {
            var digit = char.IsAscii(character)
                ? Symbols.IndexOf(char.ToUpperInvariant(character), StringComparison.Ordinal)
                : -1;
            if (digit < 0) return false;
            value = (value << 5) | (UInt128)digit;
        }

        id = new EventId(value);
        return true;
    }

    public int CompareTo(EventId other) => Value.CompareTo(other.Value);

    public override string ToString() => string.Create(TextLength, Value, static (text, value) =>
    {
        for (var at = text.Length - 1; at >= 0; at--)
        {
            text[at] = Symbols[(int)(value & 31)];
            value >>= 5;
        }
    });
}
