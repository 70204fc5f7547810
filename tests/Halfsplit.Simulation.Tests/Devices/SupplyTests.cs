using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Devices;

public sealed class SupplyTests
{
    [Theory]
    [InlineData(13.2, 0.1, 13.187)]
    [InlineData(13.0, 5, 12.381)]
    [InlineData(11.5, 20, 9.583)]
    [InlineData(7.5, 50, 5.0)]
    public void Battery_volts_droop_with_the_load(double rest, double inside, double published)
    {
        // Lessons in Electric Circuits vol. I ch. 11, "Battery ratings": 100 ohm load.
        var sheet = SmallSheet.Of(
            FormattableString.Invariant($"BAT: {{ kind: battery, rests at: {rest} V, internal resistance: {inside} ohm }}\nR1: {{ kind: resistor, ohms: 100 ohm }}"),
            "BAT.pos -> R1 -> BODY");

        Assert.Equal(published, sheet.In().Volts("BAT.pos"), 3);
    }

    [Fact]
    public void Drops_in_feed_and_return_add_up()
    {
        // Lessons in Electric Circuits vol. I ch. 12, "Temperature coefficient": 14 V, 15 ohm each way, 250 ohm load.
        var sheet = SmallSheet.Of(
            """
            BAT: { kind: battery, rests at: 14 V, internal resistance: 0.0001 ohm }
            R1: { kind: resistor, ohms: 15 ohm }
            RL: { kind: resistor, ohms: 250 ohm }
            R2: { kind: resistor, ohms: 15 ohm }
            """,
            "BAT.pos -> R1 -> RL -> R2 -> BODY");
        var point = sheet.In();

        Assert.Equal(0.75, point.Across("R1.1", "R1.2"), 3);
        Assert.Equal(12.5, point.Across("RL.1", "RL.2"), 3);
        Assert.Equal(0.75, point.Across("R2.1", "R2.2"), 3);
    }

    [Fact]
    public void Cranking_volts_come_from_the_starters_current()
    {
        var sheet = SmallSheet.Of(
            """
            BAT: { kind: battery, rests at: 12.6 V, internal resistance: 8 mohm }
            S1: { kind: switch }
            ST: { kind: starter, runs: 180 A at 10.5 V, winding: 0.02 ohm }
            """,
            """
            BAT.pos -> wire 35mm2 1m RD -> ST.30
            ST.31 -> BODY
            BAT.pos -> S1 -> wire 4mm2 2m RD -> ST.50
            """,
            "off: {}\ncranking: { S1: on }");
        var point = sheet.In("cranking");

        Assert.True(point.IsSteady);
        Assert.InRange(point.Load("ST").Amps, 120, 220);
        Assert.Equal(12.6 - (0.008 * point.BatteryAmps), point.Volts("BAT.pos"), 6);
        Assert.False(sheet.In("cranking", "ST:coil-open").IsSteady, "a broken hold-in winding chatters");
        // Only the pull-in winding's current goes through the motor then.
        Assert.Equal(LoadCondition.Dead, sheet.In("cranking", "ST:contact-open").Load("ST").Condition);
        Assert.InRange(sheet.In("cranking", "ST:contact-open").Load("ST").Amps, 20, 40);
    }

    [Fact]
    public void An_alternator_generates_when_turned_and_excited()
    {
        var sheet = SmallSheet.Of(
            """
            BAT: { kind: battery, rests at: 12.6 V, internal resistance: 8 mohm }
            IGN: { kind: switch }
            L1: { kind: lamp, watts: 3 W at 12 V }
            ALT: { kind: alternator, holds: 14.1 V, limit: 90 A, excitation: 0.15 A }
            H1: { kind: heater, watts: 120 W at 12 V }
            """,
            """
            BAT.pos -> wire 16mm2 1m RD -> ALT.B+
            ALT.31 -> BODY
            BAT.pos -> IGN -> L1 -> ALT.D+
            BAT.pos -> H1 -> BODY
            """,
            """
            key on: { IGN: on }
            running: { after: key on, IGN: on, engine turns: yes }
            running unexcited: { engine turns: yes }
            """);

        Assert.InRange(sheet.In("running").Volts("BAT.pos"), 13.7, 14.1);
        Assert.InRange(sheet.In("running").BatteryAmps, -15, -2);
        Assert.True(sheet.In("key on").Volts("BAT.pos") < 12.6);
        Assert.True(sheet.In("running unexcited").Volts("BAT.pos") < 12.6);
        Assert.True(sheet.In("running", "ALT:no-output").Volts("BAT.pos") < 12.6);
        Assert.True(Math.Abs(sheet.In("key on").Across("L1.1", "L1.2")) > 6, "the charge lamp glows at rest");
        Assert.True(Math.Abs(sheet.In("running").Across("L1.1", "L1.2")) < 2, "and goes out");
    }

    [Fact]
    public void A_short_blows_the_fuse_before_it_and_it_stays_blown()
    {
        var sheet = SmallSheet.Of(
            "F1: { kind: fuse, rating: 10 A }\nS1: { kind: switch }\nH1: { kind: heater, watts: 60 W at 12 V }",
            "BAT.pos -> F1 -> wire 1mm2 1m RD -> S1 -> wire 1mm2 1m RD -> H1 -> BODY",
            "off: {}\non: { S1: on }");

        Assert.Equal(["F1"], sheet.Simulator.Blown(SmallSheet.Faults("S1.2~H1.1:short-to-ground")));
        Assert.True(sheet.In("off", "S1.2~H1.1:short-to-ground").IsBlown("F1"), "it went earlier, with the switch on");
        Assert.Empty(sheet.Simulator.Blown([]));
    }

    [Fact]
    public void Breakers_and_ptcs_let_go_and_come_back()
    {
        var sheet = SmallSheet.Of(
            """
            B1: { kind: breaker, rating: 10 A }
            P1: { kind: ptc, trips at: 5 A, ohms: 0.05 ohm }
            S1: { kind: switch }
            S2: { kind: switch }
            R1: { kind: resistor, ohms: 0.5 ohm }
            R2: { kind: resistor, ohms: 1 ohm }
            """,
            "BAT.pos -> B1 -> S1 -> R1 -> BODY\nBAT.pos -> P1 -> S2 -> R2 -> BODY",
            "off: {}\noverloaded: { S1: on, S2: on }\noff again: { after: overloaded }");

        Assert.True(sheet.In("overloaded").IsBlown("B1"));
        Assert.InRange(sheet.In("overloaded").AmpsOf("R2"), 0.01, 0.2);
        Assert.False(sheet.In("off again").IsBlown("B1"));
        Assert.False(sheet.In("off again").IsBlown("P1"));
    }

    [Fact]
    public void A_bad_strap_lifts_the_body()
    {
        var sheet = SmallSheet.Read(
            """
            sheet: 1
            title: Body strap
            conditions:
              on: {}
            parts:
              BAT: { kind: battery }
              F1: { kind: fuse, rating: 10 A }
              H1: { kind: heater, watts: 60 W at 12 V }
              G1: { kind: ground }
            wiring:
              - BODY -> wire 16mm2 0.4m BK -> BAT.neg
              - BAT.pos -> F1 -> wire 2.5mm2 1m RD -> H1 -> G1
            """);

        Assert.True(sheet.In("on").Volts("BODY") < 0.05);
        Assert.True(sheet.In("on", "BODY~BAT.neg:resistive:1").Volts("BODY") > 3);
    }
}
