using System.Globalization;
using System.Xml.Linq;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis;
using Halfsplit.Drawing.Layers;
using Halfsplit.Drawing.Tests.Reading;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Drawing.Tests;

public sealed class LayerTests
{
    private static readonly Circuit Pump = LayoutTests.Shipped("pump-feed");

    private static OperatingPoint Priming(params Fault[] faults) =>
        new CircuitSimulator(NetworkCompiler.Compile(Pump)).Simulate(new Arrangement("priming"), faults);

    private static XElement Draw(params DrawingLayer[] layers) =>
        XDocument.Parse(CircuitDrawing.Svg(Pump, new DrawingOptions { Layers = [.. layers] })).Root!;

    private static IEnumerable<XElement> With(XElement root, string attribute, string value) =>
        root.Descendants().Where(e => (string?)e.Attribute(attribute) == value);

    private static bool HasStyle(XElement element, string style) => ((string?)element.Attribute("class") ?? "").Split(' ').Contains(style);

    [Fact]
    public void Predicted_volts_stand_at_their_terminals()
    {
        var point = Priming();
        var root = Draw(new PredictionLayer(point));
        foreach (var name in (string[])["K2.87", "C3.4b", "M1.neg", "G2"])
        {
            var text = With(root, "data-terminal", name).Single().Elements().Single(e => HasStyle(e, "hs-volts")).Value;
            Assert.Equal(point.Volts(TerminalName.Parse(name)), double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture), 0.006);
        }
    }

    [Fact]
    public void Numbers_are_written_as_the_language_of_the_drawing_does()
    {
        var root = XDocument.Parse(CircuitDrawing.Svg(
            Pump, new DrawingOptions { Texts = DrawingTexts.English.In(Language.German), Layers = [new PredictionLayer(Priming())] })).Root!;
        foreach (var style in (string[])["hs-volts", "hs-amps", "hs-value", "hs-wire-text"])
        {
            var texts = root.Descendants().Where(e => HasStyle(e, style)).Select(e => e.Value).ToList();

            Assert.Contains(texts, t => t.Contains(',', StringComparison.Ordinal));
            Assert.DoesNotContain(texts, t => t.Contains('.', StringComparison.Ordinal));
        }
    }

    /// <summary>The owner of the car sees where the fault is, without the heading and the key of the whole.</summary>
    [Theory]
    [InlineData("G2")]
    [InlineData("F1")]
    [InlineData("S2")]
    public void A_window_round_the_fault_holds_it_and_nothing_but_wiring(string part)
    {
        var root = XDocument.Parse(CircuitDrawing.Svg(
            Pump, new DrawingOptions { Layers = [new FaultLayer([new Fault(part, FaultModes.Open)])], AroundFault = (500, 190) })).Root!;
        var view = ((string)root.Attribute("viewBox")!).Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        var moved = root.Descendants().Select(e => (string?)e.Attribute("transform")).First(t => t?.StartsWith("translate(", StringComparison.Ordinal) == true)!
            ["translate(".Length..^1].Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        var fault = root.Descendants().Single(e => HasStyle(e, "hs-fault"));
        var key = root.Descendants().Where(e => HasStyle(e, "hs-key")).Min(e => Number(e, "y"));

        Assert.InRange(view[2], 300, 500);
        Assert.InRange(view[3], 60, 190);
        Assert.InRange(Number(fault, "x") + moved[0], view[0], view[0] + view[2] - Number(fault, "width"));
        Assert.InRange(Number(fault, "y") + moved[1], view[1], view[1] + view[3] - Number(fault, "height"));
        Assert.True(view[1] + view[3] < key, "the key is seen");

        static double Number(XElement element, string name) => double.Parse((string)element.Attribute(name)!, CultureInfo.InvariantCulture);
    }

    [Fact]
    public void A_window_round_a_fault_cuts_no_text_that_it_need_not()
    {
        var (texts, cut) = (0, new List<string>());
        foreach (var circuit in ShippedSheets.Names.Select(ShippedSheets.Load))
        {
            var layout = CircuitDrawing.Lay(circuit);
            // One part in six is plenty: the fuses are in the first rows, the loads in the last.
            foreach (var part in circuit.Parts.Where((p, i) => p is Fuse or Lamp or Motor or Switch or Relay && i % 6 == 0))
            {
                var root = XDocument.Parse(CircuitDrawing.Svg(
                    layout, new DrawingOptions { Layers = [new FaultLayer([new Fault(part.Id, FaultModes.Open)])], AroundFault = (560, 200) })).Root!;
                var view = Numbers((string)root.Attribute("viewBox")!);
                var moved = Numbers(((string)root.Elements().First(e => e.Name.LocalName == "g").Attribute("transform")!)["translate(".Length..^1]);
                var (left, top) = (view[0] - moved[0], view[1] - moved[1]);
                var (right, bottom) = (left + view[2], top + view[3]);
                foreach (var text in new DrawnPage(root.ToString()).Texts.Where(t => t.Left < right && t.Right > left && t.Top < bottom && t.Bottom > top))
                {
                    texts++;
                    Assert.True(text.Top >= top && text.Bottom <= bottom, $"{circuit.Title}, {part.Id}: \"{text.What}\" is cut above or below");
                    if (text.Left < left || text.Right > right)
                    {
                        cut.Add($"{circuit.Title}, {part.Id}: {text.What}");
                    }
                }
            }
        }

        // Where rows are full there is no edge that cuts nothing.
        Assert.True(cut.Count <= texts / 100, $"{cut.Count} of {texts}: {string.Join("; ", cut)}");

        static double[] Numbers(string text) => [.. text.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
    }

    [Fact]
    public void The_path_is_the_thicker_the_more_current_it_carries()
    {
        var root = Draw(new PredictionLayer(Priming()));
        var (pump, coil, injector) = (Thickness(root, "K2.87~C1.2a"), Thickness(root, "K1.85~G1"), Thickness(root, "INJ1.neg~ECU.injector-1"));

        Assert.True(pump > coil, $"pump {pump}, coil {coil}");
        Assert.True(coil > 0);
        Assert.Equal(0, injector);
    }

    /// <summary>Kirchhoff's law at every splice: what the lines above it carry the lines below it carry too.</summary>
    [Fact]
    public void The_current_is_followed_through_contacts_without_a_wire()
    {
        var still = Draw(new PredictionLayer(Priming())).Descendants().Where(e => HasStyle(e, "hs-wire")).ToList();

        Assert.All(still, e => Assert.True(HasStyle(e, "hs-flow") || HasStyle(e, "hs-still"), "a line whose current is not known"));
    }

    [Fact]
    public void A_blown_fuse_is_drawn_broken_and_named_in_the_key()
    {
        var root = Draw(new PredictionLayer(Priming(new Fault("K2.87~C1.2a", FaultModes.ShortToGround))));

        Assert.Contains(With(root, "data-part", "F19").Single().Descendants(), e => HasStyle(e, "hs-broken"));
        Assert.Contains(root.Descendants(), e => HasStyle(e, "hs-key") && e.Value.Contains("F19", StringComparison.Ordinal));
    }

    [Fact]
    public void Suspects_have_their_odds_in_numbers()
    {
        var suspects = Investigation.Open(Pump, Pump.Complaints[0]).Suspects;
        var likeliest = suspects.Where(s => s.Faults.Length == 1 && s.Faults[0].Part == "M1").Sum(s => s.Odds);
        var badge = With(Draw(new SuspectLayer(suspects)), "data-part", "M1").Single().Elements().Single(e => HasStyle(e, "hs-odds-text")).Value;

        Assert.Equal(Math.Round(100 * likeliest), double.Parse(badge.Split(' ')[0], CultureInfo.InvariantCulture), 0.01);
    }

    [Fact]
    public void Leads_have_a_sign_beside_their_colour_and_stand_in_the_key()
    {
        var root = Draw(new LeadsLayer(new Probe(Instrument.Volts, TerminalName.Parse("C3.4b"), TerminalName.Parse("F19.2p"))));

        Assert.Equal("+", With(root, "data-lead", "C3.4b").Single().Elements().Last().Value);
        Assert.Equal("−", With(root, "data-lead", "F19.2p").Single().Elements().Last().Value);
        Assert.Contains("C3.4b", root.Elements().Single(e => e.Name.LocalName == "desc").Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_are_numbered_where_they_were_taken()
    {
        var probe = new Probe(Instrument.Volts, TerminalName.Parse("K2.30"), TerminalName.Parse("BODY"));
        var root = Draw(new ReadingsLayer([new ReadingMark(4, probe, "12.4 V"), new ReadingMark(7, probe, "0.2 V")]));

        Assert.Equal(2, root.Descendants().Count(e => HasStyle(e, "hs-reading-text") && e.Value == "4,7"));
        Assert.Contains(root.Descendants(), e => HasStyle(e, "hs-key") && e.Value.Contains("12.4 V", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("G2")]
    [InlineData("C3.4")]
    [InlineData("K2.30")]
    [InlineData("K2.87~C1.2a")]
    [InlineData("ECU.pump-drive")]
    public void Every_sort_of_fault_is_marked(string target)
    {
        var root = Draw(new FaultLayer([new Fault(target, FaultModes.Open)]));

        Assert.Single(root.Descendants(), e => HasStyle(e, "hs-fault"));
        Assert.Contains(root.Descendants(), e => HasStyle(e, "hs-fault-cross"));
    }

    [Fact]
    public void Layers_move_no_symbol()
    {
        var suspects = Investigation.Open(Pump, Pump.Complaints[0]).Suspects;
        var plain = new DrawnPage(CircuitDrawing.Svg(Pump));
        var laden = new DrawnPage(CircuitDrawing.Svg(Pump, new DrawingOptions
        {
            Theme = DrawingTheme.Print, Layers = [new PredictionLayer(Priming()), new SuspectLayer(suspects)],
        }));

        Assert.Equal(plain.Symbols, laden.Symbols);
    }

    [Fact]
    public void Print_has_no_colour()
    {
        var svg = CircuitDrawing.Svg(Pump, new DrawingOptions { Theme = DrawingTheme.Print, Switchable = false });
        var colours = System.Text.RegularExpressions.Regex.Matches(svg, "(?<=fill:|stroke:)#([0-9a-f]{6})").Select(m => m.Groups[1].Value).Distinct().ToList();

        Assert.NotEmpty(colours);
        Assert.All(colours, c => Assert.True(c[..2] == c[2..4] && c[2..4] == c[4..], $"#{c} is a colour"));
    }

    [Fact]
    public void Ids_are_unique_and_begin_as_asked()
    {
        var root = XDocument.Parse(CircuitDrawing.Svg(Pump, new DrawingOptions { IdPrefix = "first-" })).Root!;
        var ids = root.DescendantsAndSelf().Select(e => (string?)e.Attribute("id")).OfType<string>().ToList();

        Assert.All(ids, id => Assert.StartsWith("first-", id, StringComparison.Ordinal));
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Fact]
    public void Hostile_names_stay_text()
    {
        const string Hostile = "</text><script>alert(1)</script>";
        var sheet = ShippedSheets.Text("headlamps")!
            .Replace("Main fuse", $"'{Hostile}'", StringComparison.Ordinal)
            .Replace("title: Headlamps", $"title: \"{Hostile} &\"\n# ", StringComparison.Ordinal);
        var svg = CircuitDrawing.Svg(SheetReader.Read(sheet).Circuit!);

        Assert.DoesNotContain("<script", svg, StringComparison.Ordinal);
        Assert.Contains("&lt;script", svg, StringComparison.Ordinal);
    }

    private static int Thickness(XElement root, string wire)
    {
        var styles = With(root, "data-wire", wire).SelectMany(g => g.Elements()).Where(e => HasStyle(e, "hs-wire"))
            .Select(e => (string)e.Attribute("class")!).Distinct().ToList();
        var flow = styles.SelectMany(s => s.Split(' ')).FirstOrDefault(s => s.StartsWith("hs-flow", StringComparison.Ordinal) && s.Length > 7);
        return flow is null ? 0 : int.Parse(flow[7..], CultureInfo.InvariantCulture);
    }
}
