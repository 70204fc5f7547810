using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Properties;

/// <summary>What <see cref="InstrumentReader.Slopes"/> says beside readings of cars that really differ a little.</summary>
public sealed class SlopeTests
{
    private const double Step = 1e-3;

    public static TheoryData<string, Instrument> Everything
    {
        get
        {
            var data = new TheoryData<string, Instrument>();
            foreach (var sheet in ShelfChoice.Main)
            {
                foreach (var instrument in (Instrument[])[
                    Instrument.Volts, Instrument.VoltsLowImpedance, Instrument.Ohms, Instrument.TestLamp,
                    Instrument.AmpsClamp, Instrument.AmpsInline])
                {
                    data.Add(sheet, instrument);
                }
            }

            return data;
        }
    }

    [Theory]
    [Trait("Pace", "slow")]
    [MemberData(nameof(Everything))]
    public void They_are_the_derivatives_of_the_reading_by_every_branchs_ohms(string sheet, Instrument instrument)
    {
        var circuit = ShippedSheets.Load(sheet);
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        var compared = 0;
        foreach (var condition in circuit.Conditions)
        {
            foreach (var (arrangement, probe) in Probes(circuit, instrument, condition.Name))
            {
                compared += Compare(simulator, arrangement, probe);
            }
        }

        Assert.InRange(compared, 300, int.MaxValue);
    }

    private static IEnumerable<(Arrangement Arrangement, Probe Probe)> Probes(Circuit circuit, Instrument instrument, string condition)
    {
        var everything = new Arrangement(condition);
        return instrument switch
        {
            Instrument.AmpsClamp => circuit.Wires.Where((_, i) => i % 4 == 0).Select(w => (everything, new Probe(instrument, null, null, w.Id))),
            Instrument.AmpsInline => circuit.Parts.OfType<Fuse>().Where(f => f.IsPluggable)
                .Select(f => (everything.Remove(f.Id), new Probe(instrument, new(f.Id, "1"), new(f.Id, "2")))),
            _ => circuit.Terminals.Where((_, i) => i % 9 == 0)
                .Select(t => (everything, new Probe(instrument, t, new TerminalName("BAT", "neg")))),
        };
    }

    private static int Compare(CircuitSimulator simulator, Arrangement arrangement, Probe probe)
    {
        var options = new SimulationOptions(Laid: InstrumentReader.TakesPart(probe.Instrument) ? probe : null);
        var point = simulator.Simulate(arrangement, [], options);
        var reader = new InstrumentReader(point);
        var reading = reader.Read(probe);
        // Above a megohm the reading is a matter of leaks.
        if (!point.IsSteady || reading.Abstains != Abstention.None || (probe.Instrument == Instrument.Ohms && reading.Value > 1e6))
        {
            return 0;
        }

        var network = simulator.Network;
        var slopes = new double[network.Branches.Length + 1];
        reader.Slopes(probe, slopes);
        var compared = 0;
        foreach (var target in network.Branches.Select(b => b.Target).OfType<string>().Distinct())
        {
            var branches = network.BranchesOf(target);
            if (IsBySize(point, branches) || Moved(target, 1 + Step) is not { } more || Moved(target, 1 - Step) is not { } less)
            {
                continue;
            }

            var difference = (more - less) / (Math.Log(1 + Step) - Math.Log(1 - Step));
            var slope = 0.0;
            foreach (var branch in branches)
            {
                slope += slopes[branch + 1];
            }

            var tolerance = (2e-3 * Math.Abs(difference)) + (2e-6 * Math.Abs(reading.Value)) + 1e-6;
            Assert.True(
                Math.Abs(difference - slope) <= tolerance,
                $"{probe.Red}{probe.About} in {arrangement} by {target}: {slope:G6}, but the reading moves by {difference:G6}");
            compared++;
        }

        return compared;

        double? Moved(string target, double factor)
        {
            var other = simulator.Simulate(arrangement, [new Fault(target, FaultModes.Drifted, factor)], options);
            return other.IsSteady && other.HasSameStates(point) ? new InstrumentReader(other).Read(probe).Value : null;
        }
    }

    [Theory]
    [InlineData(Instrument.Volts, "M1.pos", "BAT.neg")]
    [InlineData(Instrument.VoltsLowImpedance, "C1.1a", "BAT.neg")]
    [InlineData(Instrument.AmpsClamp, null, null)]
    public void A_turning_motor_counts_by_its_size(Instrument instrument, string? red, string? black)
    {
        // A motor larger by a share takes that share more amps from a winding that much smaller.
        static SmallSheet Sized(double size) => SmallSheet.Of(
            FormattableString.Invariant($$"""
            BAT: { kind: battery, rests at: 12.6 V, internal resistance: 0.02 ohm }
            M1: { kind: motor, runs: {{5.5 * size}} A at 13 V, winding: {{0.8 / size}} ohm }
            C1: { kind: connector, b: M1 }
            """),
            """
            BAT.pos -> wire 0.5mm2 8m as FEED -> C1.1 -> M1.pos
            M1.neg -> wire 0.5mm2 8m -> BODY
            """);
        var probe = red is null ? new Probe(instrument, null, null, "FEED") : SmallSheet.Held(instrument, red, black!);
        double Read(double size) => new InstrumentReader(Sized(size).In()).Read(probe).Value;
        var sheet = Sized(1);
        var slopes = new double[sheet.Network.Branches.Length + 1];
        new InstrumentReader(sheet.In()).Slopes(probe, slopes);
        var difference = (Read(1 - Step) - Read(1 + Step)) / (Math.Log(1 + Step) - Math.Log(1 - Step));
        Assert.Equal(difference, slopes[sheet.Network.BranchesOf("M1")[0] + 1], 1e-4 * Math.Abs(difference));
        Assert.InRange(Math.Abs(difference), 0.1, 10);
    }

    [Theory]
    [InlineData(Instrument.Volts)]
    [InlineData(Instrument.VoltsLowImpedance)]
    [InlineData(Instrument.TestLamp)]
    public void The_first_is_the_derivative_by_the_batterys_volts(Instrument instrument)
    {
        static SmallSheet With(double rest) => SmallSheet.Of(
            FormattableString.Invariant($$"""
            BAT: { kind: battery, rests at: {{rest}} V, internal resistance: 0.02 ohm }
            R1: { kind: resistor, ohms: 40 ohm }
            R2: { kind: resistor, ohms: 20 ohm }
            L1: { kind: lamp, watts: 21 W at 12 V }
            """),
            """
            BAT.pos -> R1 -> R2 -> BODY
            R1.2 -> L1.1
            L1.2 -> BODY
            """);
        var probe = SmallSheet.Held(instrument, "R2.1", "BAT.neg");
        var options = new SimulationOptions(Laid: InstrumentReader.TakesPart(instrument) ? probe : null);
        OperatingPoint Car(double rest) => With(rest).Simulator.Simulate(new Arrangement("on"), [], options);
        var point = Car(12);
        var slopes = new double[point.Network.Branches.Length + 1];
        new InstrumentReader(point).Slopes(probe, slopes);
        double Read(double rest) => new InstrumentReader(Car(rest)).Read(probe).Value;
        Assert.Equal((Read(12.01) - Read(11.99)) / 0.02, slopes[0], 1e-3 * slopes[0]);
    }

    [Fact]
    public void They_hold_behind_a_pulsed_output_too()
    {
        var sheet = SmallSheet.Of(
            """
            BAT: { kind: battery, rests at: 12.6 V, internal resistance: 0.05 ohm }
            ECU: { kind: module, feeds: [30], grounds: [31], outputs: { fan: { side: low, drive: pulsed, on: 0.1 ohm, limit: 10 A, bias: 5 V through 10 kohm } } }
            H1: { kind: heater, ohms: 6 ohm }
            H2: { kind: heater, ohms: 9 ohm }
            C1: { kind: connector, b: H1 }
            """,
            """
            BAT.pos -> wire 0.5mm2 5m as FEED -> ECU.30
            ECU.30 -> H2 -> BODY
            BAT.pos -> C1.1 -> H1.1
            H1.2 -> wire 0.5mm2 5m as BACK -> ECU.fan
            ECU.31 -> wire 0.5mm2 3m -> BODY
            """,
            "on: { ECU.fan: 30 % }");
        Assert.InRange(Compare(sheet.Simulator, new Arrangement("on"), SmallSheet.Held(Instrument.Volts, "ECU.fan", "BAT.neg")), 7, 99);
        Assert.InRange(Compare(sheet.Simulator, new Arrangement("on"), SmallSheet.Held(Instrument.VoltsLowImpedance, "H1.2", "ECU.30")), 7, 99);
        Assert.InRange(Compare(sheet.Simulator, new Arrangement("on").Unplug("C1"), SmallSheet.Held(Instrument.VoltsLowImpedance, "ECU.fan", "BAT.neg")), 7, 99);
        Assert.InRange(Compare(sheet.Simulator, new Arrangement("on"), new Probe(Instrument.AmpsClamp, null, null, "BACK")), 7, 99);
        Assert.InRange(Compare(sheet.Simulator, new Arrangement("on"), new Probe(Instrument.AmpsClamp, null, null, "FEED")), 7, 99);
    }

    [Fact]
    public void A_duty_moves_with_nothing()
    {
        var sheet = SmallSheet.Of(
            """
            ECU: { kind: module, feeds: [30], grounds: [31], outputs: { fan: { side: low, drive: pulsed, on: 0.1 ohm, limit: 10 A } } }
            H1: { kind: heater, ohms: 6 ohm }
            """,
            """
            BAT.pos -> ECU.30
            BAT.pos -> H1 -> ECU.fan
            ECU.31 -> BODY
            """,
            "on: { ECU.fan: 30 % }");
        var slopes = new double[sheet.Network.Branches.Length + 1];
        Array.Fill(slopes, double.NaN);
        new InstrumentReader(sheet.In()).Slopes(SmallSheet.Held(Instrument.Duty, "ECU.fan", "BAT.neg"), slopes);
        Assert.All(slopes, slope => Assert.Equal(0, slope));
    }

    /// <summary>Motors that turn count by their size, open contacts by the ohms of the gap: see the tests below.</summary>
    private static bool IsBySize(OperatingPoint point, ReadOnlySpan<int> branches)
    {
        foreach (var branch in branches)
        {
            var use = point.Network.Branches[branch].Use;
            if (use == BranchUse.Winding || (use is BranchUse.SwitchContact or BranchUse.RelayContact && point.Ohms(branch) >= 1e9))
            {
                return true;
            }
        }

        return false;
    }
}
