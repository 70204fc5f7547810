using CsCheck;
using Halfsplit.Bench.Motors;
using Xunit;

namespace Halfsplit.Bench.Tests.Motors;

public sealed class MotorReadingTests
{
    private static readonly Gen<SimulatedMotor> Healthy =
        from rpm in Gen.Double[3000, 7000]
        from bars in Gen.Int[6, 12]
        from ripple in Gen.Double[0.08, 0.2]
        from noise in Gen.Double[0.002, 0.02]
        select new SimulatedMotor(rpm, bars, RippleShare: ripple, Noise: noise);

    // Common practice: 8 bars rippling at 500 Hz turn at 3750 rpm, at 800 Hz at 6000 rpm.
    [Theory]
    [InlineData(3750, 500)]
    [InlineData(6000, 800)]
    public void Eight_bars_turn_as_the_trade_reckons(double rpm, double hertz)
    {
        var result = Read(new SimulatedMotor(rpm, 8), 8);

        Assert.Equal(hertz, result.RippleHertz!.Value, 0.5);
        Assert.Equal(rpm, result.Turns!.Value, 5.0);
    }

    // Common practice: with an odd number of bars there are twice as many ripples.
    [Fact]
    public void Seven_bars_ripple_fourteen_times() => Assert.Equal(4200 / 60.0 * 14, Read(new SimulatedMotor(4200, 7), 7).RippleHertz!.Value, 1);

    [Fact]
    public void The_speed_of_a_healthy_motor_is_found_and_nothing_is_blamed() => Gen.Select(Healthy, Gen.Int[0, 1000]).Sample(
        (motor, seed) =>
        {
            var result = Read(motor, motor.Bars, seed: seed);
            Assert.InRange(result.Turns!.Value / motor.Rpm, 0.99, 1.01);
            Assert.Equal(MotorState.Healthy, result.States[0].State);
            Assert.Equal(1, result.States.Sum(s => s.Odds), 1e-9);
        },
        iter: 30);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.3)]
    public void A_weak_bar_dips_once_a_turn(double weak)
    {
        var result = Read(new SimulatedMotor(4500, 8, WeakBar: weak), 8);

        Assert.Equal(MotorState.WeakBar, result.States[0].State);
        // Half a sine over a hump takes 2/π of its depth on average.
        Assert.Equal(weak * 2 / Math.PI, result.Dip, 0.15 * weak);
    }

    [Fact]
    public void A_pattern_that_repeats_tells_the_number_of_bars()
    {
        var result = Read(new SimulatedMotor(4500, 8, WeakBar: 0.15), null);

        Assert.Equal(8, result.RipplesPerTurn);
        Assert.Equal(4500, result.Turns!.Value, 10.0);
    }

    [Fact]
    public void Even_humps_tell_no_number_and_it_is_asked_for()
    {
        var result = Read(new SimulatedMotor(4500, 8, Noise: 0.05), null);

        Assert.Null(result.Turns);
        Assert.NotNull(result.RippleHertz);
        Assert.Contains(MotorAnswer.Of(result).Judgements, j => j.Code == "bench-motor.say-bars");
    }

    [Fact]
    public void Arcing_brushes_held_still_and_spinning_free_are_told()
    {
        Assert.Equal(MotorState.WornBrushes, Read(new SimulatedMotor(4500, 8, Arcing: 0.12), 8).States[0].State);
        Assert.Equal(MotorState.Seized, Read(new SimulatedMotor(4500, 8, RunningAmps: 14, IsSeized: true), 8).States[0].State);
        Assert.Equal(MotorState.SpinsFree, Read(new SimulatedMotor(6500, 8, RunningAmps: 2.2), 8).States[0].State);
    }

    [Fact]
    public void The_start_is_kept_apart_from_the_run()
    {
        var result = Read(new SimulatedMotor(4500, 8, StartPeak: 4), 8);

        Assert.InRange(result.PeakAmps, 5.5 * 3.5, 5.5 * 4.5);
        Assert.InRange(result.MeanAmps, 5.4, 5.75);
        Assert.Equal(4500, result.Turns!.Value, 10.0);
    }

    [Fact]
    public void Twice_the_amps_change_neither_speed_nor_dip() => Gen.Select(Healthy, Gen.Double[0.5, 3]).Sample(
        (motor, times) =>
        {
            var (one, other) = (Read(motor, motor.Bars, rated: null), Read(motor with { RunningAmps = motor.RunningAmps * times }, motor.Bars, rated: null));
            Assert.Equal(one.Turns!.Value, other.Turns!.Value, 1e-6 * one.Turns.Value);
            Assert.Equal(one.Dip, other.Dip, 1e-9);
            Assert.Equal(one.MeanAmps * times, other.MeanAmps, 1e-9 * other.MeanAmps);
        },
        iter: 20);

    [Fact]
    public void Too_slow_a_recording_is_refused_with_the_rate_that_is_needed()
    {
        Said.Refused(MotorReading.Of(new MotorQuestion(new SimulatedMotor(4500, 8).Trace(1000, 1, 1))), "1 kHz", "2.33 kHz");
        Said.Refused(MotorReading.Of(new MotorQuestion(new SimulatedMotor(4500, 7).Trace(2500, 1, 1), 7)), "2.5 kHz", "4.08 kHz");
    }

    [Fact]
    public void What_is_impossible_is_refused_with_the_range()
    {
        Said.Refused(MotorReading.Of(new MotorQuestion(new SimulatedMotor(4500, 20).Trace(100, 1, 1), 20)), "100 Hz", "5.83 kHz");
        Said.Refused(MotorReading.Of(new MotorQuestion(new SimulatedMotor(4500, 8).Trace(10_000, 0.05, 1))), "200 ms", "60 s");
        Said.Refused(MotorReading.Of(new MotorQuestion(new SimulatedMotor(4500, 8).Trace(10_000, 1, 1), 2)), "3", "32");
        Said.Refused(MotorReading.Of(new MotorQuestion(new CurrentTrace([.. new double[10_000]], 10_000))), "50 mA", "zeroed");
    }

    private static MotorResult Read(SimulatedMotor motor, int? bars, int seed = 1, double? rated = 5.5) =>
        Said.Good(MotorReading.Of(new MotorQuestion(motor.Trace(10_000, 0.6, seed), bars, rated)));
}
