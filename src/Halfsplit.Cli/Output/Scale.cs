using System.Globalization;

namespace Halfsplit.Cli.Output;

/// <summary>A ruled axis in text: which column a value falls in, and the ticks under it.</summary>
public sealed class Scale
{
    private readonly double _low, _high;

    private Scale(double low, double high, int columns, bool inDecades, string axis, string labels)
    {
        (_low, _high, Columns, InDecades, Axis, Labels) = (low, high, columns, inDecades, axis, labels);
    }

    public int Columns { get; }

    /// <summary>Every tick is ten times the one before.</summary>
    public bool InDecades { get; }

    /// <summary>The ruled line, as wide as <see cref="Columns"/>.</summary>
    public string Axis { get; }

    /// <summary>The numbers under the ticks; may reach a little beyond the axis.</summary>
    public string Labels { get; }

    /// <summary>An axis that holds all values with round ends.</summary>
    public static Scale Of(IReadOnlyCollection<double> values, int columns, bool mayUseDecades)
    {
        ArgumentNullException.ThrowIfNull(values);
        var (low, high) = values.Count == 0 ? (0.0, 1.0) : (values.Min(), values.Max());
        var positive = values.Where(v => v > 0).ToList();
        if (mayUseDecades && low >= 0 && positive.Count > 1 && high / positive.Min() > 300)
        {
            return Decades(Math.Max(positive.Min(), 0.1), high, columns);
        }

        (low, high) = (Math.Min(low, 0), Math.Max(high, 0));
        if (high - low < 1e-9)
        {
            high = low + 1;
        }

        var step = RoundStep((high - low) / 8);
        low = Math.Floor((low / step) + 1e-9) * step;
        high = Math.Ceiling((high / step) - 1e-9) * step;
        var ticks = new List<(double, string)>();
        for (var i = 0; i <= (int)Math.Round((high - low) / step); i++)
        {
            var value = low + (i * step);
            ticks.Add((value, Label(value, step)));
        }

        return Ruled(low, high, columns, false, ticks, v => v);
    }

    /// <summary>The column of a value; values beyond the ends fall on them.</summary>
    public int ColumnOf(double value)
    {
        var (at, low, high) = InDecades
            ? (Math.Log10(Math.Max(value, _low)), Math.Log10(_low), Math.Log10(_high))
            : (value, _low, _high);
        return Math.Clamp((int)Math.Round((at - low) / (high - low) * (Columns - 1)), 0, Columns - 1);
    }

    /// <summary>A value with as many digits as matter on this axis; the unit is left to the caller.</summary>
    public string Text(double value)
    {
        if (InDecades)
        {
            return Math.Abs(value) switch
            {
                >= 1e6 => Digits(value / 1e6) + "M",
                >= 1e3 => Digits(value / 1e3) + "k",
                _ => Digits(value),
            };
        }

        var decimals = (_high - _low) switch
        {
            >= 100 => 0,
            >= 2 => 2,
            >= 0.2 => 3,
            _ => 4,
        };
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CliTexts.Formats);
        return text.Trim('-', '0', '.', ',').Length == 0 ? text.TrimStart('-') : text;
    }

    private static string Digits(double value) => value.ToString("G3", CliTexts.Formats);

    private static Scale Decades(double low, double high, int columns)
    {
        var first = (int)Math.Floor(Math.Log10(low) + 1e-9);
        var last = Math.Max(first + 1, (int)Math.Ceiling(Math.Log10(high) - 1e-9));
        var ticks = Enumerable.Range(first, last - first + 1)
            .Select(p => (Math.Pow(10, p), Short(p))).ToList();
        return Ruled(Math.Pow(10, first), Math.Pow(10, last), columns, true, ticks, Math.Log10);
    }

    private static Scale Ruled(
        double low, double high, int columns, bool inDecades, List<(double Value, string Label)> ticks, Func<double, double> map)
    {
        var axis = Enumerable.Repeat('-', columns).ToArray();
        var labels = Enumerable.Repeat(' ', columns + 8).ToArray();
        var free = 0;
        foreach (var (value, label) in ticks)
        {
            var column = (int)Math.Round((map(value) - map(low)) / (map(high) - map(low)) * (columns - 1));
            axis[column] = '|';
            if (column >= free && column + label.Length < labels.Length)
            {
                label.CopyTo(0, labels, column, label.Length);
                free = column + label.Length + 1;
            }
        }

        return new Scale(low, high, columns, inDecades, new string(axis), new string(labels).TrimEnd());
    }

    private static double RoundStep(double rough)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        foreach (var factor in (double[])[1, 2, 5])
        {
            if (rough <= factor * power * 1.0001)
            {
                return factor * power;
            }
        }

        return 10 * power;
    }

    private static string Label(double value, double step)
    {
        var decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 4);
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CliTexts.Formats);
        return value == 0 ? "0" : text;
    }

    private static string Short(int power) => power switch
    {
        >= 6 => Math.Pow(10, power - 6).ToString("R", CliTexts.Formats) + "M",
        >= 3 => Math.Pow(10, power - 3).ToString("R", CliTexts.Formats) + "k",
        _ => Math.Pow(10, power).ToString("R", CliTexts.Formats),
    };
}
