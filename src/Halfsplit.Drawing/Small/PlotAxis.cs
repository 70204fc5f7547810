using System.Globalization;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>A <see cref="RoundAxis"/> drawn level, from one pixel to another.</summary>
internal sealed class PlotAxis
{
    private const int Steps = 7;

    private readonly RoundAxis _axis;
    private readonly double _from, _to;

    private readonly CultureInfo _formats;

    private PlotAxis(RoundAxis axis, double from, double to, CultureInfo formats) => (_axis, _from, _to, _formats) = (axis, from, to, formats);

    public static PlotAxis Of(List<double> values, double from, double to, bool mayUseDecades, CultureInfo formats) =>
        new(RoundAxis.Of(values, Steps, mayUseDecades), from, to, formats);

    /// <summary>Pixels of a value; values beyond the ends fall on them.</summary>
    public double At(double value) => _from + ((_to - _from) * _axis.At(value));

    /// <summary>A range with as many digits as matter.</summary>
    public string Text(double low, double high)
    {
        var (first, second) = (_axis.Text(low, _formats), _axis.Text(high, _formats));
        return first == second ? first : $"{first} … {second}";
    }

    public void Draw(Pen pen, double y, string unit)
    {
        pen.Line("hs-rail", _from, y, _to, y);
        foreach (var tick in _axis.Ticks)
        {
            pen.Line("hs-symbol", At(tick), y, At(tick), y + 5);
            pen.Text(
                "hs-number hs-middle", At(tick), y + 16,
                _axis.Label(tick, _formats) + (tick == _axis.High ? " " + unit : ""));
        }
    }
}
