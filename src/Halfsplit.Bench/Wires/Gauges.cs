using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Bench.Wires;

/// <summary>Gauges as they are typed and said, and the ohms of wires.</summary>
public static class Gauges
{
    /// <summary>The thinnest and the thickest wire that the tables hold, mm².</summary>
    public static readonly double Thinnest = BenchDefaults.Table.RangeOf("limit.gauge").Low, Thickest = BenchDefaults.Table.RangeOf("limit.gauge").High;

    /// <summary>The AWG numbers within the tables: 24 is 0.205 mm², 4/0 is 107 mm².</summary>
    public static readonly int ThickestAwg = (int)BenchDefaults.Table.RangeOf("limit.awg").Low, ThinnestAwg = (int)BenchDefaults.Table.RangeOf("limit.awg").High;

    private const string Awg = "AWG", Aught = "/0";

    private static readonly ImmutableHashSet<string> Metric = ImmutableHashSet.Create(StringComparer.OrdinalIgnoreCase, "", "mm2", "mm²", "qmm");

    /// <summary>The AWG numbers that wire is commonly sold in, thinnest first.</summary>
    public static ImmutableArray<int> SoldAwg { get; } =
        [.. Enumerable.Range(ThickestAwg, ThinnestAwg - ThickestAwg + 1).Reverse().Where(n => n <= 0 || n % 2 == 0)];

    /// <summary>Reads <c>2.5</c>, <c>2.5 mm2</c>, <c>2,5mm²</c>, <c>14 AWG</c>, <c>AWG14</c>, <c>2/0 AWG</c>.</summary>
    public static Outcome<WireGauge> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var plain = text.Trim();
        var isBefore = plain.StartsWith(Awg, StringComparison.OrdinalIgnoreCase);
        if (TypedQuantity.Number(isBefore ? plain[Awg.Length..] : plain) is not var (number, behind) || number < 0)
        {
            return Outcome.Wrong<WireGauge>(NoGauge(text));
        }

        var isAught = behind.StartsWith(Aught, StringComparison.Ordinal);
        var unit = (isAught ? behind[Aught.Length..] : behind).Trim();
        var isAwg = isBefore || string.Equals(unit, Awg, StringComparison.OrdinalIgnoreCase);
        if ((isAught && !isAwg) || (isBefore && unit.Length > 0) || (!isAwg && !Metric.Contains(unit)))
        {
            return Outcome.Wrong<WireGauge>(NoGauge(text));
        }

        if (!isAwg)
        {
            var limits = new InputLimits().Within("gauge", number, Thinnest, Thickest, Unit.SquareMillimetre);
            return limits.AreKept ? Outcome.Of(new WireGauge(number)) : Outcome.Wrong<WireGauge>(limits.Problems);
        }

        var awg = isAught ? 1 - number : number;
        return awg == Math.Floor(awg) && awg >= ThickestAwg && awg <= ThinnestAwg
            ? Outcome.Of(WireGauge.OfAwg((int)awg))
            : Outcome.Wrong<WireGauge>(new Message("bench-limit.awg", text, ThinnestAwg));
    }

    /// <summary>
    /// Ohms per metre: for mm² from the ideal floor (solid copper) to the published maximum of stranded wire, for AWG from the published
    /// table of solid wire to what stranding adds.
    /// </summary>
    public static Measure OhmsPerMetre(this WireGauge gauge, double celsius)
    {
        ArgumentNullException.ThrowIfNull(gauge);
        var solid = WireTable.SolidOhmsPerMetre(gauge.SquareMillimetres, celsius);
        var stranded = WireTable.OhmsPerMetre(gauge.SquareMillimetres, celsius);
        return gauge.Awg is null
            ? Spread(stranded, solid, stranded)
            : Spread(solid, solid, solid * BenchDefaults.Table["wire.stranding"]);
    }

    private static Measure Spread(double value, double low, double high) => new(value, Unit.OhmPerMetre, new ValueRange(low, high));

    public static Message Say(this WireGauge gauge)
    {
        ArgumentNullException.ThrowIfNull(gauge);
        return gauge.AwgText is { } awg
            ? new Message("bench-unit.awg", awg, new Figure(gauge.SquareMillimetres, gauge.SquareMillimetres < 10 ? "0.00" : "0.0"))
            : new Message("bench-unit.of", new Figure(gauge.SquareMillimetres, "0.##"), Measure.SymbolOf(Unit.SquareMillimetre));
    }

    private static Message NoGauge(string text) => new("bench-limit.gauge", text, Thinnest, Thickest, ThinnestAwg);
}
