using System.Collections.Immutable;
using System.Xml.Linq;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis;
using Halfsplit.Drawing.Small;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Drawing.Tests;

public sealed class SmallDrawingTests
{
    private static readonly Circuit Lamps = LayoutTests.Shipped("headlamps");

    private static List<string> TextsOf(string svg) =>
        [.. XDocument.Parse(svg).Root!.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];

    [Fact]
    public void A_connector_shows_its_cavities_in_order_and_the_two_to_touch()
    {
        var texts = TextsOf(ConnectorFace.Svg(Lamps, "C10", TerminalName.Parse("C10.1b"), TerminalName.Parse("C10.3b")));

        Assert.Equal(["1", "2", "3"], texts.Where(t => t is "1" or "2" or "3"));
        Assert.Contains("YE", texts);
        Assert.True(texts.IndexOf("+") is var red and > 0 && red < texts.IndexOf("2"), "the red lead is not at cavity 1");
        Assert.True(texts.IndexOf("−") > texts.IndexOf("3"), "the black lead is not at cavity 3");
    }

    [Fact]
    public void A_lead_elsewhere_is_left_out() =>
        Assert.DoesNotContain("+", TextsOf(ConnectorFace.Svg(Lamps, "C10", TerminalName.Parse("BODY"), null)));

    [Fact]
    public void An_unknown_connector_is_refused() =>
        Assert.Throws<ArgumentException>(() => ConnectorFace.Svg(Lamps, "F1"));

    [Fact]
    public void A_box_shows_every_slot_once_and_marks_one()
    {
        var root = XDocument.Parse(FuseBox.Svg(Lamps, "engine bay box", "F22")).Root!;
        var slots = root.Descendants().Where(e => e.Attribute("data-part") is not null).ToList();

        Assert.Equal(
            Lamps.Parts.Where(p => p.Notes is { Place: "engine bay box", Slot: not null }).Select(p => p.Id).Order(StringComparer.Ordinal),
            slots.Select(s => (string)s.Attribute("data-part")!).Order(StringComparer.Ordinal));
        Assert.Equal(["F22"], slots.Where(s => s.Elements().Any(e => e.Name.LocalName == "path")).Select(s => (string)s.Attribute("data-part")!));
    }

    [Fact]
    public void A_described_box_shows_every_slot_where_it_lies_and_says_where_the_marked_one_is()
    {
        var root = XDocument.Parse(FuseBox.Svg(Lamps, "engine bay box", "F22")).Root!;
        var grid = Lamps.FindPlace("engine bay box")!.Grid!;
        var named = root.Descendants().Where(e => (string?)e.Attribute("class") == "hs-number").ToDictionary(
            e => e.Value, e => (X: (double)e.Attribute("x")!, Y: (double)e.Attribute("y")!), StringComparer.Ordinal);

        Assert.All(grid.Named(), slot => Assert.Contains(slot, named.Keys));
        Assert.All(grid.Rows, row => Assert.Equal(row.Where(named.ContainsKey), row.Where(named.ContainsKey).OrderBy(s => named[s].X)));
        Assert.All(grid.Rows.Zip(grid.Rows.Skip(1)), pair => Assert.True(named[pair.First[0]].Y < named[pair.Second[0]].Y));
        Assert.True(named["M1"].X > named["6"].X + (1.5 * (named["6"].X - named["5"].X)), "the gap before M1 is not kept");
        Assert.Contains("F22: middle row, second from the left.", TextsOf(root.ToString()));
    }

    [Fact]
    public void Every_instrument_has_its_setting_in_words() => Assert.All(Enum.GetValues<Instrument>(), instrument =>
        Assert.DoesNotContain(TextsOf(MeterDial.Svg(instrument)), t => t.StartsWith("instrument.", StringComparison.Ordinal)));

    [Fact]
    public void The_scale_bands_what_cannot_be_told_apart()
    {
        var work = Investigation.Open(Lamps, Lamps.Complaints[0]);
        var check = work.FindCheck("volts C10.1b C10.3b | dipped beam")!;
        var bands = ReadingScale.BandsOf(work.Expected(check, 20).Append(work.ExpectedHealthy(check)));

        Assert.NotEmpty(bands);
        Assert.Equal(bands.OrderBy(b => b.Low), bands);
        Assert.All(bands.Zip(bands.Skip(1)), pair => Assert.True(pair.First.High < pair.Second.Low));
        var svg = ReadingScale.Svg(bands, "V", 11.4);
        Assert.Contains("Read: 11.4 V", TextsOf(svg));
        Assert.All(bands.Select((_, i) => ((char)('A' + i)).ToString()), letter => Assert.Equal(2, TextsOf(svg).Count(t => t == letter)));
    }

    [Fact]
    public void The_mark_of_a_reading_lies_on_the_scale_where_its_number_does()
    {
        ImmutableArray<ScaleBand> bands = [new(0, 1, "low", 0.5), new(9, 10, "high", null)];
        double MarkOf(double reading) => double.Parse(
            XDocument.Parse(ReadingScale.Svg(bands, "V", reading)).Root!.Descendants()
                .Single(e => (string?)e.Attribute("class") == "hs-solid").Attribute("d")!.Value[1..].Split(' ')[0],
            System.Globalization.CultureInfo.InvariantCulture);

        Assert.Equal(MarkOf(5), (MarkOf(0) + MarkOf(10)) / 2, 0.2);
    }

    [Fact]
    public void The_curve_and_the_bars_say_their_numbers()
    {
        var curve = ReliabilityCurve.Svg("Odds", [new(0.5, 0.4, 20), new(0.9, 0.95, 100)]);
        var bars = BarPlot.Svg("Minutes", "min", [new("engine", 21.5, 20, 23), new("fixed order", 60)]);

        Assert.Contains("100", TextsOf(curve));
        Assert.Contains("21.5", TextsOf(bars));
        Assert.Contains("fixed order", TextsOf(bars));
    }
}
