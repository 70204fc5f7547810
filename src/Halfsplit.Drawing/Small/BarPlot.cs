using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>A bar with its name.</summary>
/// <param name="Value">In the plot's unit, 0 or more.</param>
/// <param name="Low">Lower end of its uncertainty; null where none is known.</param>
/// <param name="High">Upper end of its uncertainty.</param>
public sealed record Bar(string Label, double Value, double? Low = null, double? High = null);

/// <summary>Values side by side, as in the tables of the evaluation; every bar has its number behind it.</summary>
public static class BarPlot
{
    private const double Width = 520, Margin = 16, BarHeight = 18, Pitch = 27;

    public static string Svg(string title, string unit, ImmutableArray<Bar> bars, DrawingOptions? options = null)
    {
        options ??= DrawingOptions.Default;
        var pen = SmallDrawing.Pen(options);
        var names = Math.Ceiling(bars.Select(b => TextMeasure.Width(b.Label, 10.5)).DefaultIfEmpty(0).Max());
        var left = Margin + names + 8;
        var axis = PlotAxis.Of([0, .. bars.Select(b => Math.Max(b.Value, b.High ?? 0))], left, Width - Margin - 56, mayUseDecades: false, options.Formats);
        pen.Text("hs-heading", Margin, 20, title);
        var y = 36.0;
        foreach (var bar in bars)
        {
            pen.Text("hs-summary hs-end", left - 6, y + 13, bar.Label);
            pen.Rect("hs-odds", left, y, Math.Max(1, axis.At(bar.Value) - left), BarHeight);
            if (bar is { Low: { } low, High: { } high })
            {
                pen.Line("hs-symbol", axis.At(low), y + (BarHeight / 2), axis.At(high), y + (BarHeight / 2));
            }

            pen.Text("hs-value", Math.Max(axis.At(bar.Value), bar.High is { } end ? axis.At(end) : 0) + 5, y + 13, Number(bar.Value, options.Formats));
            y += Pitch;
        }

        axis.Draw(pen, y + 4, unit);
        return SmallDrawing.Document(
            options, "bars", title, string.Join("; ", bars.Select(b => $"{b.Label}: {Number(b.Value, options.Formats)} {unit}")), Width, y + 34, pen);
    }

    private static string Number(double value, CultureInfo formats) => value.ToString(value >= 100 ? "0" : "0.##", formats);
}
