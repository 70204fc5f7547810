using System.Globalization;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>Numbers as a meter shows them: an SI prefix that fits, and as many decimals as were read.</summary>
internal static class ReadingFormat
{
    private static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;

    /// <summary>With a decimal point, as job files and scripts have it.</summary>
    public static string Text(ReadingParse.Number number) => TextIn(Invariant, number);

    /// <summary>With the decimal sign of these formats.</summary>
    public static string TextIn(CultureInfo formats, ReadingParse.Number number)
    {
        if (number.Quantity == Quantity.Duty) return Scaled(number.Value, number.Resolution, -2, formats) + " %";
        var prefix = Prefix(number);
        return Scaled(number.Value, number.Resolution, prefix, formats) + " " + MeterUnits.Letter(prefix) + MeterUnits.Symbol(number.Quantity);
    }

    // "m" on ohms and "M" on anything else would be doubted when typed back, so neither is written.
    private static int Prefix(ReadingParse.Number number)
    {
        if (number.Resolution is not { } resolution) return 0;
        var (lowest, highest) = number.Quantity == Quantity.Ohms ? (0, 6) : (-6, 3);
        var size = Math.Abs(number.Value);
        var prefix = size == 0 ? 0 : lowest;
        while (prefix < highest && (size >= MeterUnits.Power(prefix + 3) || resolution > MeterUnits.Power(prefix) * 1.5)) prefix += 3;
        return prefix;
    }

    private static string Scaled(double value, double? resolution, int exponent, CultureInfo formats)
    {
        if (resolution is { } step)
        {
            var decimals = (int)Math.Round(exponent - Math.Log10(step));
            if (decimals is >= 0 and <= 15 && Math.Abs(value) < 1e15)
            {
                return NumberText.Of(value / MeterUnits.Power(exponent), "F" + decimals.ToString(Invariant), formats);
            }
        }

        return NumberText.Of(value / MeterUnits.Power(exponent), "R", formats);
    }
}
