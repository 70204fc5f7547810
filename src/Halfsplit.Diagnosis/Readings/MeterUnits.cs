using System.Collections.Frozen;
using System.Globalization;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>Symbols of what a meter shows, and the SI prefixes before them: the one place that knows them.</summary>
public static class MeterUnits
{
    private static readonly int[] Prefixes = [-6, -3, 0, 3, 6];

    private static readonly FrozenSet<string> Symbols = Enum.GetValues<Quantity>()
        .SelectMany(q => q == Quantity.Duty ? [Symbol(q)] : Prefixes.Select(p => Letter(p) + Symbol(q)))
        .ToFrozenSet(StringComparer.Ordinal);

    /// <summary>The symbol of the SI unit; of a duty cycle the per cent sign.</summary>
    public static string Symbol(Quantity quantity) => quantity switch
    {
        Quantity.Volts => "V",
        Quantity.Ohms => "Ω",
        Quantity.Amperes => "A",
        _ => "%",
    };

    /// <summary>The letter of an SI prefix: "m" for -3; empty where there is none.</summary>
    public static string Letter(int exponent) => exponent switch
    {
        -6 => "µ",
        -3 => "m",
        3 => "k",
        6 => "M",
        _ => "",
    };

    /// <summary>True for the symbol of a quantity, with or without a prefix: "mV", "kΩ", "%".</summary>
    public static bool IsSymbol(string word) => Symbols.Contains(word);

    /// <summary>Ten to this power, exactly as it is written.</summary>
    public static double Power(int exponent) => double.Parse("1e" + exponent.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
