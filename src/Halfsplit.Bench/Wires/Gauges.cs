using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Wires;

/// <summary>Gauges as they are typed and said, and the ohms of wires.</summary>
public static partial class Gauges
{
    /// <summary>The thinnest and the thickest wire that the tables hold, mm².</summary>
    public const double Thinnest = 0.2, Thickest = 120;

    /// <summary>The AWG numbers within the tables: 24 is 0.205 mm², 4/0 is 107 mm².</summary>
    public const int ThickestAwg = -3, ThinnestAwg = 24;

    /// <summary>The AWG numbers that wire is commonly sold in, thinnest first.</summary>
    public static ImmutableArray<int> SoldAwg { get; } =
        [.. Enumerable.Range(ThickestAwg, ThinnestAwg - ThickestAwg + 1).Reverse().Where(n => n <= 0 || n % 2 == 0)];

    /// <summary>Reads <c>2.5</c>, <c>2.5 mm2</c>, <c>2,5mm²</c>, <c>14 AWG</c>, <c>AWG14</c>, <c>2/0 AWG</c>.</summary>
    public static Outcome<WireGauge> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var match = Written().Match(text.Trim());
        if (!match.Success)
        {
            return Outcome.Wrong<WireGauge>(new Message("bench-limit.gauge", text));
        }

        var isAwg = match.Groups["before"].Success || match.Groups["unit"].Value.StartsWith("a", StringComparison.OrdinalIgnoreCase);
        if (match.Groups["aught"].Success && !isAwg)
        {
            return Outcome.Wrong<WireGauge>(new Message("bench-limit.gauge", text));
        }

        var number = double.Parse(match.Groups["number"].Value.Replace(',', '.'), CultureInfo.InvariantCulture);
        if (!isAwg)
        {
            var limits = new InputLimits().Within("gauge", number, Thinnest, Thickest, Unit.SquareMillimetre);
            return limits.AreKept ? Outcome.Of(new WireGauge(number)) : Outcome.Wrong<WireGauge>(limits.Problems);
        }

        var awg = match.Groups["aught"].Success ? 1 - number : number;
        return awg == Math.Floor(awg) && awg >= ThickestAwg && awg <= ThinnestAwg
            ? Outcome.Of(WireGauge.OfAwg((int)awg))
            : Outcome.Wrong<WireGauge>(new Message("bench-limit.awg", text));
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
            : new Message("bench-unit.square-millimetre", new Figure(gauge.SquareMillimetres, "0.##"));
    }

    [GeneratedRegex(@"^(?<before>awg\s*)?(?<number>\d+([.,]\d+)?)(?<aught>/0)?\s*(?<unit>mm2|mm²|qmm|awg)?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
