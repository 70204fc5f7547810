using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Sheets;

/// <summary>Texts made to eat time or memory; each is refused with one plain problem.</summary>
public sealed class BombTests
{
    private const string Start = "sheet: 1\ntitle: T\nconditions: { key off: {} }\nparts:\n  BAT: { kind: battery }\n";

    /// <summary>The problems these texts bring.</summary>
    internal static IReadOnlyList<string> Codes { get; } =
        ["sheet.too-long", "sheet.too-deep", "sheet.too-many", "sheet.too-many-of", "sheet.path-too-long"];

    [Theory]
    [InlineData("sheet.too-long")]
    [InlineData("sheet.too-deep")]
    [InlineData("sheet.too-many")]
    [InlineData("sheet.too-many-of")]
    [InlineData("sheet.path-too-long")]
    public void Size_is_limited(string code)
    {
        var text = code switch
        {
            "sheet.too-long" => Start + new string(' ', SheetLimits.Characters),
            "sheet.too-deep" => Start + "x: " + new string('[', 100_000),
            "sheet.too-many" => Start + "x: [" + string.Join(',', Enumerable.Repeat("a", SheetLimits.Nodes + 1)) + "]",
            "sheet.too-many-of" => Start + Lines("  S{0}: {{ kind: splice }}", SheetLimits.Parts + 1) + "wiring: []\n",
            _ => Start + "  S1: { kind: splice }\nwiring:\n  - " + string.Join(" -> ", Enumerable.Repeat("S1", SheetLimits.PathItems + 1)),
        };
        var reading = SheetReader.Read(text);
        Assert.Null(reading.Circuit);
        Assert.Contains(reading.Problems, p => p.Message.Code == code);
    }

    [Theory]
    [InlineData("conditions", "  c{0}: {{}}")]
    [InlineData("places", "  p{0}: {{}}")]
    public void Every_section_is_limited(string section, string line)
    {
        var text = $"sheet: 1\ntitle: T\n{section}:\n{Lines(line, SheetLimits.Others + 1)}parts: {{ BAT: {{ kind: battery }} }}\nwiring: []\n";
        Assert.Contains(SheetReader.Read(text).Problems, p => p.Message.Code == "sheet.too-many-of");
    }

    [Fact]
    public void Wiring_is_limited_by_paths_and_by_items()
    {
        var many = Start + "  S1: { kind: splice }\nwiring:\n" + Lines("  - S1 -> BODY", SheetLimits.Paths + 1);
        Assert.Contains(SheetReader.Read(many).Problems, p => p.Message.Code == "sheet.too-many-of");
        var wide = "  - " + string.Join(" -> ", Enumerable.Repeat("S1", SheetLimits.PathItems));
        var long_ = Start + "  S1: { kind: splice }\nwiring:\n" + Lines(wide, 2 + SheetLimits.AllItems / SheetLimits.PathItems);
        Assert.Contains(SheetReader.Read(long_).Problems, p => p.Message.Code == "sheet.too-many-of");
    }

    [Fact]
    public void Aliases_that_double_with_every_line_are_refused()
    {
        var text = new StringBuilder("a0: &a0 [x, x]\n");
        for (var i = 1; i < 60; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"a{i}: &a{i} [*a{i - 1}, *a{i - 1}]\n");
        }

        var reading = SheetReader.Read(text.ToString());
        Assert.Null(reading.Circuit);
        Assert.Contains(reading.Problems, p => p.Message.Code == "sheet.alias");
        Assert.Contains(reading.Problems, p => p.Message.Code == "sheet.anchor");
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{")]
    [InlineData("- ")]
    [InlineData("? ")]
    [InlineData("[{a: ")]
    [InlineData("a: \n ")]
    [InlineData("\"")]
    [InlineData("'")]
    [InlineData("%TAG ! x\n")]
    [InlineData("&a ")]
    [InlineData("*a ")]
    [InlineData("!!x ")]
    [InlineData("|\n")]
    [InlineData("#")]
    [InlineData("\t")]
    [InlineData("-> ")]
    [InlineData("{a: b, ")]
    public void A_long_run_of_one_sign_is_refused(string sign)
    {
        var text = string.Concat(Enumerable.Repeat(sign, 150_000 / sign.Length));
        foreach (var start in new[] { "", "x: ", Start, Start + "wiring:\n  - " })
        {
            Assert.Null(SheetReader.Read(start + text).Circuit);
        }
    }

    [Fact]
    public void A_sheet_at_the_limits_is_read_written_and_linted()
    {
        var parts = SheetLimits.Parts - 2;
        var text = new StringBuilder(Start).Append("  F1: { kind: fuse, rating: 10 A }\n");
        text.Append(Lines("  L{0}: {{ kind: lamp, watts: 1 W }}", parts)).Append("wiring:\n  - BAT.pos -> wire 1mm2 1m -> F1\n");
        text.Append(Lines("  - F1.2 -> wire 1mm2 1m -> L{0} -> wire 1mm2 1m -> BODY", parts));
        text.Append("  - BODY -> wire 16mm2 1m -> BAT.neg\n");
        var reading = SheetReader.Read(text.ToString());
        Assert.Empty(reading.Problems);
        Assert.Empty(CircuitLint.Check(reading.Circuit!, reading.Positions));
        Assert.Empty(SheetReader.Read(SheetWriter.Write(reading.Circuit!)).Problems);
    }

    [Fact]
    public void Many_mistakes_are_reported_up_to_a_limit()
    {
        var text = Start + Lines("  X{0}: {{ kind: fuse, ratnig: 10 A, plaec: x, slto: y }}", 400) + "wiring: []\n";
        Assert.Equal(SheetLimits.Problems, SheetReader.Read(text).Problems.Length);
    }

    private static string Lines(string format, int count)
    {
        var text = new StringBuilder();
        for (var i = 0; i < count; i++)
        {
            text.AppendFormat(CultureInfo.InvariantCulture, format, i).Append('\n');
        }

        return text.ToString();
    }
}
