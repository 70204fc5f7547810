using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Devices;

public sealed class LampAndDiodeTests
{
    [Fact]
    public void A_lamp_draws_its_watts_at_its_volts_and_more_than_its_share_when_starved()
    {
        var sheet = SmallSheet.Of(
            """
            S1: { kind: switch, positions: { full: [1-3], low: [2-3] }, rest: full }
            R1: { kind: resistor, ohms: 2.618 ohm }
            H1: { kind: lamp, watts: 55 W at 12 V }
            """,
            "BAT.pos -> S1.1\nBAT.pos -> R1 -> S1.2\nS1.3 -> H1 -> BODY",
            "on: {}\nstarved: { S1: low }");

        Assert.Equal(55.0 / 12, sheet.In("on").Load("H1").Amps, 2);
        var starved = sheet.In("starved").Load("H1");
        // A resistor of its hot ohms would leave a plain resistance 6 V; the cooler filament takes less volts.
        Assert.True(starved.Volts < 5.9, $"{starved.Volts}");
        Assert.Equal(LoadCondition.Weak, starved.Condition);
        Assert.Equal(12.0, starved.Volts + ((2.618 + 0.005) * starved.Amps), 2);
    }

    [Fact]
    public void A_cold_filament_reads_about_a_tenth_of_its_hot_ohms()
    {
        var sheet = SmallSheet.Of(
            "S1: { kind: switch }\nH1: { kind: lamp, watts: 55 W at 12 V }", "BAT.pos -> S1 -> H1 -> BODY", "off: {}");
        var read = sheet.Read(Instrument.Ohms, "H1.1", "H1.2", "off");

        Assert.InRange(read - 0.2, 0.05 * 2.618, 0.15 * 2.618);
    }

    [Fact]
    public void Diodes_conduct_one_way_with_their_forward_volts()
    {
        var sheet = SmallSheet.Of(
            """
            D1: { kind: diode, forward: 0.7 V }
            D2: { kind: diode, forward: 0.7 V }
            R1: { kind: resistor, ohms: 100 ohm }
            R2: { kind: resistor, ohms: 100 ohm }
            L1: { kind: led, runs: 20 mA at 12 V, forward: 2 V }
            """,
            "BAT.pos -> D1 -> R1 -> BODY\nBAT.pos -> D2.k -> D2.a -> R2 -> BODY\nBAT.pos -> L1 -> BODY");
        var point = sheet.In();

        Assert.Equal(11.3, point.Volts("R1.1"), 1);
        Assert.Equal(0.0, point.Volts("R2.1"), 3);
        Assert.Equal(0.020, point.Load("L1").Amps, 4);
    }
}
