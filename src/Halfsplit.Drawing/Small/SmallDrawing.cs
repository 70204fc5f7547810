using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>What the small drawings share: a pen without a circuit, and the svg element round it.</summary>
internal static class SmallDrawing
{
    public static Pen Pen(DrawingOptions options) => new(Shown.Nothing, options.IdPrefix);

    public static string Document(
        DrawingOptions options, string name, string title, string description, double width, double height, Pen pen) =>
        new SvgDocument(options, name, title, description).Write(width, height, pen.Written);

    /// <summary>Wrapped lines of a note; returns the height used.</summary>
    public static double Note(Pen pen, string text, double x, double y, double width)
    {
        const double Size = 10.5, LineHeight = 14;
        var lines = TextMeasure.Wrap(text, Size, width);
        for (var i = 0; i < lines.Count; i++)
        {
            pen.Text("hs-key", x, y + (LineHeight * i), lines[i]);
        }

        return lines.Count * LineHeight;
    }
}
