using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>One curve of a plot with its two units.</summary>
/// <param name="Points">Rising in X; X and Y in their units.</param>
/// <param name="Marks">Places on the X axis that are marked, with what stands there.</param>
public sealed record Curve(string Title, string XUnit, string YUnit, ImmutableArray<(double X, double Y)> Points, ImmutableArray<(double X, string Text)> Marks);

/// <summary>Curves above one another: a current against time, a strength against frequency.</summary>
public static class LinePlot
{
    private const double Width = 720, Margin = 16, Left = 64, PlotHeight = 150, Pitch = 224;

    /// <summary>A curve with more points is drawn from the lowest and highest of each stretch; nothing that is seen is lost.</summary>
    private const int Stretches = 640;

    private const int Steps = 4;

    public static string Svg(string title, ImmutableArray<Curve> curves, DrawingOptions? options = null)
    {
        options ??= DrawingOptions.Default;
        var pen = SmallDrawing.Pen(options);
        pen.Text("hs-heading", Margin, 20, title);
        var top = 54.0;
        foreach (var curve in curves)
        {
            Draw(pen, curve, top, options.Formats);
            top += Pitch;
        }

        return SmallDrawing.Document(options, "curves", title, string.Join("; ", curves.Select(c => c.Title)), Width, top - 10, pen);
    }

    private static void Draw(Pen pen, Curve curve, double top, CultureInfo formats)
    {
        var bottom = top + 12 + PlotHeight;
        var across = PlotAxis.Of([.. curve.Points.Select(p => p.X)], Left, Width - Margin - 40, mayUseDecades: false, formats);
        var up = RoundAxis.Of([.. curve.Points.Select(p => p.Y)], Steps, mayUseDecades: false);
        pen.Text("hs-summary", Margin, top - 8, curve.Title);
        foreach (var tick in up.Ticks)
        {
            pen.Line("hs-link", Left, Y(tick), Width - Margin - 40, Y(tick));
            pen.Text("hs-number hs-end", Left - 6, Y(tick) + 4, up.Label(tick, formats) + (tick == up.High ? " " + curve.YUnit : ""));
        }

        foreach (var (x, text) in curve.Marks)
        {
            pen.Line("hs-symbol", across.At(x), top + 12, across.At(x), bottom);
            pen.Text("hs-key hs-middle", across.At(x), top + 8, text);
        }

        pen.Polyline("hs-symbol", [.. Thinned(curve.Points).Select(p => (across.At(p.X), Y(p.Y)))]);
        across.Draw(pen, bottom, curve.XUnit);

        double Y(double value) => bottom - (PlotHeight * up.At(value));
    }

    private static IEnumerable<(double X, double Y)> Thinned(ImmutableArray<(double X, double Y)> points)
    {
        var each = Math.Max(1, points.Length / Stretches);
        return each < 3 ? points : points.Chunk(each).SelectMany(stretch => new[] { stretch.MinBy(p => p.Y), stretch.MaxBy(p => p.Y) }.OrderBy(p => p.X));
    }
}
