using System.Globalization;

namespace Halfsplit.Evaluation.Tables;

/// <summary>A mean with the half-width of its 95 % confidence interval, by the normal approximation.</summary>
public readonly record struct Interval(double Mean, double Half, int Count)
{
    private const double Normal95 = 1.96;

    public static Interval Of(IReadOnlyCollection<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count == 0)
        {
            return default;
        }

        var mean = values.Average();
        var variance = values.Count < 2 ? 0 : values.Sum(v => (v - mean) * (v - mean)) / (values.Count - 1);
        return new Interval(mean, Normal95 * Math.Sqrt(variance / values.Count), values.Count);
    }

    /// <summary>A share, by Wilson's interval, which stays inside 0 to 1; in per cent.</summary>
    public static Interval Share(int hits, int count)
    {
        if (count == 0)
        {
            return default;
        }

        const double z2 = Normal95 * Normal95;
        var share = (double)hits / count;
        var half = Normal95 * Math.Sqrt((share * (1 - share) / count) + (z2 / (4.0 * count * count))) / (1 + (z2 / count));
        return new Interval(100 * share, 100 * half, count);
    }

    /// <summary>Ratio of means of paired values, by the delta method.</summary>
    public static Interval Ratio(IReadOnlyList<double> over, IReadOnlyList<double> under)
    {
        ArgumentNullException.ThrowIfNull(over);
        ArgumentNullException.ThrowIfNull(under);
        if (over.Count == 0 || under.Sum() == 0)
        {
            return default;
        }

        var below = under.Average();
        var ratio = over.Average() / below;
        var rest = Of([.. over.Zip(under, (a, b) => a - (ratio * b))]);
        return new Interval(ratio, rest.Half / below, over.Count);
    }

    public string Text(string format) => Count == 0
        ? "–"
        : string.Create(CultureInfo.InvariantCulture, $"{Mean.ToString(format, CultureInfo.InvariantCulture)} ± {Half.ToString(format, CultureInfo.InvariantCulture)}");
}
