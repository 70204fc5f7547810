using System.Collections.Immutable;

namespace Halfsplit.Circuits.Sheets.Quantities;

/// <summary>How a spelling of a unit turns a number into the base unit: times ten to a power, times a factor.</summary>
internal readonly record struct UnitSpelling(int PowerOfTen, double Factor);

/// <summary>A unit that quantities of a sheet can have, with all the ways to write it.</summary>
internal sealed class Unit
{
    private readonly ImmutableDictionary<string, UnitSpelling> _spellings;

    private Unit(string symbol, string example, ImmutableDictionary<string, UnitSpelling> spellings)
    {
        Symbol = symbol;
        Example = example;
        _spellings = spellings;
    }

    public static Unit Volt { get; } = Prefixed("V", "12 V", ["V", "volt", "volts"], "mk");
    public static Unit Ampere { get; } = Prefixed("A", "5.5 A", ["A", "amp", "amps"], "mk");
    public static Unit Ohm { get; } = Prefixed("ohm", "85 ohm", ["ohm", "ohms", "\u03a9", "\u2126"], "mkM");
    public static Unit Watt { get; } = Prefixed("W", "55 W", ["W", "watt", "watts"], "mk");
    public static Unit Kelvin { get; } = Plain("K", "3500 K", ("K", 0, 1));
    public static Unit Celsius { get; } = Plain("C", "20 C", ("C", 0, 1), ("\u00b0C", 0, 1));
    public static Unit Percent { get; } = Plain("%", "60 %", ("%", -2, 1));

    public static Unit Second { get; } =
        Plain("s", "2 s", ("s", 0, 1), ("sec", 0, 1), ("seconds", 0, 1), ("second", 0, 1), ("ms", -3, 1), ("min", 0, 60));

    public static Unit Minute { get; } =
        Plain("min", "4 min", ("min", 0, 1), ("minutes", 0, 1), ("minute", 0, 1), ("s", 0, 1 / 60.0), ("h", 0, 60));

    public static Unit Metre { get; } = Plain(
        "m", "4.2m", ("m", 0, 1), ("cm", -2, 1), ("mm", -3, 1), ("ft", 0, 0.3048), ("in", 0, 0.0254));

    public static Unit SquareMillimetre { get; } = Plain(
        "mm2", "2.5mm2", ("mm2", 0, 1), ("mm\u00b2", 0, 1), ("mm^2", 0, 1), ("sqmm", 0, 1));

    /// <summary>No unit at all: prices.</summary>
    public static Unit None { get; } = Plain("", "80", ("", 0, 1));

    private static ImmutableArray<Unit> All { get; } =
        [Volt, Ampere, Ohm, Watt, Kelvin, Celsius, Percent, Second, Minute, Metre, SquareMillimetre];

    /// <summary>The unit as the writer writes it.</summary>
    public string Symbol { get; }

    /// <summary>How a value in this unit looks in a sheet.</summary>
    public string Example { get; }

    public bool TryFind(string word, out UnitSpelling spelling) => _spellings.TryGetValue(word, out spelling);

    /// <summary>True if the word is a unit, of whatever kind.</summary>
    public static bool IsUnit(string word) => All.Any(u => u._spellings.ContainsKey(word));

    private static Unit Plain(string symbol, string example, params (string Word, int Power, double Factor)[] spellings) =>
        new(symbol, example, spellings.ToImmutableDictionary(
            s => s.Word, s => new UnitSpelling(s.Power, s.Factor), StringComparer.Ordinal));

    private static Unit Prefixed(string symbol, string example, string[] words, string prefixes)
    {
        var spellings = ImmutableDictionary.CreateBuilder<string, UnitSpelling>(StringComparer.Ordinal);
        foreach (var word in words)
        {
            spellings[word] = new UnitSpelling(0, 1);
            foreach (var prefix in prefixes)
            {
                var power = prefix switch { 'm' => -3, 'k' => 3, _ => 6 };
                spellings[prefix + word] = new UnitSpelling(power, 1);
            }
        }

        return new Unit(symbol, example, spellings.ToImmutable());
    }
}
