namespace Halfsplit.Drawing.Svg;

/// <summary>Writes a laid-out circuit as SVG.</summary>
internal static class CircuitSvg
{
    public static string Draw(CircuitLayout layout, DrawingOptions options) =>
        $"""<svg xmlns="http://www.w3.org/2000/svg" role="img" id="{options.IdPrefix}circuit"><title>{System.Net.WebUtility.HtmlEncode(layout.Circuit.Title)}</title></svg>""";
}
