using System.Globalization;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>A level axis with round ends and ticks, in equal steps or in decades.</summary>
internal sealed class PlotAxis
{
    /// <summary>From the smallest to the largest value, beyond which steps say nothing and decades do.</summary>
    private const double WorthDecades = 300;

    private readonly double _low, _high, _from, _to;
    private readonly bool _inDecades;
    private readonly List<double> _ticks;

    private PlotAxis(double low, double high, double from, double to, bool inDecades, List<double> ticks) =>
        (_low, _high, _from, _to, _inDecades, _ticks) = (low, high, from, to, inDecades, ticks);

    public static PlotAxis Of(List<double> values, double from, double to, bool mayUseDecades)
    {
        var positive = values.Where(v => v > 0).ToList();
        if (mayUseDecades && positive.Count > 1 && positive.Max() / positive.Min() > WorthDecades)
        {
            var first = (int)Math.Floor(Math.Log10(Math.Max(positive.Min(), 0.01)) + 1e-9);
            var last = Math.Max(first + 1, (int)Math.Ceiling(Math.Log10(positive.Max()) - 1e-9));
            return new PlotAxis(
                Math.Pow(10, first), Math.Pow(10, last), from, to, true,
                [.. Enumerable.Range(first, last - first + 1).Select(p => Math.Pow(10, p))]);
        }

        var (low, high) = (Math.Min(values.DefaultIfEmpty(0).Min(), 0), Math.Max(values.DefaultIfEmpty(1).Max(), 0));
        high = high - low < 1e-9 ? low + 1 : high;
        var rough = (high - low) / 7;
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var step = power * (rough <= power ? 1 : rough <= 2 * power ? 2 : rough <= 5 * power ? 5 : 10);
        var (lowest, highest) = ((int)Math.Floor((low / step) + 1e-9), (int)Math.Ceiling((high / step) - 1e-9));
        return new PlotAxis(
            lowest * step, highest * step, from, to, false, [.. Enumerable.Range(lowest, highest - lowest + 1).Select(i => i * step)]);
    }

    /// <summary>Pixels of a value; values beyond the ends fall on them.</summary>
    public double At(double value)
    {
        var share = _inDecades
            ? Math.Log10(Math.Max(value, _low) / _low) / Math.Log10(_high / _low)
            : (value - _low) / (_high - _low);
        return _from + ((_to - _from) * Math.Clamp(share, 0, 1));
    }

    /// <summary>A range with as many digits as matter.</summary>
    public string Text(double low, double high)
    {
        var (first, second) = (Text(low), Text(high));
        return first == second ? first : $"{first} … {second}";
    }

    public void Draw(Pen pen, double y, string unit)
    {
        pen.Line("hs-rail", _from, y, _to, y);
        foreach (var tick in _ticks)
        {
            pen.Line("hs-symbol", At(tick), y, At(tick), y + 5);
            pen.Text("hs-number hs-middle", At(tick), y + 16, Short(tick) + (tick == _ticks[^1] ? " " + unit : ""));
        }
    }

    private string Text(double value)
    {
        if (_inDecades)
        {
            return Short(value);
        }

        var decimals = (_high - _low) switch { >= 100 => 0, >= 2 => 2, _ => 3 };
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.Trim('-', '0', '.').Length == 0 ? text.TrimStart('-') : text;
    }

    private static string Short(double value) => Math.Abs(value) switch
    {
        >= 1e6 => (value / 1e6).ToString("G3", CultureInfo.InvariantCulture) + "M",
        >= 1e3 => (value / 1e3).ToString("G3", CultureInfo.InvariantCulture) + "k",
        _ => value.ToString("G3", CultureInfo.InvariantCulture),
    };
}
