using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Lint;

/// <summary>Gauges that no vehicle has, colours that no standard knows.</summary>
internal static class WireRules
{
    /// <summary>From the thinnest sensor lead to the thickest starter cable, mm².</summary>
    private static readonly ValueRange Gauges = new(0.05, 120);

    /// <summary>Green-and-yellow is read as its two colours.</summary>
    private static readonly ImmutableArray<string> Colours = WireColours.Codes.Remove(WireColours.GreenYellow);

    public static void Check(Circuit circuit, LintReport report)
    {
        var keys = new WireKeys(circuit);
        foreach (var wire in circuit.Wires)
        {
            var area = wire.Spec.Gauge.SquareMillimetres;
            if (!Gauges.Contains(area))
            {
                report.AtKey(
                    ProblemSeverity.Error, keys.Of(wire), "lint.gauge", area.ToString("R", CultureInfo.InvariantCulture),
                    Gauges.Low, Gauges.High);
            }

            foreach (var code in Codes(wire.Spec.Colour).Where(c => !Colours.Contains(c)))
            {
                report.AtKey(
                    ProblemSeverity.Warning, keys.Of(wire), "lint.colour", code, string.Join(", ", Colours));
            }
        }
    }

    /// <summary>The two-letter codes of "YE/BK" or "YEBK", in capitals.</summary>
    private static IEnumerable<string> Codes(string? colour)
    {
        foreach (var run in (colour ?? "").Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            for (var i = 0; i < run.Length; i += 2)
            {
                yield return run.Substring(i, Math.Min(2, run.Length - i)).ToUpperInvariant();
            }
        }
    }
}
