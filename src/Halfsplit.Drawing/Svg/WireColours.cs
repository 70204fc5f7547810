namespace Halfsplit.Drawing.Svg;

/// <summary>The colours of IEC 60757, as a short sleeve on a wire. The letters stand beside it, so the colour is never needed.</summary>
internal static class WireColours
{
    private static readonly Dictionary<string, string> Known = new(StringComparer.OrdinalIgnoreCase)
    {
        ["BK"] = "#1c1c1c", ["BN"] = "#7a4a21", ["RD"] = "#d0231f", ["OG"] = "#ee7d11", ["YE"] = "#f2cc0c", ["GN"] = "#2e8b3d",
        ["BU"] = "#2563c4", ["VT"] = "#7d3fa6", ["GY"] = "#8c8f94", ["WH"] = "#fafafa", ["PK"] = "#f0a3bb", ["TQ"] = "#2bb5b0",
    };

    /// <summary>Base colour, and the tracer as a stripe down the middle.</summary>
    public static void Sleeve(Pen pen, string? colour, double axis, double from, double length)
    {
        var codes = (colour ?? "").Split('/', '-');
        if (!Known.ContainsKey(codes[0].Trim()))
        {
            return;
        }

        pen.Rect($"hs-sleeve hs-{codes[0].Trim().ToUpperInvariant()}", axis - 3, from, 6, length, 1);
        if (codes.Length > 1 && Known.ContainsKey(codes[1].Trim()))
        {
            pen.Rect($"hs-tracer hs-{codes[1].Trim().ToUpperInvariant()}", axis - 1, from, 2, length);
        }

    }

    /// <summary>The rules of the style sheet.</summary>
    public static string Rules => string.Concat(Known.Select(k => $".hs-{k.Key}{{fill:{k.Value}}}"));
}
