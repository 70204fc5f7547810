using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Noticing;

namespace Halfsplit.Bench.Batteries;

/// <summary>How a lead-acid battery is built.</summary>
public enum BatteryType { Flooded, Agm, Gel }

/// <summary>State of charge from rest volts.</summary>
/// <param name="VoltsAtTwenty">Of one 12 V battery, carried to the temperature of the table.</param>
/// <param name="Percent">0 to 100, with what meter, rest and type leave open.</param>
public sealed record RestResult(BatteryType Type, double Volts, double Celsius, double VoltsAtTwenty, Measure Percent, double SystemVolts = 12);

/// <summary>State of charge of a rested battery, or of two in line (<c>data/bench-battery-charge.csv</c>).</summary>
public static class BatteryRest
{
    private static readonly double Low = BenchDefaults.Table["battery.low-percent"], Half = BenchDefaults.Table["battery.half-percent"];

    private static readonly ImmutableDictionary<BatteryType, TableCurve> Charge = BenchData.Read("bench-battery-charge.csv")
        .GroupBy(r => Enum.Parse<BatteryType>(r.Text("type"), ignoreCase: true))
        .ToImmutableDictionary(g => g.Key, g => new TableCurve(g.Select(r => (r.Number("volts"), r.Number("percent")))));

    private static readonly TableCurve Freezing = new(
        BenchData.Read("bench-battery-freezing.csv").Select(r => (r.Number("percent"), r.Number("celsius"))));

    /// <summary>Where a battery so full freezes, in °C; by the lower end of its charge, to be careful.</summary>
    public static double FreezingCelsius(RestResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return Freezing.At(result.Percent.Range?.Low ?? result.Percent.Value);
    }

    /// <param name="systemVolts">12, or 24 for two batteries in line.</param>
    public static Outcome<RestResult> Of(BatteryType type, double volts, double celsius, double systemVolts = SystemVolts.Twelve)
    {
        var times = SystemVolts.Times(systemVolts);
        var limits = SystemVolts.Of(systemVolts).Within("rest-volts", volts, "rest-volts", Unit.Volt, times).Within("celsius", celsius, "battery-celsius", Unit.Celsius);
        if (!limits.AreKept)
        {
            return Outcome.Wrong<RestResult>(limits.Problems);
        }

        var even = (volts / times) - ((celsius - BenchDefaults.Table["battery.table-celsius"]) * BenchDefaults.Table["battery.volts-per-kelvin"]);
        var spread = BenchDefaults.Table["battery.rest-spread"];
        return Outcome.Of(new RestResult(
            type, volts, celsius, even,
            new Measure(Charge[type].At(even), Unit.Percent, new ValueRange(Charge[type].At(even - spread), Charge[type].At(even + spread))),
            systemVolts));
    }

    public static Answer Answer(RestResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var freezing = FreezingCelsius(result);
        var isFrozen = result.Celsius <= freezing;
        var frozen = new Message("bench-caution.frozen", new Measure(Math.Round(freezing), Unit.Celsius).Say());
        return new Answer(
            new Message("bench-rest.title", new Message($"bench-battery.{result.Type.ToString().ToLowerInvariant()}"), new Measure(result.Volts, Unit.Volt).Say()),
            isFrozen ? [frozen, new Message("bench-caution.battery")] : [new Message("bench-caution.battery")],
            [new("charge", result.Percent, null)],
            [
                isFrozen ? new Message("bench-rest.frozen") : new Message(
                    result.VoltsAtTwenty > BenchDefaults.Table["battery.most-rest-volts"] ? "bench-rest.surface"
                    : result.Percent.Value < Low ? "bench-rest.low" : result.Percent.Value < Half ? "bench-rest.half" : "bench-rest.good"),
            ],
            [new Message("bench-rest.source"), .. SystemVolts.Notes(result.SystemVolts)])
        {
            Steps = [new Message("bench-rest.step", BenchDefaults.Table.Say("battery.rest-lamps", Unit.Second), BenchDefaults.Table["battery.rest-minutes"])],
            Measured = [new(BenchQuantity.RestVolts, result.Volts)],
            Found = result.Percent.Value < Low ? "battery-low" : result.Percent.Value >= Half ? "battery-charged" : null,
        };
    }
}
