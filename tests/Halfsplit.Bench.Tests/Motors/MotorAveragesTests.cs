using CsCheck;
using Halfsplit.Bench.Motors;
using Xunit;

namespace Halfsplit.Bench.Tests.Motors;

public sealed class MotorAveragesTests
{
    // Common practice: 8 bars rippling at 500 Hz turn at 3750 rpm; 7 bars ripple 14 times a turn, so that 980 Hz is 4200 rpm.
    [Theory]
    [InlineData(500, 8, 3750)]
    [InlineData(980, 7, 4200)]
    public void Ripple_and_bars_give_the_speed(double hertz, int bars, double rpm)
    {
        var turns = Read(new AveragesQuestion(5, RippleHertz: hertz, Bars: bars)).Turns!;

        Assert.Equal(rpm, turns.Value, 1e-9);
        Assert.True(turns.Range!.Value.Contains(rpm) && turns.Range.Value.Low < rpm);
    }

    // Lessons in Electric Circuits vol. I ch. 12: at the start a motor draws many times, up to ten times, what it draws while it runs.
    [Fact]
    public void A_motor_that_ran_up_and_draws_its_rating_turns() => Gen.Select(Gen.Double[1, 20], Gen.Double[2.5, 10], Gen.Double[0.85, 1.15]).Sample((rated, start, share) =>
    {
        var result = Read(new AveragesQuestion(rated * share, rated * share * start, RatedAmps: rated));
        Assert.Equal(AverageState.Turns, result.States[0].State);
        Assert.Equal(1, result.States.Sum(s => s.Odds), 1e-9);
        Assert.All(result.States, s => Assert.InRange(s.Odds, 1e-6, 0.9999));
    });

    [Fact]
    public void One_held_still_draws_its_start_current_all_the_time_and_is_found()
    {
        var answer = MotorAverages.Answer(Read(new AveragesQuestion(17, 18, RatedAmps: 5.5)));

        Assert.Equal("bench-averages.is-held-still", answer.Judgements[0].Code);
        Assert.Equal("motor-seized", answer.Found);
    }

    [Fact]
    public void One_that_moves_nothing_draws_little() =>
        Assert.Equal(AverageState.SpinsFree, Read(new AveragesQuestion(2, RippleHertz: 900, Bars: 8, RatedAmps: 5.5)).States[0].State);

    [Fact]
    public void A_ripple_says_that_it_turns_whatever_it_draws() =>
        Assert.True(Read(new AveragesQuestion(15, RippleHertz: 200, RatedAmps: 5.5)).States.Single(s => s.State == AverageState.HeldStill).Odds
            < Read(new AveragesQuestion(15, RatedAmps: 5.5)).States.Single(s => s.State == AverageState.HeldStill).Odds);

    [Fact]
    public void What_averages_can_not_tell_is_said_and_no_motor_is_called_good()
    {
        var answer = MotorAverages.Answer(Read(new AveragesQuestion(5.5, 22, 500, 8, 5.5)));

        Assert.Contains(answer.Notes, n => n.Code == "bench-averages.not-told");
        Assert.Null(answer.Found);
        Said.Refused(MotorAverages.Of(new AveragesQuestion(5)), "mean alone", "start peak");
        Assert.Contains(MotorAverages.Answer(Read(new AveragesQuestion(5, RippleHertz: 500))).Judgements, j => j.Code == "bench-averages.say-bars");
    }

    [Fact]
    public void A_speed_that_no_motor_has_is_doubted_and_what_is_impossible_refused()
    {
        Assert.Contains(MotorAverages.Answer(Read(new AveragesQuestion(5, RippleHertz: 50, Bars: 12))).Judgements, j => j.Code == "bench-averages.odd-speed");
        Said.Refused(MotorAverages.Of(new AveragesQuestion(5, 3)), "peak", "mean");
        Said.Refused(MotorAverages.Of(new AveragesQuestion(0.01, RatedAmps: 5)), "50 mA", "200 A");
    }

    private static AveragesResult Read(AveragesQuestion question) => Said.Good(MotorAverages.Of(question));
}
