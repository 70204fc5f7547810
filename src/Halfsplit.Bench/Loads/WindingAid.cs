using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Noticing;

namespace Halfsplit.Bench.Loads;

/// <summary>A copper winding's ohms carried to 20 °C and judged.</summary>
/// <param name="Ohms">Positive infinity for OL.</param>
/// <param name="OhmsAtTwenty">What the table speaks of.</param>
/// <param name="Usual">Lowest and highest at 20 °C.</param>
/// <param name="Amps">At 12 V, as warm as it is.</param>
public sealed record WindingResult(string Kind, double Ohms, double Celsius, double OhmsAtTwenty, ValueRange Usual, double Amps);

/// <summary>Coils of injectors, relays, solenoids and motors by their ohms (<c>data/bench-windings.csv</c>), corrected for temperature.</summary>
public static class WindingAid
{
    private static readonly double SupplyVolts = BenchDefaults.Usual("supply");

    private const string RelayCoil = "relay-coil";

    private static readonly ImmutableDictionary<string, ValueRange> Table = BenchData.Read("bench-windings.csv")
        .ToImmutableDictionary(r => r.Text("kind"), r => new ValueRange(r.Number("low_ohms"), r.Number("high_ohms")), StringComparer.Ordinal);

    private static readonly ImmutableDictionary<string, ImmutableArray<string>> PartKinds = BenchData.Read("bench-windings.csv")
        .ToImmutableDictionary(r => r.Text("kind"), r => r.Text("parts").Split(' ', StringSplitOptions.RemoveEmptyEntries).ToImmutableArray(), StringComparer.Ordinal);

    /// <summary>The kinds that the table knows.</summary>
    public static ImmutableArray<string> Kinds => [.. Table.Keys.Order(StringComparer.Ordinal)];

    public static Outcome<WindingResult> Of(string kind, double ohms, double celsius)
    {
        if (!Table.TryGetValue(kind, out var usual))
        {
            return Outcome.Wrong<WindingResult>(new Message("bench-limit.winding", kind, string.Join(", ", Kinds)));
        }

        var limits = new InputLimits().Within("ohms", double.IsPositiveInfinity(ohms) ? null : ohms, "winding-ohms", Unit.Ohm).Within("celsius", celsius, "winding-celsius", Unit.Celsius);
        return limits.AreKept
            ? Outcome.Of(new WindingResult(
                kind, ohms, celsius, ohms / (1 + (WireTable.CopperTemperatureCoefficient * (celsius - 20))), usual, SupplyVolts / ohms))
            : Outcome.Wrong<WindingResult>(limits.Problems);
    }

    public static Answer Answer(WindingResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var judged = double.IsPositiveInfinity(result.Ohms) ? "open"
            : result.OhmsAtTwenty < result.Usual.Low ? "low" : result.OhmsAtTwenty > result.Usual.High ? "high" : "good";
        return new Answer(
            new Message(
                "bench-winding.title", new Message($"bench-winding.{result.Kind}"), new Measure(result.Ohms, Unit.Ohm).Say(),
                new Measure(result.Celsius, Unit.Celsius).Say()),
            [new Message("bench-caution.ohms-isolated")],
            [
                new("at-twenty", result.OhmsAtTwenty, Unit.Ohm), new("usual-low", result.Usual.Low, Unit.Ohm), new("usual-high", result.Usual.High, Unit.Ohm),
                new("amps-at-twelve", result.Amps, Unit.Amp),
            ],
            [new Message($"bench-winding.{judged}")],
            [new Message("bench-winding.source", new Figure(100 * WireTable.CopperTemperatureCoefficient, "0.###"))])
        {
            Measured = [new(BenchQuantity.WindingOhms, result.Ohms)],
            Found = FoundOf(result.Kind, judged),
            PartKinds = PartKinds[result.Kind],
        };
    }

    /// <summary>Too many ohms may be a warm winding, or dirt under the tips: they speak of nothing.</summary>
    private static string? FoundOf(string kind, string judged) => (kind == RelayCoil, judged) switch
    {
        (true, "open") => "relay-coil-open",
        (true, "low") => "relay-coil-shorted",
        (true, "good") => "relay-coil-good",
        (false, "open") => "winding-open",
        (false, "low") => "winding-shorted",
        (false, "good") => "winding-good",
        _ => null,
    };
}
