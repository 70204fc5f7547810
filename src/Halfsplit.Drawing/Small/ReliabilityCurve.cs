using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>Of all findings with about these odds, how many were right.</summary>
/// <param name="Claimed">Mean odds, 0 to 1.</param>
/// <param name="CameTrue">Share that was right, 0 to 1.</param>
/// <param name="Count">How many.</param>
public sealed record ReliabilityPoint(double Claimed, double CameTrue, int Count);

/// <summary>Claimed odds against what came true; on the dashed line they are the same. Bars: two standard errors.</summary>
public static class ReliabilityCurve
{
    private const double Size = 300, Left = 54, Top = 34;

    public static string Svg(string title, ImmutableArray<ReliabilityPoint> points, DrawingOptions? options = null)
    {
        options ??= DrawingOptions.Default;
        var pen = SmallDrawing.Pen(options);
        pen.Text("hs-heading", Left, 20, title);
        pen.Rect("hs-body", Left, Top, Size, Size);
        for (var i = 0; i <= 5; i++)
        {
            var share = i / 5.0;
            var text = (share * 100).ToString("0", CultureInfo.InvariantCulture) + " %";
            pen.Text("hs-number hs-middle", X(share), Top + Size + 14, text);
            pen.Text("hs-number hs-end", Left - 5, Y(share) + 3, text);
        }

        pen.Line("hs-link", X(0), Y(0), X(1), Y(1));
        foreach (var point in points.Where(p => p.Count > 0))
        {
            var error = 2 * Math.Sqrt(Math.Max(0, point.CameTrue * (1 - point.CameTrue)) / point.Count);
            pen.Line("hs-symbol", X(point.Claimed), Y(Math.Min(1, point.CameTrue + error)), X(point.Claimed), Y(Math.Max(0, point.CameTrue - error)));
            pen.Circle("hs-ring", X(point.Claimed), Y(point.CameTrue), 4);
            pen.Text("hs-number", X(point.Claimed) + 6, Y(point.CameTrue) + 10, point.Count.ToString(CultureInfo.InvariantCulture));
        }

        pen.Text("hs-key hs-middle", X(0.5), Top + Size + 30, options.Texts.Say("drawing.curve-claimed"));
        pen.Upwards("hs-key hs-middle", 14, Y(0.5), options.Texts.Say("drawing.curve-true"));
        var description = string.Join("; ", points.Select(p => options.Texts.Say(new Message(
            "drawing.curve-point", (p.Claimed * 100).ToString("0", CultureInfo.InvariantCulture), (p.CameTrue * 100).ToString("0", CultureInfo.InvariantCulture), p.Count))));
        return SmallDrawing.Document(options, "reliability", title, description, Left + Size + 30, Top + Size + 44, pen);

        static double X(double share) => Left + (Size * share);
        static double Y(double share) => Top + (Size * (1 - share));
    }
}
