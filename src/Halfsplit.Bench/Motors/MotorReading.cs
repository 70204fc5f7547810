using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Motors;

/// <summary>What may be wrong with a motor whose current was recorded.</summary>
public enum MotorState { Healthy, WeakBar, WornBrushes, Seized, SpinsFree }

/// <param name="Bars">Of the commutator; null to look for a pattern that repeats.</param>
/// <param name="RatedAmps">What it draws at work; null where that is not known.</param>
public sealed record MotorQuestion(CurrentTrace Trace, int? Bars = null, double? RatedAmps = null);

/// <summary>The current of a turning motor, folded onto one turn.</summary>
/// <param name="RunningFrom">The first sample of the part that was judged.</param>
/// <param name="RippleAmps">Peak to peak, of the turn on average.</param>
/// <param name="Turns">Turns a second; null where nothing turns, or nothing tells how many ripples make a turn.</param>
/// <param name="RippleHertz">Null where there is no ripple.</param>
/// <param name="Dip">How far the weakest hump lies below the others, over the mean.</param>
/// <param name="States">With their odds, the likeliest first.</param>
public sealed record MotorResult(
    MotorQuestion Question, int RunningFrom, double PeakAmps, double MeanAmps, double RippleAmps, Measure? Turns, int? RipplesPerTurn, double? RippleHertz,
    double Dip, ImmutableArray<(MotorState State, double Odds)> States, MotorSpectrum Spectrum);

/// <summary>Speed, ripple and faults of a brushed motor from its current.</summary>
public static class MotorReading
{
    private static readonly int UsualBars = (int)BenchDefaults.Table["motor.usual-bars"];

    public static Outcome<MotorResult> Of(MotorQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var limits = new InputLimits()
            .Within("bars", question.Bars, "bars", Unit.Count)
            .Within("rated-amps", question.RatedAmps, "rated-amps", Unit.Amp)
            .Within("seconds", question.Trace.Seconds, "recording-seconds", Unit.Second);
        if (!limits.AreKept)
        {
            return Outcome.Wrong<MotorResult>(limits.Problems);
        }

        var needed = RateNeeded(question.Bars ?? UsualBars);
        if (question.Trace.SamplesPerSecond < needed)
        {
            return Outcome.Wrong<MotorResult>(new Message(
                "bench-limit.slow-samples", new Measure(question.Trace.SamplesPerSecond, Unit.Hertz).Say(), new Measure(needed, Unit.Hertz).Say(),
                question.Bars ?? UsualBars, new Figure(BenchDefaults.Table["motor.fastest-rpm"], "0")));
        }

        var from = MotorStart.RunningFrom(question.Trace);
        var running = question.Trace.Amps.AsSpan()[from..].ToArray();
        var mean = running.Average();
        return mean < BenchDefaults.Table["motor.least-amps"]
            ? Outcome.Wrong<MotorResult>(new Message("bench-limit.no-current", new Measure(BenchDefaults.Table["motor.least-amps"], Unit.Amp).Say()))
            : Outcome.Of(Read(question, from, running, mean));
    }

    /// <summary>Samples a second below which a fast motor's ripple would pass for a slower one's.</summary>
    public static double RateNeeded(int bars) =>
        BenchDefaults.Table["motor.samples-per-ripple"] * Commutator.RipplesPerTurn(bars) * BenchDefaults.Table["motor.fastest-rpm"] / 60;

    private static MotorResult Read(MotorQuestion question, int from, double[] running, double mean)
    {
        var rate = question.Trace.SamplesPerSecond;
        var spectrum = MotorSpectrum.Of(running, rate);
        var speed = MotorSpeed.Of(spectrum, question.Bars, running.Length / rate);
        var fold = speed.Turns is { } turns && speed.RipplesPerTurn is { } ripples
            ? TurnFold.Of(running, rate, turns, ripples)
            : new TurnFold([], 0, 0, 0);
        var seen = new MotorSigns(
            speed.RippleHertz is not null, fold.Dip / mean, fold.Residual / mean, fold.Skewness, question.RatedAmps is { } rated ? mean / rated : null);
        return new MotorResult(
            question, from, question.Trace.Amps.Max(), mean, fold.Profile.Length > 0 ? fold.Profile.Max() - fold.Profile.Min() : 0,
            speed.Turns is { } hertz ? Turning(hertz, running.Length / rate, speed.RipplesPerTurn!.Value) : null,
            speed.RipplesPerTurn, speed.RippleHertz, fold.Dip / mean, seen.States(), spectrum);
    }

    /// <summary>A ripple's frequency is known to a part of a line.</summary>
    private static Measure Turning(double hertz, double seconds, int ripples)
    {
        var error = BenchDefaults.Table["motor.line-share"] / seconds / ripples;
        return new Measure(hertz * 60, Unit.RevolutionsPerMinute, new ValueRange((hertz - error) * 60, (hertz + error) * 60));
    }
}
