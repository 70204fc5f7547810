using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using Halfsplit.Drawing.Small;
using Xunit;

namespace Halfsplit.Drawing.Tests;

public sealed class LinePlotTests
{
    [Fact]
    public void A_short_peak_among_many_points_is_drawn_and_marks_have_their_text()
    {
        ImmutableArray<(double X, double Y)> points = [.. Enumerable.Range(0, 50_000).Select(i => (i * 1e-4, i == 31_234 ? 9.0 : 1.0))];
        var root = XDocument.Parse(LinePlot.Svg("Current", [new Curve("Wave", "s", "A", points, [(2.5, "turn")])])).Root!;
        var line = Assert.Single(root.Descendants(), e => e.Name.LocalName == "polyline");
        var corners = ((string)line.Attribute("points")!).Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(p => p.Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray()).ToList();

        Assert.InRange(corners.Count, 500, 3000);
        Assert.True(corners.Min(c => c[1]) < corners.Max(c => c[1]) - 100, "the peak is lost");
        Assert.Equal(corners.Select(c => c[0]).Order(), corners.Select(c => c[0]));
        Assert.Contains("turn", root.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value));
    }
}
