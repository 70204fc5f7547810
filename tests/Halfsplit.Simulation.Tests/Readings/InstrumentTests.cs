using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Readings;

public sealed class InstrumentTests
{
    private static readonly SmallSheet Lamp = SmallSheet.Of(
        """
        F1: { kind: fuse, rating: 10 A }
        S1: { kind: switch }
        C1: { kind: connector, b: H1 }
        H1: { kind: heater, watts: 60 W at 12 V }
        H2: { kind: heater, watts: 60 W at 12 V }
        """,
        """
        BAT.pos -> F1 -> wire 1mm2 1m RD -> S1 -> wire 1mm2 2m YE -> C1.1 -> H1.1
        H1.2 -> C1.2 -> wire 1mm2 1m BK -> BODY
        S1.2 -> H2 -> BODY
        """,
        "off: {}\non: { S1: on }");

    [Fact]
    public void A_voltmeter_loads_what_it_measures()
    {
        // Two of 10 MΩ in series halve 12 V; with a meter of 10 MΩ across one of them it is 5 of 15 MΩ. The published
        // case of 250 MΩ (Lessons in Electric Circuits vol. I ch. 8) is a test of the network solver.
        var sheet = SmallSheet.Of(
            "R1: { kind: resistor, ohms: 10 Mohm }\nR2: { kind: resistor, ohms: 10 Mohm }",
            "BAT.pos -> R1 -> R2 -> BODY");

        Assert.Equal(6.0, sheet.In().Volts("R2.1"), 0.05);
        Assert.Equal(4.0, sheet.Read(Instrument.Volts, "R2.1", "R2.2"), 0.03);
    }

    [Fact]
    public void A_wire_tied_to_nothing_reads_near_nothing()
    {
        var floating = Lamp.Read(Instrument.Volts, "C1.1a", "BODY", "on", "S1.2~C1.1a:open");

        Assert.InRange(floating, -0.2, 0.2);
    }

    [Fact]
    public void A_leaky_break_shows_volts_to_the_meter_and_nothing_to_a_lamp()
    {
        // Corrosion of 100 kΩ: common practice, no published source.
        var arrangement = new Arrangement("on").Unplug("C1");

        Assert.True(Lamp.Reading(arrangement, Instrument.Volts, "C1.1a", "BODY", "S1.2~C1.1a:resistive:100k").Value > 11.5);
        Assert.True(Lamp.Reading(arrangement, Instrument.VoltsLowImpedance, "C1.1a", "BODY", "S1.2~C1.1a:resistive:100k").Value < 0.5);
        Assert.True(Lamp.Reading(arrangement, Instrument.TestLamp, "C1.1a", "BODY", "S1.2~C1.1a:resistive:100k").Value < 0.05);
    }

    [Fact]
    public void Eight_kilohms_cost_an_unloaded_reading_less_than_a_count_of_ten_millivolts()
    {
        var arrangement = new Arrangement("on").Unplug("C1");
        var good = Lamp.Reading(arrangement, Instrument.Volts, "C1.1a", "BODY").Value;
        var bad = Lamp.Reading(arrangement, Instrument.Volts, "C1.1a", "BODY", "S1.2~C1.1a:resistive:8k").Value;

        Assert.InRange(good - bad, 0.005, 0.0101);
        Assert.True(good > 11.5, $"{good}");
    }

    [Fact]
    public void Ohms_see_every_path_and_abstain_on_live_metal()
    {
        // With its plug in, the heater is read in parallel with its neighbour; unplugged, alone.
        Assert.Equal(1.2 + 0.2, Lamp.Read(Instrument.Ohms, "C1.1a", "BODY", "off"), 1);
        Assert.Equal(2.4 + 0.2, Lamp.Reading(new Arrangement("off").Unplug("C1"), Instrument.Ohms, "C1.1b", "C1.2b").Value, 2);
        Assert.Equal(Abstention.LiveCircuit, Lamp.Reading(new Arrangement("on"), Instrument.Ohms, "C1.1a", "BODY").Abstains);
        Assert.True(Lamp.Reading(new Arrangement("off").Unplug("C1"), Instrument.Ohms, "C1.1b", "C1.2b", "H1:open").IsOverLimit(Instrument.Ohms));
    }

    [Fact]
    public void Amps_read_the_same_by_clamp_and_in_line()
    {
        var clamp = Lamp.Simulator.Read(new Arrangement("on"), [], new Probe(Instrument.AmpsClamp, null, null, "F1.2~S1.1")).Value;
        var inline = Lamp.Reading(new Arrangement("on").Remove("F1"), Instrument.AmpsInline, "F1.1", "F1.2").Value;

        Assert.Equal(10, clamp, 0);
        Assert.Equal(clamp, inline, 0.3);
    }

    [Fact]
    public void A_jumper_bridges_and_a_substitute_lamp_draws_its_watts()
    {
        var jumped = Lamp.In(new Arrangement("off").WithJumper(new("S1", "1"), new("S1", "2")));
        Assert.Equal(5.0, jumped.Load("H1").Amps, 0);

        var lamp = new Probe(Instrument.TestLamp, new("C1", "1a"), new("C1", "2a"), "H1", 55);
        var read = Lamp.Simulator.Read(new Arrangement("on").Unplug("C1"), [], lamp);
        Assert.Equal(55.0 / 12, read.LoadedAmps, 0.2);
    }

    [Theory]
    [InlineData("volts")]
    [InlineData("ohms")]
    [InlineData("clamp")]
    public void Slopes_are_the_derivatives_of_the_reading(string what)
    {
        var (condition, probe) = what switch
        {
            "volts" => ("on", new Probe(Instrument.Volts, new("C1", "1b"), new("BAT", "neg"))),
            "ohms" => ("off", new Probe(Instrument.Ohms, new("C1", "1a"), new("BODY"))),
            _ => ("on", new Probe(Instrument.AmpsClamp, null, null, "F1.2~S1.1")),
        };
        var network = Lamp.Network;
        var slopes = new double[network.Branches.Length + 1];
        new InstrumentReader(Lamp.In(condition)).Slopes(probe, slopes);
        foreach (var target in (string[])["F1.2~S1.1", "S1.2~C1.1a", "C1.1", "H1", "H2", "C1.2a~BODY"])
        {
            var branch = network.BranchesOf(target)[0];
            const double Step = 1e-3;
            double Moved(double factor) => Lamp.Simulator
                .Read(new Arrangement(condition), SmallSheet.Faults(FormattableString.Invariant($"{target}:drifted:{factor:R}")), probe).Value;
            var difference = (Moved(1 + Step) - Moved(1 - Step)) / (Math.Log(1 + Step) - Math.Log(1 - Step));

            Assert.Equal(difference, slopes[branch + 1], 1e-4 * Math.Max(1, Math.Abs(difference)));
        }
    }

    [Fact]
    public void The_answer_does_not_depend_on_what_was_asked_before()
    {
        var busy = new CircuitSimulator(Lamp.Network);
        string[] faults = ["H1:open", "S1.2~C1.1a:short-to-ground", "C1.2:resistive:3", "F1:open", "S1:contact-resistive:1"];
        for (var round = 0; round < 3; round++)
        {
            foreach (var fault in faults)
            {
                foreach (var condition in (string[])["off", "on"])
                {
                    var fresh = new CircuitSimulator(Lamp.Network).Simulate(new Arrangement(condition), SmallSheet.Faults(fault));
                    var used = busy.Simulate(new Arrangement(condition), SmallSheet.Faults(fault));
                    Assert.Equal(fresh.Volts("C1.1a"), used.Volts("C1.1a"));
                    Assert.Equal(fresh.IsBlown("F1"), used.IsBlown("F1"));
                }
            }
        }
    }

    [Fact]
    public void Currents_add_up_to_nothing_at_every_node()
    {
        var point = Lamp.In("on", "C1.2:resistive:2");
        var sums = new double[Lamp.Network.NodeNames.Length];
        for (var i = 0; i < Lamp.Network.Branches.Length; i++)
        {
            var branch = Lamp.Network.Branches[i];
            if (branch.From >= 0)
            {
                sums[branch.From] -= point.Amps(i);
            }

            if (branch.To >= 0)
            {
                sums[branch.To] += point.Amps(i);
            }
        }

        // What is left is the leak of 1 GΩ at each node.
        Assert.All(sums, s => Assert.InRange(s, -3e-8, 3e-8));
    }
}
