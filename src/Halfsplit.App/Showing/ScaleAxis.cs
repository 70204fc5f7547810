using Halfsplit.App.Views;

namespace Halfsplit.App.Showing;

/// <summary>A ruled axis: where a value falls between its ends, and the ticks under it.</summary>
internal sealed class ScaleAxis
{
    private const double DecadesFrom = 300, LeastDecade = 0.1;

    private readonly double _low, _high;
    private readonly bool _inDecades;

    private ScaleAxis(double low, double high, bool inDecades, ScaleTick[] ticks)
    {
        (_low, _high, _inDecades) = (low, high, inDecades);
        Ticks = ticks;
    }

    public ScaleTick[] Ticks { get; }

    /// <param name="mayUseDecades">Ohms reach from milliohms to megohms; then each tick is ten times the one before.</param>
    public static ScaleAxis Of(IReadOnlyList<double> values, bool mayUseDecades)
    {
        var least = values.Where(v => v > 0).DefaultIfEmpty(1).Min();
        var most = values.Max();
        return mayUseDecades && values.Min() >= 0 && most / least > DecadesFrom
            ? Decades(Math.Max(least, LeastDecade), most)
            : Even(Math.Min(0, values.Min()), Math.Max(0, most));
    }

    /// <summary>0 at the left end to 1 at the right.</summary>
    public double At(double value) => Math.Clamp(
        _inDecades ? Math.Log(Math.Max(value, _low) / _low) / Math.Log(_high / _low) : (value - _low) / (_high - _low), 0, 1);

    /// <summary>A value with as many digits as matter here.</summary>
    public string Text(double value)
    {
        if (_inDecades)
        {
            return Short(value);
        }

        var digits = (_high - _low) < 2 ? 3 : (_high - _low) < 100 ? 2 : 0;
        return (Math.Round(value, digits) + 0.0).ToString($"F{digits}", AppTexts.Formats);
    }

    private static ScaleAxis Even(double low, double high)
    {
        var width = high - low < 1e-9 ? 1 : high - low;
        var power = Math.Pow(10, Math.Floor(Math.Log10(width / 4)));
        var step = new[] { 1.0, 2, 2.5, 5, 10 }.Select(f => f * power).First(s => width / s <= 5.001);
        var first = Math.Floor((low / step) + 1e-9);
        var last = Math.Max(first + 1, Math.Ceiling(((low + width) / step) - 1e-9));
        var count = (int)(last - first);
        return new ScaleAxis(first * step, last * step, false, [.. Enumerable.Range(0, count + 1).Select(i =>
            new ScaleTick((double)i / count, Math.Round((first + i) * step, 6).ToString("0.####", AppTexts.Formats)))]);
    }

    private static ScaleAxis Decades(double low, double high)
    {
        var first = (int)Math.Floor(Math.Log10(low) + 1e-9);
        var count = Math.Max(1, (int)Math.Ceiling(Math.Log10(high) - 1e-9) - first);
        return new ScaleAxis(Math.Pow(10, first), Math.Pow(10, first + count), true, [.. Enumerable.Range(0, count + 1).Select(i =>
            new ScaleTick((double)i / count, Short(Math.Pow(10, first + i))))]);
    }

    private static string Short(double value)
    {
        var (scaled, letter) = Math.Abs(value) >= 1e6 ? (value / 1e6, "M") : Math.Abs(value) >= 1e3 ? (value / 1e3, "k") : (value, "");
        return scaled.ToString("G3", AppTexts.Formats) + letter;
    }
}
