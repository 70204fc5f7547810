using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Batteries;

/// <summary>A battery's volts at its posts under one load.</summary>
public readonly record struct LoadedVolts(double Volts, double Amps);

/// <summary>Internal resistance from two loads.</summary>
/// <param name="OpenVolts">What the two loads point to without a load.</param>
/// <param name="RatedOhms">From the cold-cranking amps on the label; null where they were not given.</param>
public sealed record OhmsResult(Measure Ohms, double OpenVolts, double? RatedOhms, double SystemVolts = 12);

/// <summary>Internal resistance of a battery, or of two in line, from its volts under two loads.</summary>
public static class BatteryOhms
{
    /// <param name="coldCrankingAmps">On the label of each battery.</param>
    /// <param name="systemVolts">12, or 24 for two batteries in line.</param>
    public static Outcome<OhmsResult> Of(LoadedVolts light, LoadedVolts heavy, double? coldCrankingAmps, double systemVolts = SystemVolts.Twelve)
    {
        var times = SystemVolts.Times(systemVolts);
        var limits = SystemVolts.Of(systemVolts)
            .Within("loaded-volts", light.Volts, "loaded-volts", Unit.Volt, times).Within("loaded-volts", heavy.Volts, "loaded-volts", Unit.Volt, times)
            .Within("amps", light.Amps, "load-amps", Unit.Amp).Within("amps", heavy.Amps, "load-amps", Unit.Amp)
            .Within("cold-cranking-amps", coldCrankingAmps, "cold-cranking-amps", Unit.Amp);
        if (limits.AreKept)
        {
            limits.Unless(heavy.Amps >= light.Amps + BenchDefaults.Table["battery.least-step-amps"], "bench-limit.same-loads", new Measure(BenchDefaults.Table["battery.least-step-amps"], Unit.Amp).Say())
                .Unless(heavy.Volts <= light.Volts, "bench-limit.volts-rise");
        }

        if (!limits.AreKept)
        {
            return Outcome.Wrong<OhmsResult>(limits.Problems);
        }

        var amps = heavy.Amps - light.Amps;
        var ohms = (light.Volts - heavy.Volts) / amps;
        // The meter's gain is shared by both readings; what is left are its counts of 10 mV, and the clamp's error.
        var error = (BenchDefaults.Table["battery.count-volts"] / amps) + (ohms * BenchDefaults.Table["battery.clamp-share"]);
        return Outcome.Of(new OhmsResult(
            new Measure(ohms, Unit.Ohm, new ValueRange(Math.Max(0, ohms - error), ohms + error)), light.Volts + (ohms * light.Amps),
            coldCrankingAmps is { } rated ? times * (BenchDefaults.Table["battery.cca-from"] - BenchDefaults.Table["battery.cca-to"]) / rated : null,
            systemVolts));
    }

    public static Answer Answer(OhmsResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var table = BenchDefaults.Table;
        var times = SystemVolts.Times(result.SystemVolts);
        var isWeak = result.Ohms.Value > times * table["battery.weak-ohms"]
            || result.Ohms.Value > table["battery.times-rated-ohms"] * (result.RatedOhms ?? double.PositiveInfinity);
        var isWorn = result.Ohms.Value > (result.RatedOhms ?? times * table["battery.healthy-ohms"]);
        AnswerLine[] rated = result.RatedOhms is { } ohms ? [new("rated-ohms", ohms, Unit.Ohm)] : [];
        return new Answer(
            new Message("bench-ohms.title"), [new Message("bench-caution.battery"), new Message("bench-caution.battery-load")],
            [new("internal", result.Ohms, null), new("open-volts", result.OpenVolts, Unit.Volt), .. rated],
            [new Message(isWeak ? "bench-ohms.weak" : isWorn ? "bench-ohms.worn" : "bench-ohms.good")],
            [
                new Message(
                    "bench-ohms.source", table.Say("battery.cca-from", Unit.Volt), table.Say("battery.cca-to", Unit.Volt),
                    table.Say("battery.healthy-ohms", Unit.Ohm), table.Say("battery.weak-ohms", Unit.Ohm)),
                .. SystemVolts.Notes(result.SystemVolts),
            ])
        {
            // The open volts are reckoned from two loads, not measured at rest: nothing to be held against a reading.
            Found = isWeak ? "battery-weak" : isWorn ? null : "battery-strong",
        };
    }
}
