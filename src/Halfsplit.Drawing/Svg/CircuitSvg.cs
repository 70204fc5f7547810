using System.Text;
using Halfsplit.Drawing.Layout;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Symbols;

namespace Halfsplit.Drawing.Svg;

/// <summary>Writes a laid-out circuit as SVG: paper, frames, wires, symbols, marks, key.</summary>
internal static class CircuitSvg
{
    private const double Margin = 16, LeastWidth = 420, HeadingSize = 15;

    public static string Draw(CircuitLayout layout, DrawingOptions options)
    {
        var pen = new Pen(new Shown(layout, options), options.IdPrefix);
        DrawFrames(layout, pen);
        Wiring.Draw(layout, pen);
        DrawBoxes(layout, options, pen);
        LayerMarks.Draw(layout, options, pen);
        var width = Math.Max(layout.Width, LeastWidth);
        var heading = new Heading(layout.Circuit, width);
        var key = DrawingKey.Of(layout.Circuit, options, width);
        var document = new SvgDocument(options, "circuit", layout.Circuit.Title, Description.Of(layout.Circuit, options));
        var body = new StringBuilder()
            .Append(heading.Draw(Margin, Margin + HeadingSize))
            .Append("<g transform=\"translate(").Append(Pen.N(Margin)).Append(' ').Append(Pen.N(Margin + heading.Height)).Append(")\">\n")
            .Append(pen.Written).Append("</g>\n")
            .Append(key.Draw(Margin, Margin + heading.Height + layout.Height + 12));
        var (fullWidth, fullHeight) = (width + (2 * Margin), (2 * Margin) + heading.Height + layout.Height + 12 + key.Height);
        var seen = options.AroundFault is { } size && LayerMarks.FirstFault(layout, options) is { } fault
            ? Moved(FaultWindow.Of(layout, fault, size), Margin, Margin + heading.Height)
            : ((double, double, double, double)?)null;
        return document.Write(fullWidth, fullHeight, body.ToString(), seen);
    }

    private static (double X, double Y, double Width, double Height) Moved(
        (double X, double Y, double Width, double Height) window, double right, double down) =>
        (window.X + right, window.Y + down, window.Width, window.Height);

    private static void DrawFrames(CircuitLayout layout, Pen pen)
    {
        pen.MoveTo(0, 0);
        foreach (var frame in layout.Frames)
        {
            var (first, last) = (frame.Boxes[0], frame.Boxes[^1]);
            var (from, to) = layout.RowBand(first.Row);
            var left = first.X - frame.Pad;
            pen.Open("hs-place-frame", ("data-place", frame.Place));
            pen.Rect("hs-frame", left, from, last.X + last.Width - left + Frame.Margin, to - from, 4);
            for (var i = 0; i < frame.Lines.Count; i++)
            {
                pen.Upwards("hs-frame-name hs-middle", left + 11 + (Frame.LineWidth * i), (from + to) / 2, frame.Lines[i]);
            }

            pen.Close();
        }
    }

    private static void DrawBoxes(CircuitLayout layout, DrawingOptions options, Pen pen)
    {
        foreach (var box in layout.Grid.Graph.Boxes)
        {
            pen.MoveTo(box.X, box.Y);
            switch (box)
            {
                case PartBox part:
                    pen.Open(
                        $"hs-part hs-{part.Part.Kind.Replace(' ', '-')}",
                        ("id", pen.IdOf("part", part.Identity)), ("data-part", part.Part.Id));
                    pen.Title(Description.Of(part, options, pen.Shown));
                    pen.Rect("hs-focus", -2, -2, box.Width + 2, box.Height + 4, 3);
                    part.Draw(pen);
                    pen.Close();
                    break;
                case LabelBox label:
                    Wiring.DrawLabel(label, pen);
                    break;
                default:
                    break;
            }
        }
    }
}
