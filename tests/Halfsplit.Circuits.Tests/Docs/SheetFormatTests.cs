using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Docs;

public sealed class SheetFormatTests
{
    /// <summary>The example of the page.</summary>
    internal static string Example()
    {
        var page = DocsFile.Read("sheet-format.md");
        const string Fence = "```yaml\n";
        var start = page.IndexOf(Fence, StringComparison.Ordinal) + Fence.Length;
        return page[start..page.IndexOf("```", start, StringComparison.Ordinal)];
    }

    [Fact]
    public void The_example_reads_and_lints_clean()
    {
        var reading = SheetReader.Read(Example());
        Assert.Empty(reading.Problems);
        Assert.Empty(CircuitLint.Check(reading.Circuit!, reading.Positions));
    }

    [Fact]
    public void The_page_has_every_key_of_the_schema()
    {
        var page = DocsFile.Read("sheet-format.md");
        var missing = SheetSchema.Keys().Where(k => !page.Contains($"`{k}", StringComparison.Ordinal)).ToList();
        Assert.Empty(missing);
    }

    [Fact]
    public void The_page_has_the_limits_as_they_are()
    {
        var page = DocsFile.Read("sheet-format.md");
        foreach (var limit in new[]
        {
            SheetLimits.Characters, SheetLimits.Nodes, SheetLimits.Depth, SheetLimits.Parts, SheetLimits.Paths,
            SheetLimits.PathItems, SheetLimits.AllItems, SheetLimits.Others, SheetLimits.Problems,
        })
        {
            Assert.Contains(limit.ToString("N0", System.Globalization.CultureInfo.InvariantCulture), page, StringComparison.Ordinal);
        }
    }
}
