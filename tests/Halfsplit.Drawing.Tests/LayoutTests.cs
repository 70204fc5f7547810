using System.Diagnostics;
using CsCheck;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Tests;
using Halfsplit.Drawing.Layers;
using Halfsplit.Drawing.Svg;
using Halfsplit.Drawing.Tests.Reading;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Xunit;

namespace Halfsplit.Drawing.Tests;

/// <summary>What is drawn is the circuit, readable: judged from the SVG alone.</summary>
public sealed class LayoutTests
{
    private const int RandomCircuits = 500;

    public static TheoryData<string> Sheets => [.. ShippedSheets.Names];

    internal static Circuit Shipped(string sheet) => SheetReader.Read(ShippedSheets.Text(sheet)!).Circuit!;

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Shipped_sheets_are_drawn_without_a_fault(string sheet)
    {
        var circuit = Shipped(sheet);
        var layout = CircuitDrawing.Lay(circuit);
        Tell($"{sheet}: {layout.Crossings} crossings, {layout.Width:F0} x {layout.Height:F0}");

        Faultless.Check(circuit, CircuitDrawing.Svg(layout));

        // Four lock motors hang between two lines that are feed or ground by turns.
        Assert.InRange(layout.Crossings, 0, sheet == "central-locking" ? 14 : 12);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Predictions_find_room_in_every_condition(string sheet)
    {
        var circuit = Shipped(sheet);
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        foreach (var condition in circuit.Conditions)
        {
            var point = simulator.Simulate(new Arrangement(condition.Name), []);
            Faultless.Check(circuit, CircuitDrawing.Svg(circuit, new DrawingOptions { Layers = [new PredictionLayer(point)] }));
        }
    }

    [Fact]
    public void Random_circuits_are_drawn_without_a_fault()
    {
        var (crossings, wires, most) = (0, 0, 0);
        CircuitGenerator.Circuits.Sample(
            circuit =>
            {
                var layout = CircuitDrawing.Lay(circuit);
                Interlocked.Add(ref crossings, layout.Crossings);
                Interlocked.Add(ref wires, circuit.Wires.Length);
                most = Math.Max(most, layout.Crossings);
                Faultless.Check(circuit, CircuitDrawing.Svg(layout));
            },
            iter: RandomCircuits);
        Tell($"{RandomCircuits} random circuits: {crossings} crossings, {most} at most in one, among {wires} wires");
    }

    [Fact]
    public void The_same_circuit_is_drawn_the_same() => CircuitGenerator.Circuits.Sample(
        circuit => CircuitDrawing.Svg(circuit) == CircuitDrawing.Svg(circuit), iter: 20);

    [Fact]
    public void Three_hundred_parts_are_drawn_without_a_fault_in_two_seconds()
    {
        var circuit = LargeCircuit.Of(300);
        _ = CircuitDrawing.Svg(LargeCircuit.Of(30));
        var time = Stopwatch.StartNew();
        var layout = CircuitDrawing.Lay(circuit);
        var svg = CircuitDrawing.Svg(layout);
        time.Stop();
        Tell($"{circuit.Parts.Length} parts: {time.ElapsedMilliseconds} ms, {layout.Crossings} crossings, {layout.Width:F0} x {layout.Height:F0}");

        Faultless.Check(circuit, svg);
        // The aim is two seconds on an idle machine; a busy one may take a few times that.
        Assert.InRange(time.Elapsed.TotalSeconds, 0, 8);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_time_of_a_drawing_is_told(string sheet)
    {
        var circuit = Shipped(sheet);
        var least = double.MaxValue;
        for (var i = 0; i < 20; i++)
        {
            var time = Stopwatch.StartNew();
            _ = CircuitDrawing.Svg(circuit);
            least = Math.Min(least, time.Elapsed.TotalMilliseconds);
        }

        Tell($"{sheet}: {least:F1} ms");
        Assert.InRange(least, 0, 500);
    }

    /// <summary>A lamp more on the battery's bus: over the whole shelf, what was there keeps its sides.</summary>
    [Fact]
    public void One_part_more_leaves_the_others_where_they_were()
    {
        var (kept, pairs) = (0, 0);
        foreach (var sheet in ShippedSheets.Names)
        {
            var (keptHere, pairsHere) = KeptSides(sheet);
            Tell($"{sheet}: {keptHere} of {pairsHere} pairs of symbols keep left and right");
            kept += keptHere;
            pairs += pairsHere;
        }

        Tell($"{kept} of {pairs} on the whole shelf");
        Assert.InRange((double)kept / pairs, 0.95, 1);
    }

    private static (int Kept, int Pairs) KeptSides(string sheet)
    {
        var circuit = Shipped(sheet);
        var text = ShippedSheets.Text(sheet)!.ReplaceLineEndings("\n");
        var more = text
            .Replace("\nwiring:\n", "\n  MORE: { kind: lamp, watts: 5 W }\n  GMORE: { kind: ground }\n\nwiring:\n", StringComparison.Ordinal).TrimEnd()
            + $"\n  - {(circuit.Find("BUS") is null ? "BAT.pos" : "BUS")} -> wire 1mm2 1m RD -> MORE -> wire 1mm2 1m BN -> GMORE\n";
        var before = Places(circuit);
        var reading = SheetReader.Read(more);
        Assert.True(reading.Circuit is not null, $"{sheet}: {string.Join('\n', reading.Problems)}");
        var after = Places(reading.Circuit);
        var (kept, pairs) = (0, 0);
        foreach (var first in before.Keys)
        {
            foreach (var second in before.Keys.Where(k => string.CompareOrdinal(k, first) > 0))
            {
                var (was, becomes) = (before[second] - before[first], after[second] - after[first]);
                if (Math.Abs(was) > 20)
                {
                    pairs++;
                    kept += Math.Sign(was) == Math.Sign(becomes) ? 1 : 0;
                }
            }
        }

        return (kept, pairs);
    }

    /// <summary>
    /// Feed at the top, ground at the bottom, for every fuse, relay, load and module: the end that is never the lower one in volts
    /// is drawn above, but for one part of a sheet at most. What carries current both ways may stand either way, and so may a
    /// changeover contact.
    /// </summary>
    [Theory]
    [MemberData(nameof(Sheets))]
    public void Current_runs_down(string sheet)
    {
        var circuit = Shipped(sheet);
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        var charges = circuit.Parts.Any(p => p is Alternator);
        OperatingPoint[] points = [.. circuit.Conditions.Select(c => simulator.Simulate(new Arrangement(c.Name), []))];
        var at = new DrawnPage(CircuitDrawing.Svg(circuit)).Terminals;
        var (judged, lowest) = (0, 0.0);
        var turned = new List<string>();
        foreach (var part in circuit.Parts)
        {
            var (first, second) = part switch
            {
                Fuse => ("1", "2"),
                Relay { Contacts: RelayContacts.Make } => ("30", "87"),
                Load load => load.Across,
                Module module => (module.Feeds[0], module.Grounds[0]),
                _ => ("", ""),
            };
            if (first.Length == 0)
            {
                continue;
            }

            var (one, other) = (new TerminalName(part.Id, first), new TerminalName(part.Id, second));
            var signs = points.Where(p => !charges || part is not Fuse || p.BatteryAmps >= 0)
                .Select(p => p.Volts(one) - p.Volts(other)).Where(v => Math.Abs(v) > (part is Fuse ? 1e-7 : 1e-2)).Select(Math.Sign).Distinct().ToArray();
            if (signs.Length == 1)
            {
                judged++;
                lowest = Math.Max(lowest, Math.Max(at[$"{one}"].Y, at[$"{other}"].Y));
                var (upper, lower) = signs[0] > 0 ? (one, other) : (other, one);
                if (at[$"{upper}"].Y >= at[$"{lower}"].Y)
                {
                    turned.Add(part.Id);
                }
            }
        }

        Assert.InRange(judged, 6, int.MaxValue);
        Assert.True(turned.Count <= 1, $"{string.Join(", ", turned)} stand on their heads");
        Assert.True(circuit.Parts.OfType<Metal>().Max(m => at[m.Id].Y) > lowest, "something hangs below the metal");
    }

    /// <summary>The heavy cable to a starter must not turn the ignition switch over, through which its solenoid is fed.</summary>
    [Fact]
    public void A_starter_leaves_its_switch_upright()
    {
        const string Sheet = """
            sheet: 1
            title: Starter
            conditions: { key off: {} }
            parts:
              BAT: { kind: battery }
              F1: { kind: fuse, rating: 30 A }
              IGN: { kind: switch, positions: { off: [], on: [30-15], start: [30-15, 30-50] } }
              L1: { kind: lamp, watts: 5 W }
              ST: { kind: starter }
              G1: { kind: ground }
            wiring:
              - BODY -> wire 25mm2 0.4m BK -> BAT.neg
              - BAT.pos -> wire 35mm2 1m RD -> ST.30
              - BAT.pos -> F1 -> wire 4mm2 1m RD/YE -> IGN.30
              - IGN.50 -> wire 2.5mm2 1m BK/RD -> ST.50
              - IGN.15 -> wire 1mm2 1m BK -> L1 -> wire 1mm2 1m BN -> G1
              - ST.31 -> G1
            """;
        var circuit = SheetReader.Read(Sheet).Circuit!;
        var svg = CircuitDrawing.Svg(circuit);
        var at = new DrawnPage(svg).Terminals;

        Faultless.Check(circuit, svg);
        Assert.True(at["IGN.30"].Y < at["IGN.50"].Y);
        Assert.True(at["IGN.50"].Y < at["ST.50"].Y);
    }

    [Fact]
    public void A_number_is_not_torn_from_its_unit()
    {
        Assert.Equal(["Fridge", "selector on", "12 V"], TextMeasure.Wrap("Fridge selector on 12 V", 9.5, 60));
    }

    [Theory]
    [InlineData("12 V")]
    [InlineData("250 mV")]
    [InlineData("3.2 mA")]
    [InlineData("8 mΩ")]
    [InlineData("47 kΩ")]
    [InlineData("2 MΩ")]
    [InlineData("60 %")]
    [InlineData("20 °C")]
    [InlineData("70 Ah")]
    [InlineData("55 W")]
    [InlineData("2.5 mm²")]
    public void Every_unit_stays_with_its_number(string number)
    {
        Assert.Equal(["at", number, "so"], TextMeasure.Wrap($"at {number} so", 9.5, 1));
        Assert.Equal(["2", "volt"], TextMeasure.Wrap("2 volt", 9.5, 1));
    }

    private static Dictionary<string, double> Places(Circuit circuit) =>
        new DrawnPage(CircuitDrawing.Svg(circuit)).Symbols.ToDictionary(s => s.What, s => s.Left);

    private static void Tell(string text) => TestContext.Current.TestOutputHelper?.WriteLine(text);
}
