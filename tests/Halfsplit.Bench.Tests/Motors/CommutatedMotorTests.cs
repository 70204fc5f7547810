using Halfsplit.Bench.Motors;
using Xunit;

namespace Halfsplit.Bench.Tests.Motors;

/// <summary>The reading of currents against a motor that is made of coils and brushes.</summary>
public sealed class CommutatedMotorTests
{
    [Theory]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(11)]
    [InlineData(12)]
    public void The_ripples_in_a_turn_follow_from_the_windings(int bars)
    {
        var motor = new CommutatedMotor(4000, bars);
        var turn = Enumerable.Range(0, 7200).Select(i => motor.Voltage(2 * Math.PI * (i + 0.37) / 7200)).ToArray();
        var peaks = Enumerable.Range(0, turn.Length).Count(i => turn[i] > turn[(i + turn.Length - 1) % turn.Length] && turn[i] > turn[(i + 1) % turn.Length]);

        Assert.Equal(peaks, Commutator.RipplesPerTurn(bars));
    }

    [Theory]
    [InlineData(3300, 8)]
    [InlineData(5200, 8)]
    [InlineData(4100, 10)]
    [InlineData(6400, 6)]
    [InlineData(3800, 7)]
    public void The_speed_is_found_from_the_ripple_of_the_windings(double rpm, int bars)
    {
        var result = Read(new CommutatedMotor(rpm, bars), bars);

        Assert.Equal(rpm, result.Turns!.Value, 0.005 * rpm);
        Assert.Equal(MotorState.Healthy, result.States[0].State);
    }

    [Theory]
    [InlineData(3300, 8)]
    [InlineData(5200, 10)]
    public void A_bar_that_makes_bad_contact_is_found(double rpm, int bars)
    {
        var result = Read(new CommutatedMotor(rpm, bars, BadBarOhms: 0.12), bars);

        Assert.Equal(rpm, result.Turns!.Value, 0.005 * rpm);
        Assert.Equal(MotorState.WeakBar, result.States[0].State);
    }

    private static MotorResult Read(CommutatedMotor motor, int bars) =>
        Said.Good(MotorReading.Of(new MotorQuestion(motor.Trace(20_000, 0.6, seed: 5), bars, RatedAmps: 5)));
}
