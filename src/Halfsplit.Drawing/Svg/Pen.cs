using System.Globalization;
using System.Net;
using System.Text;
using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Layers;

namespace Halfsplit.Drawing.Svg;

/// <summary>Where a lead touches a terminal on the page.</summary>
internal readonly record struct TerminalPoint(TerminalName Terminal, double X, double Y);

/// <summary>Writes SVG elements, moved to the box being drawn. Numbers have one decimal and a point, whatever the culture.</summary>
internal sealed class Pen(Shown shown, string idPrefix)
{
    private readonly StringBuilder _text = new();

    public Shown Shown { get; } = shown;

    /// <summary>Where the terminals drawn so far are, on the page.</summary>
    public List<TerminalPoint> Marks { get; } = [];

    public double X { get; private set; }

    public double Y { get; private set; }

    public string Written => _text.ToString();

    public static string N(double value)
    {
        var text = value.ToString("0.#", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    public static string Escape(string text) => WebUtility.HtmlEncode(text);

    public void MoveTo(double x, double y) => (X, Y) = (x, y);

    /// <summary>An id of this drawing for a thing of the circuit: letters, digits, hyphens, dots.</summary>
    public string IdOf(string kind, string name)
    {
        var id = new StringBuilder(idPrefix).Append(kind).Append('-');
        foreach (var letter in name)
        {
            if (char.IsAsciiLetterOrDigit(letter) || letter is '.' or '-')
            {
                id.Append(letter);
            }
            else
            {
                id.Append('_').Append(((int)letter).ToString("x", CultureInfo.InvariantCulture)).Append('_');
            }
        }

        return id.ToString();
    }

    public void Open(string style, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        _text.Append("<g class=\"").Append(style).Append('"');
        foreach (var (name, value) in attributes)
        {
            _text.Append(' ').Append(name).Append("=\"").Append(Escape(value)).Append('"');
        }

        _text.Append('>');
    }

    public void Title(string text) => _text.Append("<title>").Append(Escape(text)).Append("</title>");

    public void Close() => _text.Append("</g>\n");

    public void Line(string style, double x1, double y1, double x2, double y2) => _text
        .Append("<line class=\"").Append(style)
        .Append("\" x1=\"").Append(N(X + x1)).Append("\" y1=\"").Append(N(Y + y1))
        .Append("\" x2=\"").Append(N(X + x2)).Append("\" y2=\"").Append(N(Y + y2)).Append("\"/>");

    public void Polyline(string style, params ReadOnlySpan<(double X, double Y)> points)
    {
        var separator = "";
        _text.Append("<polyline class=\"").Append(style).Append("\" points=\"");
        foreach (var (x, y) in points)
        {
            _text.Append(separator).Append(N(X + x)).Append(',').Append(N(Y + y));
            separator = " ";
        }

        _text.Append("\"/>");
    }

    /// <summary>A conductor inside a symbol: as thick as its amps.</summary>
    public void Wire(double? amps, params ReadOnlySpan<(double X, double Y)> points) => Polyline(CurrentWidth.Class(amps), points);

    public void Wire(double? amps, double x1, double y1, double x2, double y2) => Wire(amps, (x1, y1), (x2, y2));

    public void Rect(string style, double x, double y, double width, double height, double round = 0)
    {
        _text.Append("<rect class=\"").Append(style)
            .Append("\" x=\"").Append(N(X + x)).Append("\" y=\"").Append(N(Y + y))
            .Append("\" width=\"").Append(N(width)).Append("\" height=\"").Append(N(height)).Append('"');
        _text.Append(round > 0 ? $" rx=\"{N(round)}\"/>" : "/>");
    }

    public void Circle(string style, double x, double y, double radius) => _text
        .Append("<circle class=\"").Append(style)
        .Append("\" cx=\"").Append(N(X + x)).Append("\" cy=\"").Append(N(Y + y)).Append("\" r=\"").Append(N(radius)).Append("\"/>");

    /// <summary>Elements written elsewhere, in the coordinates of the page.</summary>
    public void Raw(string elements) => _text.Append(elements).Append('\n');

    /// <summary>A path whose coordinates are on the page already.</summary>
    public void Path(string style, string d) => _text.Append("<path class=\"").Append(style).Append("\" d=\"").Append(d).Append("\"/>");

    public void Text(string style, double x, double y, string text) => _text
        .Append("<text class=\"").Append(style)
        .Append("\" x=\"").Append(N(X + x)).Append("\" y=\"").Append(N(Y + y)).Append("\">").Append(Escape(text)).Append("</text>");

    /// <summary>A text that reads upwards.</summary>
    public void Upwards(string style, double x, double y, string text) => _text
        .Append("<text class=\"").Append(style)
        .Append("\" transform=\"translate(").Append(N(X + x)).Append(' ').Append(N(Y + y)).Append(") rotate(-90)\">")
        .Append(Escape(text)).Append("</text>");

    public void Arrow(string style, double x1, double y1, double x2, double y2)
    {
        Line(style, x1, y1, x2, y2);
        var angle = Math.Atan2(y2 - y1, x2 - x1);
        foreach (var side in (double[])[angle + 2.6, angle - 2.6])
        {
            Line(style, x2, y2, x2 + (3.5 * Math.Cos(side)), y2 + (3.5 * Math.Sin(side)));
        }
    }

    /// <summary>The odds of a suspect: a bar filled to its share, and the number.</summary>
    public void Badge(double x, double y, double odds)
    {
        var text = OddsText.Of(odds);
        Rect("hs-odds", x, y, 33, 11, 2);
        Rect("hs-odds-share", x, y + 9, 33 * Math.Clamp(odds, 0.02, 1), 2);
        Text("hs-odds-text hs-middle", x + 16.5, y + 8, text);
    }
}
