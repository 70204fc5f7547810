using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Noticing;

namespace Halfsplit.Bench.Motors;

/// <summary>Puts a motor's result into words.</summary>
public static class MotorAnswer
{
    private const double WorthSaying = 0.05;

    public static Answer Of(MotorResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        AnswerLine?[] lines =
        [
            new("peak", result.PeakAmps, Unit.Amp), new("mean", result.MeanAmps, Unit.Amp),
            result.Question.RatedAmps is { } rated ? new("of-rated", 100 * result.MeanAmps / rated, Unit.Percent) : null,
            result.RippleAmps > 0 ? new("ripple", result.RippleAmps, Unit.Amp) : null,
            result.RippleHertz is { } hertz ? new("ripple-frequency", hertz, Unit.Hertz) : null,
            result.RipplesPerTurn is { } ripples ? new("ripples-per-turn", ripples, Unit.Count) : null,
            result.Turns is { } turns ? new("speed", turns, null) : null,
            result.RipplesPerTurn is null ? null : new("weakest-hump", 100 * result.Dip, Unit.Percent),
            .. result.States.Where(s => s.Odds >= WorthSaying).Select(s => new AnswerLine("state", new Message("bench-motor.state", State(s.State), OddsMessage.Of(s.Odds)))),
        ];
        return new Answer(
            new Message("bench-motor.title", new Measure(result.Question.Trace.Seconds, Unit.Second).Say(), new Measure(result.Question.Trace.SamplesPerSecond, Unit.Hertz).Say()),
            [new Message("bench-caution.pump")], [.. lines.OfType<AnswerLine>()], [.. Judged(result), .. MotorRating.Judge(result.MeanAmps, result.Question.RatedAmps)], [new Message("bench-motor.source")])
        {
            Measured = [new(BenchQuantity.RunningAmps, result.MeanAmps)],
            Found = FoundOf(result.States),
        };
    }

    /// <summary>What spins free has lost its load, which is no fault of the motor.</summary>
    internal static string? FoundOf(ImmutableArray<(MotorState State, double Odds)> states) => states[0].Odds < BenchDefaults.Table["odds.sure"] ? null : states[0].State switch
    {
        MotorState.Healthy => "motor-good",
        MotorState.WeakBar => "motor-weak-bar",
        MotorState.WornBrushes => "motor-worn-brushes",
        MotorState.Seized => "motor-seized",
        _ => null,
    };

    private static ImmutableArray<Message> Judged(MotorResult result)
    {
        var judged = ImmutableArray.CreateBuilder<Message>();
        judged.Add(new Message($"bench-motor.is-{Name(result.States[0].State)}"));
        if (result.RippleHertz is not null && result.RipplesPerTurn is null)
        {
            judged.Add(new Message("bench-motor.say-bars"));
        }

        if (result.Question.RatedAmps is null)
        {
            judged.Add(new Message("bench-motor.say-rated"));
        }

        return judged.ToImmutable();
    }

    private static Message State(MotorState state) => new($"bench-motor.{Name(state)}");

    private static string Name(MotorState state) => state switch
    {
        MotorState.WeakBar => "weak-bar",
        MotorState.WornBrushes => "worn-brushes",
        MotorState.Seized => "seized",
        MotorState.SpinsFree => "spins-free",
        _ => "healthy",
    };
}
