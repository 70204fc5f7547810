using System.Globalization;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>A <see cref="RoundAxis"/> drawn level, from one pixel to another.</summary>
internal sealed class PlotAxis
{
    private const int Steps = 7;

    private readonly RoundAxis _axis;
    private readonly double _from, _to;

    private PlotAxis(RoundAxis axis, double from, double to) => (_axis, _from, _to) = (axis, from, to);

    public static PlotAxis Of(List<double> values, double from, double to, bool mayUseDecades) =>
        new(RoundAxis.Of(values, Steps, mayUseDecades), from, to);

    /// <summary>Pixels of a value; values beyond the ends fall on them.</summary>
    public double At(double value) => _from + ((_to - _from) * _axis.At(value));

    /// <summary>A range with as many digits as matter.</summary>
    public string Text(double low, double high)
    {
        var (first, second) = (_axis.Text(low, CultureInfo.InvariantCulture), _axis.Text(high, CultureInfo.InvariantCulture));
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
                _axis.Label(tick, CultureInfo.InvariantCulture) + (tick == _axis.High ? " " + unit : ""));
        }
    }
}
