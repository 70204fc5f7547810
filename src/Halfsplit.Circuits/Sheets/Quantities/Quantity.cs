using System.Globalization;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Circuits.Sheets.Quantities;

/// <summary>Reads and writes numbers with units: "5.5 A", "0,8 ohm", "10 kohm", "60 %".</summary>
internal static class Quantity
{
    /// <summary>The value in the unit's base; or what is wrong with the text.</summary>
    public static bool TryParse(string text, Unit unit, Limits limits, out double value, out Message? problem)
    {
        value = 0;
        var trimmed = text.Trim();
        var length = NumberLength(trimmed);
        if (length == 0)
        {
            problem = new Message("sheet.not-a-number", trimmed, unit.Example);
            return false;
        }

        var word = trimmed[length..].Trim();
        if (!unit.TryFind(word, out var spelling) && !unit.TryFind(WithoutCase(word, unit), out spelling))
        {
            problem = word.Length == 0
                ? new Message("sheet.no-unit", trimmed, unit.Example)
                : unit.Symbol.Length == 0
                    ? new Message("sheet.unit-not-wanted", trimmed, trimmed[..length])
                    : new Message(Unit.IsUnit(word) ? "sheet.wrong-unit" : "sheet.unknown-unit", word, unit.Example);
            return false;
        }

        value = Shift(trimmed[..length], spelling.PowerOfTen) * spelling.Factor;
        if (!limits.Contains(value))
        {
            problem = new Message("sheet.impossible", trimmed, Write(limits.Low, unit), Write(limits.High, unit));
            return false;
        }

        problem = null;
        return true;
    }

    /// <summary>The shortest text that reads back as exactly this value.</summary>
    public static string Write(double value, Unit unit)
    {
        if (unit == Unit.Percent)
        {
            return $"{Shifted(value, 2)} %";
        }

        if (unit == Unit.None)
        {
            return Number(value);
        }

        var size = Math.Abs(value);
        if (size is > 0 and < 0.1 && unit.TryFind("m" + unit.Symbol, out var milli) && milli.PowerOfTen == -3)
        {
            return $"{Shifted(value, 3)} m{unit.Symbol}";
        }

        return size >= 10_000 && unit.TryFind("k" + unit.Symbol, out _)
            ? $"{Shifted(value, -3)} k{unit.Symbol}"
            : $"{Number(value)} {unit.Symbol}";
    }

    /// <summary>How many characters at the start of the text are a number.</summary>
    public static int NumberLength(string text)
    {
        var i = text.Length > 0 && text[0] is '-' or '+' ? 1 : 0;
        var digits = 0;
        var points = 0;
        for (; i < text.Length; i++)
        {
            if (char.IsAsciiDigit(text[i]))
            {
                digits++;
            }
            else if (text[i] is '.' or ',' && points == 0)
            {
                points++;
            }
            else
            {
                break;
            }
        }

        if (digits == 0 || (i < text.Length && text[i] is '.' or ','))
        {
            return 0;
        }

        if (i < text.Length && text[i] is 'e' or 'E')
        {
            var exponent = i + 1 < text.Length && text[i + 1] is '-' or '+' ? i + 2 : i + 1;
            var end = exponent;
            while (end < text.Length && char.IsAsciiDigit(text[end]) && end < exponent + 3)
            {
                end++;
            }

            return end > exponent ? end : i;
        }

        return i;
    }

    /// <summary>The number times a power of ten, rounded once: 3 and −3 give exactly 0.003.</summary>
    private static double Shift(string number, int powerOfTen)
    {
        var text = number.Replace(',', '.');
        var e = text.IndexOfAny(['e', 'E']);
        var exponent = e < 0 ? 0 : int.Parse(text[(e + 1)..], CultureInfo.InvariantCulture);
        var mantissa = e < 0 ? text : text[..e];
        return double.Parse(
            string.Create(CultureInfo.InvariantCulture, $"{mantissa}e{exponent + powerOfTen}"),
            NumberStyles.Float, CultureInfo.InvariantCulture);
    }

    /// <summary>The shortest digits of the value with the point moved right by so many places.</summary>
    private static string Shifted(double value, int places)
    {
        var text = Number(value);
        if (text.Contains('E', StringComparison.Ordinal) || Math.Abs(value) is > 1e12 or (> 0 and < 1e-9))
        {
            var e = text.IndexOf('E', StringComparison.Ordinal);
            var exponent = e < 0 ? 0 : int.Parse(text[(e + 1)..], CultureInfo.InvariantCulture);
            return string.Create(CultureInfo.InvariantCulture, $"{(e < 0 ? text : text[..e])}E{exponent + places}");
        }

        var exact = decimal.Parse(text, CultureInfo.InvariantCulture);
        for (var i = 0; i < Math.Abs(places); i++)
        {
            exact = places > 0 ? exact * 10 : exact / 10;
        }

        var written = exact.ToString(CultureInfo.InvariantCulture);
        return written.Contains('.', StringComparison.Ordinal) ? written.TrimEnd('0').TrimEnd('.') : written;
    }

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>"60 a" and "12 v" are plain enough; a prefix keeps its case.</summary>
    private static string WithoutCase(string word, Unit unit) =>
        word.Length > 0 && string.Equals(word, unit.Symbol, StringComparison.OrdinalIgnoreCase) ? unit.Symbol : word;
}
