using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Noticing;

namespace Halfsplit.Bench.Batteries;

/// <summary>What was read while the starter turned; any but the volts at the posts may be missing.</summary>
/// <param name="PositiveDrop">Volts from the battery's positive post to the starter's terminal.</param>
/// <param name="NegativeDrop">Volts from the starter's body to the battery's negative post.</param>
/// <param name="SystemVolts">12, or 24 for two batteries in line.</param>
public sealed record CrankingQuestion(
    double Volts, double Celsius, double? Amps = null, double? PositiveDrop = null, double? NegativeDrop = null, double SystemVolts = 12);

/// <param name="LeastVolts">What the posts should hold at this temperature.</param>
/// <param name="AllowedDrop">For both cables together; null without the amps.</param>
public sealed record CrankingResult(CrankingQuestion Question, double LeastVolts, double? AllowedDrop);

/// <summary>Battery and cables while cranking (<c>data/bench-cranking.csv</c>; cables by SAE J541).</summary>
public static class Cranking
{
    private static readonly TableCurve Least = new(BenchData.Read("bench-cranking.csv").Select(r => (r.Number("celsius"), r.Number("least_volts"))));

    public static Outcome<CrankingResult> Of(CrankingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var times = SystemVolts.Times(question.SystemVolts);
        var limits = SystemVolts.Of(question.SystemVolts)
            .Within("cranking-volts", question.Volts, "cranking-volts", Unit.Volt, times).Within("celsius", question.Celsius, "battery-celsius", Unit.Celsius)
            .Within("amps", question.Amps, "cranking-amps", Unit.Amp)
            .Within("cable-drop", question.PositiveDrop, "cable-drop", Unit.Volt, times).Within("cable-drop", question.NegativeDrop, "cable-drop", Unit.Volt, times)
            // What the cables lose is part of what the posts hold.
            .Unless(!((question.PositiveDrop ?? 0) + (question.NegativeDrop ?? 0) > question.Volts), "bench-limit.drops-above-volts", new Measure(question.Volts, Unit.Volt).Say());
        return limits.AreKept
            ? Outcome.Of(new CrankingResult(
                question, times * Least.At(question.Celsius), question.Amps is { } amps ? amps / 100 * BenchDefaults.Table["starter.volts-per-100-amps"] : null))
            : Outcome.Wrong<CrankingResult>(limits.Problems);
    }

    public static Answer Answer(CrankingResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var question = result.Question;
        var judged = ImmutableArray.CreateBuilder<Message>();
        var most = SystemVolts.Times(question.SystemVolts) * BenchDefaults.Table["cranking.most-volts"];
        judged.Add(
            question.Volts > most ? new Message("bench-cranking.no-sag", new Measure(most, Unit.Volt).Say())
            : new Message(question.Volts >= result.LeastVolts ? "bench-cranking.holds" : "bench-cranking.sags"));
        var drop = (question.PositiveDrop ?? 0) + (question.NegativeDrop ?? 0);
        if (result.AllowedDrop is { } allowed && (question.PositiveDrop ?? question.NegativeDrop) is not null)
        {
            var isHalf = question.PositiveDrop is null || question.NegativeDrop is null;
            judged.Add(new Message(
                drop <= allowed ? isHalf ? "bench-cranking.one-side" : "bench-cranking.cables-good"
                : question.PositiveDrop > (question.NegativeDrop ?? 0) ? "bench-cranking.positive-side" : "bench-cranking.negative-side"));
        }

        AnswerLine?[] lines =
        [
            new("least", result.LeastVolts, Unit.Volt), Line("positive-side", question.PositiveDrop), Line("negative-side", question.NegativeDrop),
            Line("allowed-both", result.AllowedDrop),
        ];
        return new Answer(
            new Message("bench-cranking.title", new Measure(question.Volts, Unit.Volt).Say(), new Measure(question.Celsius, Unit.Celsius).Say()),
            [new Message("bench-caution.cranking")], [.. lines.OfType<AnswerLine>()], judged.ToImmutable(), [
                new Message(
                    "bench-cranking.source", new Measure(Least.At(double.PositiveInfinity), Unit.Volt).Say(),
                    BenchDefaults.Table.Say("starter.volts-per-100-amps", Unit.Volt)),
                .. SystemVolts.Notes(question.SystemVolts),
            ])
        {
            Measured = [new(BenchQuantity.CrankingVolts, question.Volts)],
            Found = question.Volts > most ? null : question.Volts >= result.LeastVolts ? "battery-strong" : "battery-weak",
        };
    }

    private static AnswerLine? Line(string name, double? volts) => volts is { } value ? new(name, value, Unit.Volt) : null;
}
