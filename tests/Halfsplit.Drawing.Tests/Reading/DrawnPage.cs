using System.Globalization;
using System.Xml.Linq;

namespace Halfsplit.Drawing.Tests.Reading;

/// <summary>A box on the page.</summary>
internal readonly record struct Area(double Left, double Top, double Right, double Bottom, string What)
{
    /// <summary>True if the two share more than this much both ways.</summary>
    public bool Overlaps(Area other, double tolerance) =>
        Math.Min(Right, other.Right) - Math.Max(Left, other.Left) > tolerance
        && Math.Min(Bottom, other.Bottom) - Math.Max(Top, other.Top) > tolerance;
}

/// <summary>A straight piece of wire.</summary>
internal readonly record struct Piece(double X1, double Y1, double X2, double Y2, bool IsInSymbol)
{
    public bool Touches(double x, double y)
    {
        const double Near = 0.6;
        return x >= Math.Min(X1, X2) - Near && x <= Math.Max(X1, X2) + Near && y >= Math.Min(Y1, Y2) - Near && y <= Math.Max(Y1, Y2) + Near;
    }

    public Area Area => new(Math.Min(X1, X2), Math.Min(Y1, Y2), Math.Max(X1, X2), Math.Max(Y1, Y2), $"wire at {X1},{Y1}");
}

/// <summary>A drawing as a reader finds it: read back from its SVG, with nothing taken from the layout.</summary>
internal sealed class DrawnPage
{
    private static readonly Dictionary<string, double> Sizes = new(StringComparer.Ordinal)
    {
        ["hs-heading"] = 15, ["hs-summary"] = 10.5, ["hs-key"] = 10.5, ["hs-identity"] = 11.5, ["hs-letter"] = 12, ["hs-number"] = 8.5,
        ["hs-volts"] = 8.5, ["hs-amps"] = 8.5, ["hs-wire-text"] = 8.5, ["hs-odds-text"] = 8, ["hs-reading-text"] = 8.5, ["hs-red-text"] = 11,
        ["hs-black-text"] = 11,
    };

    public DrawnPage(string svg)
    {
        Root = XDocument.Parse(svg).Root!;
        var circuit = Root.Elements().First(e => e.Name.LocalName == "g");
        Walk(circuit, [], null);
    }

    public XElement Root { get; }

    public List<Area> Texts { get; } = [];

    public List<Area> Symbols { get; } = [];

    public List<Piece> Wires { get; } = [];

    public Dictionary<string, (double X, double Y)> Terminals { get; } = new(StringComparer.Ordinal);

    public HashSet<string> Parts { get; } = new(StringComparer.Ordinal);

    public HashSet<string> LabelledWires { get; } = new(StringComparer.Ordinal);

    private void Walk(XElement element, List<string> groups, string? terminal)
    {
        foreach (var child in element.Elements())
        {
            var styles = ((string?)child.Attribute("class") ?? "").Split(' ');
            switch (child.Name.LocalName)
            {
                case "g":
                    if ((string?)child.Attribute("data-part") is { } part)
                    {
                        Parts.Add(part);
                    }

                    if (styles.Contains("hs-label"))
                    {
                        LabelledWires.Add((string)child.Attribute("data-wire")!);
                    }

                    Walk(child, [.. groups, .. styles], (string?)child.Attribute("data-terminal") ?? terminal);
                    break;
                case "text":
                    Texts.Add(TextArea(child, styles));
                    break;
                case "rect" when styles.Contains("hs-focus"):
                    // The focus ring lies two pixels outside the symbol's box.
                    Symbols.Add(new Area(
                        N(child, "x") + 2, N(child, "y") + 2, N(child, "x") + N(child, "width"), N(child, "y") + N(child, "height") - 2,
                        (string?)element.Attribute("id") ?? ""));
                    break;
                case "circle" when styles.Contains("hs-touch") && terminal is not null:
                    Terminals[terminal] = (N(child, "cx"), N(child, "cy"));
                    break;
                case "polyline" when styles.Contains("hs-wire"):
                    var points = ((string)child.Attribute("points")!).Split(' ').Select(p => p.Split(',').Select(Number).ToArray()).ToList();
                    for (var i = 1; i < points.Count; i++)
                    {
                        Wires.Add(new Piece(points[i - 1][0], points[i - 1][1], points[i][0], points[i][1], groups.Contains("hs-part")));
                    }

                    break;
                case "line" when styles.Contains("hs-rail"):
                    Wires.Add(new Piece(N(child, "x1"), N(child, "y1"), N(child, "x2"), N(child, "y2"), true));
                    break;
                default:
                    break;
            }
        }
    }

    private static Area TextArea(XElement text, string[] styles)
    {
        var size = styles.Select(s => Sizes.GetValueOrDefault(s)).Where(s => s > 0).DefaultIfEmpty(9.5).First();
        var bold = styles.Any(s => s is "hs-identity" or "hs-heading" or "hs-letter" or "hs-amps" or "hs-state" or "hs-odds-text");
        // A plain sans-serif face; the layout reckons with a wider one.
        var width = text.Value.Length * size * (bold ? 0.58 : 0.52);
        var start = styles.Contains("hs-end") ? -width : styles.Contains("hs-middle") ? -width / 2 : 0;
        if ((string?)text.Attribute("transform") is { } turned)
        {
            var at = turned["translate(".Length..turned.IndexOf(')', StringComparison.Ordinal)].Split(' ').Select(Number).ToArray();
            return new Area(at[0] - (0.7 * size), at[1] - start - width, at[0], at[1] - start, text.Value);
        }

        var (x, y) = (N(text, "x") + start, N(text, "y"));
        return new Area(x, y - (0.72 * size), x + width, y, text.Value);
    }

    private static double N(XElement element, string name) => Number((string)element.Attribute(name)!);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
