using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Noticing;

namespace Halfsplit.Bench.Batteries;

/// <summary>What was read with the engine at a fast idle; any but the volts at the posts may be missing.</summary>
/// <param name="RippleVolts">On the meter's AC range, at the alternator's output.</param>
/// <param name="PositiveDrop">From the alternator's output to the battery's positive post.</param>
/// <param name="NegativeDrop">From the battery's negative post to the alternator's body.</param>
/// <param name="SystemVolts">12, or 24 for two batteries in line.</param>
public sealed record ChargingQuestion(
    double Volts, double? RippleVolts = null, double? PositiveDrop = null, double? NegativeDrop = null, double SystemVolts = 12);

/// <summary>Alternator output, ripple and cables.</summary>
public static class Charging
{
    public static Outcome<Answer> Of(ChargingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var times = SystemVolts.Times(question.SystemVolts);
        var limits = SystemVolts.Of(question.SystemVolts)
            .Within("charging-volts", question.Volts, "charging-volts", Unit.Volt, times).Within("ripple", question.RippleVolts, "ripple", Unit.Volt)
            .Within("cable-drop", question.PositiveDrop, "cable-drop", Unit.Volt, times).Within("cable-drop", question.NegativeDrop, "cable-drop", Unit.Volt, times);
        return limits.AreKept ? Outcome.Of(Answer(question)) : Outcome.Wrong<Answer>(limits.Problems);
    }

    private static Answer Answer(ChargingQuestion question)
    {
        var (published, trade) = (BenchDefaults.Table.RangeOf("charging.volts"), BenchDefaults.Table.RangeOf("charging.trade-volts"));
        var table = BenchDefaults.Table;
        var times = SystemVolts.Times(question.SystemVolts);
        var volts = question.Volts / times;
        var controlled = table.RangeOf("charging.controlled-volts");
        var judged = ImmutableArray.CreateBuilder<Message>();
        judged.Add(
            published.Contains(volts) ? new Message("bench-charging.good", table.SayRange("charging.volts", Unit.Volt, times))
            : trade.Contains(volts) ? new Message("bench-charging.trade", table.SayRange("charging.trade-volts", Unit.Volt, times))
            : volts > trade.High ? new Message("bench-charging.high", new Measure(times * controlled.High, Unit.Volt).Say())
            : new Message("bench-charging.low", new Measure(times * controlled.Low, Unit.Volt).Say()));
        if (question.RippleVolts is { } ripple)
        {
            judged.Add(new Message(ripple <= BenchDefaults.Table["charging.ripple-volts"] ? "bench-charging.ripple-good" : "bench-charging.ripple-bad"));
        }

        judged.AddRange(Side("bench-charging.positive-side", question.PositiveDrop, "charging.positive-drop"));
        judged.AddRange(Side("bench-charging.negative-side", question.NegativeDrop, "charging.negative-drop"));
        return new Answer(
            new Message("bench-charging.title", new Measure(question.Volts, Unit.Volt).Say()), [new Message("bench-caution.running")], [],
            judged.ToImmutable(), [
                new Message(
                    "bench-charging.source", table.SayRange("charging.volts", Unit.Volt), table.Say("charging.ripple-volts", Unit.Volt),
                    table.Say("charging.positive-drop", Unit.Volt), table.Say("charging.negative-drop", Unit.Volt)),
                .. SystemVolts.Notes(question.SystemVolts),
            ])
        {
            Measured = [new(BenchQuantity.ChargingVolts, question.Volts)],
            Found = trade.Contains(volts) || published.Contains(volts) ? "alternator-charges"
                : volts < trade.Low ? "alternator-silent" : null,
        };
    }

    private static ImmutableArray<Message> Side(string code, double? drop, string limit) =>
        drop > BenchDefaults.Table[limit] ? [new Message(code, new Measure(drop.Value, Unit.Volt).Say())] : [];
}
