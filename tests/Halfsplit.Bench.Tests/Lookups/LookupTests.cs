using Halfsplit.Bench.Lookups;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Xunit;

namespace Halfsplit.Bench.Tests.Lookups;

public sealed class LookupTests
{
    // DIN 72552 as published on the pages named in the table.
    [Theory]
    [InlineData("15", "ignition switch")]
    [InlineData("30", "battery's plus")]
    [InlineData("31", "ground")]
    [InlineData("50", "starter")]
    [InlineData("54", "stop lamps")]
    [InlineData("56b", "dipped")]
    [InlineData("85", "winding end")]
    [InlineData("86", "winding start")]
    [InlineData("87A", "closed at rest")]
    [InlineData("b+", "battery plus")]
    [InlineData("D+", "charge warning")]
    [InlineData("r", "right")]
    public void A_terminal_has_its_published_meaning(string terminal, string meaning) =>
        Assert.Contains(meaning, Said.Text(Said.Good(TerminalTable.Of(terminal)).Lines[0].Said), StringComparison.Ordinal);

    [Fact]
    public void Every_terminal_and_colour_has_its_words_in_every_language()
    {
        foreach (var language in Language.All)
        {
            var texts = new TextCatalog(language, BenchTexts.Source);
            Assert.All(TerminalTable.All, t => Assert.DoesNotContain("bench-", texts.Say(Said.Good(TerminalTable.Of(t)).Lines[0].Said), StringComparison.Ordinal));
            Assert.Equal(WireColours.Codes.Length, WireColours.Codes.Select(c => texts.Say(ColourTable.Name(c))).Distinct().Count());
        }
    }

    /// <summary>What a table of wires may call a colour is understood here, and what is said here is understood there.</summary>
    [Fact]
    public void Colours_have_the_same_words_as_in_tables_of_wires()
    {
        Assert.All(DataFile.Read("colour-words.csv"), r => Assert.Equal(r.Text("code"), Said.Text(Said.Good(ColourTable.Of(r.Text("word"))).Lines[0].Said)));
        foreach (var language in Language.All)
        {
            var texts = new TextCatalog(language, BenchTexts.Source);
            Assert.All(WireColours.Codes, c => Assert.Equal(c, WireColours.Named(texts.Say(ColourTable.Name(c)))));
        }
    }

    // IEC 60757: codes, and several colours joined in the table's order; green with yellow is one.
    [Theory]
    [InlineData("BK", "BK", "black")]
    [InlineData("schwarz", "BK", "black")]
    [InlineData("Violet", "VT", "violet")]
    [InlineData("weiß", "WH", "white")]
    [InlineData("burd", "RDBU", "red and blue")]
    [InlineData("GNYE", "GNYE", "green-yellow")]
    [InlineData("YE/BK", "YE/BK", "yellow with a black tracer")]
    [InlineData("rot/weiß", "RD/WH", "red with a white tracer")]
    [InlineData("sw", "BK", "black")]
    [InlineData("grün-gelb", "GNYE", "green-yellow")]
    public void A_colour_is_found_by_code_and_by_name(string asked, string code, string name)
    {
        var lines = Said.Good(ColourTable.Of(asked)).Lines;

        Assert.Equal(code, Said.Text(lines[0].Said));
        Assert.Equal(name, Said.Text(lines[1].Said));
    }

    // The published list of ISO 8820-3 body colours.
    [Theory]
    [InlineData("5A", "tan")]
    [InlineData("7.5A", "brown")]
    [InlineData("10A mini", "red")]
    [InlineData("15A", "blue")]
    [InlineData("20A", "yellow")]
    [InlineData("25A", "clear")]
    [InlineData("30A", "green")]
    public void A_fuse_has_its_published_colour(string fuse, string colour) =>
        Assert.Equal(colour, Said.Text(Said.Good(FuseRatings.Of(fuse)).Lines[0].Said));

    // The published list of approximate equivalents beside IEC 60757: 0.75 mm² 20, 1 18, 1.5 16, 2.5 14, 4 12, 6 10, 10 8.
    [Theory]
    [InlineData(0.75, 20)]
    [InlineData(1, 18)]
    [InlineData(1.5, 16)]
    [InlineData(2.5, 14)]
    [InlineData(4, 12)]
    [InlineData(6, 10)]
    [InlineData(10, 8)]
    public void A_gauge_has_its_published_equivalent(double area, int awg) => Assert.Equal(awg, GaugeTable.NotThickerAwg(area));

    [Fact]
    public void Thicker_and_thinner_enclose_the_gauge()
    {
        Assert.Equal(12, GaugeTable.NotThinnerAwg(2.5));
        Assert.Null(GaugeTable.NotThinnerAwg(120));
        var lines = Said.Good(GaugeTable.Of("14 AWG")).Lines;
        Assert.Equal(["2.5 mm²", "1.5 mm²"], lines.Take(2).Select(l => Said.Text(l.Said)));
    }

    [Fact]
    public void What_is_not_in_a_table_is_refused_with_what_is()
    {
        Said.Refused(TerminalTable.Of("87c"), "Did you mean", "87b");
        Said.Refused(ColourTable.Of("plaid"), "BK", "GNYE");
        Said.Refused(FuseRatings.Of("11A"), "10", "15");
        Said.Refused(GaugeTable.Of("-3"), "0.2", "120");
    }
}
