using System.Globalization;
using System.Text;

namespace Halfsplit.Drawing.Svg;

/// <summary>The svg element round a drawing: size, style, title and description for those who can't see it.</summary>
internal sealed class SvgDocument(DrawingOptions options, string name, string title, string description)
{
    /// <param name="seen">The part of the drawing that is shown; null for all of it.</param>
    public string Write(
        double width, double height, string body, (double X, double Y, double Width, double Height)? seen = null)
    {
        var id = options.IdPrefix + name;
        var (w, h) = (Pen.N(Math.Ceiling(width)), Pen.N(Math.Ceiling(height)));
        var view = seen ?? (0, 0, Math.Ceiling(width), Math.Ceiling(height));
        return new StringBuilder()
            .Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" id=\"{id}\" class=\"hs-drawing hs-{StyleSheet.NameOf(options.Theme)}\"")
            .Append(CultureInfo.InvariantCulture, $" width=\"{Pen.N(view.Width)}\" height=\"{Pen.N(view.Height)}\"")
            .Append(CultureInfo.InvariantCulture, $" viewBox=\"{Pen.N(view.X)} {Pen.N(view.Y)} {Pen.N(view.Width)} {Pen.N(view.Height)}\"")
            .Append(CultureInfo.InvariantCulture, $" role=\"graphics-document\" aria-labelledby=\"{id}-title\" aria-describedby=\"{id}-desc\">\n")
            .Append(CultureInfo.InvariantCulture, $"<title id=\"{id}-title\">{Pen.Escape(title)}</title>\n<desc id=\"{id}-desc\">{Pen.Escape(description)}</desc>\n")
            .Append("<style>").Append(StyleSheet.For(options, options.Switchable ? "#" + id : "")).Append("</style>\n")
            .Append(CultureInfo.InvariantCulture, $"<rect class=\"hs-paper\" width=\"{w}\" height=\"{h}\"/>\n")
            .Append(body).Append("</svg>\n").ToString();
    }
}
