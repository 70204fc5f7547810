using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Loads;

/// <summary>A 5 V sensor supply, key on.</summary>
/// <param name="UnpluggedVolts">The same with the sensor unplugged; null where that was not measured.</param>
/// <param name="GroundVolts">From the sensor's ground to the battery's negative post; null where that was not measured.</param>
public sealed record SensorQuestion(double Volts, double? UnpluggedVolts = null, double? GroundVolts = null);

/// <summary>Judges a sensor's supply and ground.</summary>
public static class SensorSupply
{
    public static Outcome<Answer> Of(SensorQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var limits = new InputLimits()
            .Within("sensor-volts", question.Volts, "sensor-volts", Unit.Volt).Within("sensor-volts", question.UnpluggedVolts, "sensor-volts", Unit.Volt)
            .Within("sensor-ground", question.GroundVolts, "sensor-volts", Unit.Volt);
        return limits.AreKept ? Outcome.Of(Answer(question)) : Outcome.Wrong<Answer>(limits.Problems);
    }

    private static Answer Answer(SensorQuestion question)
    {
        var good = BenchDefaults.Table.RangeOf("sensor.volts");
        var judged = ImmutableArray.CreateBuilder<Message>();
        judged.Add(
            good.Contains(question.Volts) ? new Message("bench-sensor.good", BenchDefaults.Table.SayRange("sensor.volts", Unit.Volt))
            : question.Volts > good.High ? new Message("bench-sensor.high", new Measure(good.High, Unit.Volt).Say())
            : question.UnpluggedVolts is not { } unplugged ? new Message("bench-sensor.low", new Measure(good.Low, Unit.Volt).Say())
            : new Message(good.Contains(unplugged) ? "bench-sensor.sensor-pulls" : "bench-sensor.elsewhere"));
        if (question.GroundVolts is { } ground)
        {
            judged.Add(new Message(ground <= BenchDefaults.Table["sensor.ground-volts"] ? "bench-sensor.ground-good" : "bench-sensor.ground-bad"));
        }

        return new Answer(
            new Message("bench-sensor.title", new Measure(question.Volts, Unit.Volt).Say()), [new Message("bench-caution.sensor")], [],
            judged.ToImmutable(), [new Message("bench-sensor.source", BenchDefaults.Table.SayRange("sensor.volts", Unit.Volt), BenchDefaults.Table.Say("sensor.ground-volts", Unit.Volt))]);
    }
}
