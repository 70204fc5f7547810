namespace Halfsplit.Drawing.Svg;

/// <summary>The marks of the layers, as they stand in the key and on the drawing.</summary>
internal static class KeyIcons
{
    /// <summary>Width of the mark of one reading.</summary>
    private const double Narrow = 12;

    /// <param name="icon">Name of the icon, a reading's number, or nothing.</param>
    /// <param name="x">Left edge.</param>
    /// <param name="y">Middle.</param>
    public static string Draw(string icon, double x, double y)
    {
        var (n, m) = (Pen.N(x), Pen.N(y));
        return icon switch
        {
            "" => "",
            "flow" => $"<line class=\"hs-wire hs-flow hs-flow2\" x1=\"{n}\" y1=\"{m}\" x2=\"{Pen.N(x + 7)}\" y2=\"{m}\"/>"
                + $"<line class=\"hs-wire hs-flow hs-flow6\" x1=\"{Pen.N(x + 11)}\" y1=\"{m}\" x2=\"{Pen.N(x + 16)}\" y2=\"{m}\"/>",
            "odds" => $"<rect class=\"hs-odds\" x=\"{n}\" y=\"{Pen.N(y - 5)}\" width=\"18\" height=\"10\" rx=\"2\"/>"
                + $"<rect class=\"hs-odds-share\" x=\"{n}\" y=\"{Pen.N(y + 3)}\" width=\"11\" height=\"2\"/>",
            "leads" => Lead(isRed: true, x + 4, y, 5) + Lead(isRed: false, x + 15, y, 5),
            "about" => $"<circle class=\"hs-about\" cx=\"{Pen.N(x + 9)}\" cy=\"{m}\" r=\"5\"/>",
            "fault" => Fault(x + 9, y),
            _ => Reading(icon, x + 9, y),
        };
    }

    public static string Lead(bool isRed, double x, double y, double radius) => isRed
        ? $"<circle class=\"hs-red\" cx=\"{Pen.N(x)}\" cy=\"{Pen.N(y)}\" r=\"{Pen.N(radius)}\"/><text class=\"hs-red-text hs-middle\" x=\"{Pen.N(x)}\" y=\"{Pen.N(y + 3.8)}\">+</text>"
        : $"<circle class=\"hs-black\" cx=\"{Pen.N(x)}\" cy=\"{Pen.N(y)}\" r=\"{Pen.N(radius)}\"/><text class=\"hs-black-text hs-middle\" x=\"{Pen.N(x)}\" y=\"{Pen.N(y + 3.8)}\">−</text>";

    /// <summary>The numbers of readings; more than one reach to the right, where no terminal has its number.</summary>
    public static string Reading(string numbers, double x, double y)
    {
        var wide = Math.Max(Narrow, TextMeasure.Width(numbers, TextMeasure.Small, bold: true) + 5);
        x += (wide - Narrow) / 2;
        return $"<rect class=\"hs-reading\" x=\"{Pen.N(x - (wide / 2))}\" y=\"{Pen.N(y - 6)}\" width=\"{Pen.N(wide)}\" height=\"12\" rx=\"2\"/>"
            + $"<text class=\"hs-reading-text hs-middle\" x=\"{Pen.N(x)}\" y=\"{Pen.N(y + 3)}\">{Pen.Escape(numbers)}</text>";
    }

    public static string Fault(double x, double y) =>
        $"<circle class=\"hs-fault-mark\" cx=\"{Pen.N(x)}\" cy=\"{Pen.N(y)}\" r=\"6.5\"/>"
        + $"<path class=\"hs-fault-cross\" d=\"M{Pen.N(x - 3)} {Pen.N(y - 3)}l6 6m0 -6l-6 6\"/>";
}
