using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Fuses;

/// <summary>The current through a fuse from its own drop.</summary>
/// <param name="StepVolts">One count of the meter.</param>
/// <param name="Amps">With the range that meter and fuse leave open.</param>
/// <param name="FloorAmps">The current of one count: less than this moves nothing on the display.</param>
public sealed record DrainReading(FuseSpec Fuse, double Volts, double StepVolts, Measure Amps, double FloorAmps)
{
    public bool IsResolved => Volts >= StepVolts * (1 - 1e-9);
}

/// <summary>Reads the current through a fuse in place, from millivolts between its two test tabs.</summary>
public static class FuseDrain
{
    public static Outcome<DrainReading> Of(FuseSpec fuse, double volts, double stepVolts)
    {
        ArgumentNullException.ThrowIfNull(fuse);
        var limits = new InputLimits()
            .Within("fuse-drop", volts, "fuse-drop", Unit.Volt)
            .Within("meter-step", stepVolts, "meter-step", Unit.Volt);
        if (limits.AreKept)
        {
            limits.Within("fuse-drop", volts, 0, fuse.MostAmps * fuse.ColdOhms.Value, Unit.Volt);
        }

        if (!limits.AreKept)
        {
            return Outcome.Wrong<DrainReading>(limits.Problems);
        }

        var ohms = fuse.ColdOhms;
        var error = (volts * BenchDefaults.Table["meter.accuracy"]) + (BenchDefaults.Table["meter.counts"] * stepVolts);
        return Outcome.Of(new DrainReading(
            fuse, volts, stepVolts,
            new Measure(
                volts / ohms.Value, Unit.Amp,
                new ValueRange(Math.Max(0, volts - error) / ohms.Range!.Value.High, (volts + error) / ohms.Range.Value.Low)),
            FloorAmps(fuse, stepVolts)));
    }

    /// <summary>Amps that one count of the meter stands for at this fuse.</summary>
    public static double FloorAmps(FuseSpec fuse, double stepVolts)
    {
        ArgumentNullException.ThrowIfNull(fuse);
        return stepVolts / fuse.ColdOhms.Value;
    }

    /// <summary>What a current read from a fuse rests on.</summary>
    internal static Message Source => new(
        "bench-drain.source", BenchDefaults.Table.Say("fuse.ohms-spread", Unit.Percent), BenchDefaults.Table.Say("meter.accuracy", Unit.Percent),
        BenchDefaults.Table["meter.counts"]);

    public static Answer Answer(DrainReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return new Answer(
            new Message("bench-drain.title", reading.Fuse.Say(), new Measure(reading.Volts, Unit.Volt).Say()),
            [new Message("bench-caution.fuse-tabs")],
            [
                new("current", reading.Amps, null), new("floor", reading.FloorAmps, Unit.Amp), new("cold-resistance", reading.Fuse.ColdOhms, null),
            ],
            [
                !reading.IsResolved ? new Message("bench-drain.unresolved", new Measure(reading.FloorAmps, Unit.Amp).Say())
                    : reading.Amps.Value > reading.Fuse.Rating ? new Message("bench-drain.above-rating")
                    : new Message("bench-drain.read"),
            ],
            [Source]);
    }
}
