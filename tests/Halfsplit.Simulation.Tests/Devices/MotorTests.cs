using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Devices;

public sealed class MotorTests
{
    private static SmallSheet Fed(string volts, string extra = "", string fuse = "20 A") => SmallSheet.Of(
        $"""
        BAT: {"{"} kind: battery, rests at: {volts}, internal resistance: 0.0001 ohm {"}"}
        F1: {"{"} kind: fuse, rating: {fuse} {"}"}
        S1: {"{"} kind: switch, positions: {"{"} off: [], on: [1-2] {"}"}, rest: "on" {"}"}
        M1: {"{"} kind: motor, runs: 5.5 A at 13 V, winding: 0.8 ohm{extra} {"}"}
        """,
        "BAT.pos -> F1 -> S1 -> M1 -> BODY");

    [Fact]
    public void It_draws_its_rated_current_at_its_rated_volts()
    {
        var load = Fed("13.047 V").In().Load("M1");

        Assert.Equal(5.5, load.Amps, 1);
        Assert.Equal(LoadCondition.Works, load.Condition);
    }

    [Fact]
    public void Held_still_it_draws_what_its_winding_lets_through()
    {
        var load = Fed("12 V", fuse: "30 A").In("on", "M1:seized").Load("M1");

        Assert.Equal(12 / 0.8, load.Amps, 0);
        Assert.True(load.Stalled);
        Assert.Equal(LoadCondition.Dead, load.Condition);
    }

    [Fact]
    public void It_needs_more_volts_to_start_than_to_keep_turning()
    {
        var sheet = SmallSheet.Of(
            """
            S1: { kind: switch, positions: { off: [], full: [1-3], sag: [2-3] } }
            R1: { kind: resistor, ohms: 1.6 ohm }
            M1: { kind: motor, runs: 5.5 A at 13 V, winding: 0.8 ohm, starts: 5 V }
            """,
            """
            BAT.pos -> S1.1
            BAT.pos -> R1 -> S1.2
            S1.3 -> M1 -> BODY
            """,
            """
            off: {}
            full: { S1: full }
            sagging after full: { after: full, S1: sag }
            sagging from rest: { after: off, S1: sag }
            """);

        Assert.Equal(LoadCondition.Dead, sheet.In("sagging from rest").Load("M1").Condition);
        Assert.NotEqual(LoadCondition.Dead, sheet.In("sagging after full").Load("M1").Condition);
    }

    [Fact]
    public void A_stalled_motor_a_little_over_its_fuse_does_not_blow_it_within_the_prime()
    {
        // 16.2 A through a 15 A fuse is 108 %: below every published melting time.
        static SmallSheet Primed(string rating) => SmallSheet.Of(
            $"""
            F1: {"{"} kind: fuse, rating: {rating}, type: mini {"}"}
            IGN: {"{"} kind: switch {"}"}
            M1: {"{"} kind: motor, runs: 5.5 A at 13 V, winding: 0.735 ohm {"}"}
            """,
            "BAT.pos -> F1 -> IGN -> M1 -> BODY",
            "priming: { IGN: on, lasts: 2 s }");

        Assert.False(Primed("15 A").In("priming", "M1:seized").IsBlown("F1"));
        Assert.InRange(Primed("15 A").In("priming", "M1:seized").FuseAmps("F1") / 15, 1.05, 1.10);
        Assert.True(Primed("5 A").In("priming", "M1:seized").IsBlown("F1"), "at over 300 % it goes within the prime");
    }

    [Fact]
    public void A_motor_whose_feed_goes_runs_down()
    {
        var sheet = SmallSheet.Of(
            "S1: { kind: switch }\nM1: { kind: motor, runs: 5 A at 13 V, winding: 0.8 ohm }",
            "BAT.pos -> S1 -> M1 -> BODY",
            "on: { S1: on }\noff again: { after: on }");
        var point = sheet.In("off again");

        Assert.True(point.IsSteady);
        Assert.Equal(0.0, point.Volts("M1.pos"), 3);
    }

    [Fact]
    public void Worn_brushes_and_tight_bearings_make_it_weak()
    {
        Assert.Equal(LoadCondition.Weak, Fed("13 V").In("on", "M1:brushes-worn:1").Load("M1").Condition);
        Assert.True(Fed("13 V").In("on", "M1:tight:2").Load("M1").Amps > 8);
        Assert.Equal(0.0, Fed("13 V").In("on", "M1:open").Load("M1").Amps, 6);
    }
}
