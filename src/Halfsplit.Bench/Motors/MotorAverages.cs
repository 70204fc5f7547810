using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Noticing;

namespace Halfsplit.Bench.Motors;

/// <summary>What a meter alone tells of a motor's current; any but the mean may be missing.</summary>
/// <param name="MeanAmps">While it runs.</param>
/// <param name="PeakAmps">The highest at the start, where the meter holds it.</param>
/// <param name="RippleHertz">On the meter's frequency setting, at the clamp.</param>
/// <param name="Bars">Of the commutator.</param>
/// <param name="RatedAmps">What it draws at work.</param>
public sealed record AveragesQuestion(double MeanAmps, double? PeakAmps = null, double? RippleHertz = null, int? Bars = null, double? RatedAmps = null);

/// <summary>How a motor's averages say that it stands. Worn brushes and weak bars can't be told from them.</summary>
public enum AverageState { Turns, HeldStill, SpinsFree }

/// <param name="Turns">Speed; null without a frequency and the bars.</param>
/// <param name="States">With their odds, the likeliest first.</param>
public sealed record AveragesResult(AveragesQuestion Question, Measure? Turns, ImmutableArray<(AverageState State, double Odds)> States)
{
    public bool IsPlausible => Turns is not { } turns || MotorSpeed.IsPlausible(turns.Value / 60);
}

/// <summary>A brushed motor by the averages that a meter shows, without a recording.</summary>
public static class MotorAverages
{
    public static Outcome<AveragesResult> Of(AveragesQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var limits = new InputLimits()
            .Within("mean-amps", question.MeanAmps, "mean-amps", Unit.Amp)
            .Within("peak-amps", question.PeakAmps, "peak-amps", Unit.Amp)
            .Within("ripple-hertz", question.RippleHertz, "ripple-hertz", Unit.Hertz)
            .Within("bars", question.Bars, "bars", Unit.Count)
            .Within("rated-amps", question.RatedAmps, "rated-amps", Unit.Amp)
            .Unless(question.PeakAmps is not { } peak || peak >= question.MeanAmps, "bench-limit.peak-below-mean")
            .Unless((question.PeakAmps ?? question.RippleHertz ?? question.RatedAmps) is not null, "bench-limit.mean-alone");
        return limits.AreKept
            ? Outcome.Of(new AveragesResult(question, Speed(question), States(question)))
            : Outcome.Wrong<AveragesResult>(limits.Problems);
    }

    public static Answer Answer(AveragesResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var question = result.Question;
        AnswerLine?[] lines =
        [
            question.RatedAmps is { } rated ? new("of-rated", 100 * question.MeanAmps / rated, Unit.Percent) : null,
            question.PeakAmps is { } peak ? new("start-over-mean", peak / question.MeanAmps, Unit.Count) : null,
            question.Bars is { } bars ? new("ripples-per-turn", Commutator.RipplesPerTurn(bars), Unit.Count) : null,
            result.Turns is { } turns ? new("speed", turns, null) : null,
            .. result.States.Select(s => new AnswerLine("state", new Message("bench-motor.state", new Message($"bench-averages.{Name(s.State)}"), OddsMessage.Of(s.Odds)))),
        ];
        return new Answer(
            new Message("bench-averages.title", new Measure(question.MeanAmps, Unit.Amp).Say()), [new Message("bench-caution.pump")],
            [.. lines.OfType<AnswerLine>()], [.. Judged(result), .. MotorRating.Judge(question.MeanAmps, question.RatedAmps)], [new Message("bench-averages.not-told"), new Message("bench-averages.source")])
        {
            Measured = [new(BenchQuantity.RunningAmps, question.MeanAmps)],
            // That it turns with its load says nothing of brushes and bars: no motor is called good by its averages.
            Found = result.States[0] is { State: AverageState.HeldStill } held && held.Odds >= BenchDefaults.Table["odds.sure"] ? "motor-seized" : null,
        };
    }

    private static Measure? Speed(AveragesQuestion question)
    {
        if (question is not { RippleHertz: { } hertz, Bars: { } bars })
        {
            return null;
        }

        var rpm = hertz / Commutator.RipplesPerTurn(bars) * 60;
        var share = BenchDefaults.Table["meter.hertz-share"];
        return new Measure(rpm, Unit.RevolutionsPerMinute, new ValueRange(rpm * (1 - share), rpm * (1 + share)));
    }

    /// <summary>
    /// A motor held still draws far more than its rating, has no peak at the start above that, and no ripple; one that moves nothing draws
    /// far less than its rating.
    /// </summary>
    private static ImmutableArray<(AverageState State, double Odds)> States(AveragesQuestion question)
    {
        var most = MotorSigns.MostEvidence;
        var (held, free) = (0.0, question.RatedAmps is null ? -most : 0.0);
        if (question.RatedAmps is { } rated)
        {
            held += MotorSigns.Evidence(question.MeanAmps / rated, "motor.stall-share", "motor.share-step");
            free += MotorSigns.Evidence(-question.MeanAmps / rated, "motor.free-share", "motor.share-step", -1);
        }

        if (question.PeakAmps is { } peak)
        {
            held += MotorSigns.Evidence(-peak / question.MeanAmps, "motor.start-ratio", "motor.start-step", -1);
        }

        if (question.RippleHertz is not null)
        {
            held -= most;
        }

        var weights = new (AverageState State, double Log)[]
        {
            (AverageState.Turns, 0), (AverageState.HeldStill, Math.Clamp(held, -most, most)), (AverageState.SpinsFree, Math.Clamp(free, -most, most)),
        };
        var sum = weights.Sum(w => Math.Exp(w.Log));
        return [.. weights.Select(w => (w.State, Odds: Math.Exp(w.Log) / sum)).OrderByDescending(w => w.Odds)];
    }

    private static ImmutableArray<Message> Judged(AveragesResult result)
    {
        var judged = ImmutableArray.CreateBuilder<Message>();
        judged.Add(new Message($"bench-averages.is-{Name(result.States[0].State)}"));
        if (!result.IsPlausible)
        {
            judged.Add(new Message("bench-averages.odd-speed"));
        }

        if (result.Question is { RippleHertz: not null, Bars: null })
        {
            judged.Add(new Message("bench-averages.say-bars"));
        }

        return judged.ToImmutable();
    }

    private static string Name(AverageState state) => state switch
    {
        AverageState.HeldStill => "held-still",
        AverageState.SpinsFree => "spins-free",
        _ => "turns",
    };
}
