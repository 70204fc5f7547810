using System.Collections.Immutable;
using System.Globalization;

namespace Halfsplit.Drawing.Small;

/// <summary>
/// An axis with round ends that holds given values and zero: ticks in equal steps, or each ten times the one before. What
/// pictures, the app and the terminal rule their scales with.
/// </summary>
public sealed class RoundAxis
{
    /// <summary>From the smallest to the largest value, beyond which steps say nothing and decades do.</summary>
    private const double WorthDecades = 300;

    /// <summary>What is smaller stands at the left end of an axis in decades.</summary>
    private const double LeastDecade = 0.1;

    private readonly int _decimals;

    private RoundAxis(double low, double high, bool inDecades, int decimals, ImmutableArray<double> ticks) =>
        (Low, High, InDecades, _decimals, Ticks) = (low, high, inDecades, decimals, ticks);

    public double Low { get; }

    public double High { get; }

    /// <summary>Every tick is ten times the one before.</summary>
    public bool InDecades { get; }

    /// <summary>From <see cref="Low"/> to <see cref="High"/>.</summary>
    public ImmutableArray<double> Ticks { get; }

    /// <param name="values">What has to find its place; none for an axis from 0 to 1.</param>
    /// <param name="steps">About how many equal steps there is room for.</param>
    /// <param name="mayUseDecades">True for ohms, which reach from milliohms to megohms.</param>
    public static RoundAxis Of(IReadOnlyCollection<double> values, int steps, bool mayUseDecades)
    {
        ArgumentNullException.ThrowIfNull(values);
        var (low, high) = values.Count == 0 ? (0.0, 1.0) : (values.Min(), values.Max());
        var positive = values.Where(v => v > 0).ToList();
        return mayUseDecades && low >= 0 && positive.Count > 1 && high / positive.Min() > WorthDecades
            ? Decades(Math.Max(positive.Min(), LeastDecade), high)
            : Even(Math.Min(low, 0), Math.Max(high, 0), steps);
    }

    /// <summary>0 at the lower end to 1 at the upper; values beyond the ends fall on them.</summary>
    public double At(double value) => Math.Clamp(
        InDecades ? Math.Log10(Math.Max(value, Low) / Low) / Math.Log10(High / Low) : (value - Low) / (High - Low), 0, 1);

    /// <summary>A value with as many digits as matter on this axis; the unit is left to the caller.</summary>
    public string Text(double value, CultureInfo formats)
    {
        var decimals = (High - Low) switch
        {
            >= 100 => 0,
            >= 2 => 2,
            >= 0.2 => 3,
            _ => 4,
        };
        return InDecades ? Short(value, formats) : Plain(value, decimals, formats);
    }

    /// <summary>The number under a tick.</summary>
    public string Label(double tick, CultureInfo formats) =>
        InDecades ? Short(tick, formats) : tick == 0 ? "0" : Plain(tick, _decimals, formats);

    private static RoundAxis Even(double low, double high, int steps)
    {
        high = high - low < 1e-9 ? low + 1 : high;
        var step = RoundStep((high - low) / steps);
        var (first, last) = ((int)Math.Floor((low / step) + 1e-9), (int)Math.Ceiling((high / step) - 1e-9));
        var decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 4);
        return new RoundAxis(
            first * step, last * step, false, decimals, [.. Enumerable.Range(first, last - first + 1).Select(i => i * step)]);
    }

    private static RoundAxis Decades(double low, double high)
    {
        var first = (int)Math.Floor(Math.Log10(low) + 1e-9);
        var last = Math.Max(first + 1, (int)Math.Ceiling(Math.Log10(high) - 1e-9));
        return new RoundAxis(
            Math.Pow(10, first), Math.Pow(10, last), true, 0,
            [.. Enumerable.Range(first, last - first + 1).Select(p => Math.Pow(10, p))]);
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

    private static string Plain(double value, int decimals, CultureInfo formats)
    {
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), formats);
        return text.Trim('-', '0', '.', ',').Length == 0 ? text.TrimStart('-') : text;
    }

    private static string Short(double value, CultureInfo formats) => Math.Abs(value) switch
    {
        >= 1e6 => (value / 1e6).ToString("G3", formats) + "M",
        >= 1e3 => (value / 1e3).ToString("G3", formats) + "k",
        _ => value.ToString("G3", formats),
    };
}
