using System.Collections.Immutable;
using Halfsplit.Drawing;
using Halfsplit.Drawing.Small;
using Halfsplit.Evaluation.Play;

namespace Halfsplit.Evaluation.Tables;

/// <summary>The tables as pictures for the docs: the minutes of every player, and how the odds came true.</summary>
public static class Plots
{
    private const string Engine = "halfsplit";

    /// <summary>Writes <c>minutes.svg</c>, <c>wrong-parts.svg</c> and <c>reliability.svg</c>.</summary>
    public static void Write(IReadOnlyCollection<CarResult> results, string folder)
    {
        ArgumentNullException.ThrowIfNull(results);
        Directory.CreateDirectory(folder);
        var players = results.GroupBy(r => r.Player).Select(g => new PlayerSummary(g.Key, g)).OrderBy(p => p.Minutes.Mean).ToList();
        // Programs that show a docs page know no variables of CSS.
        var plain = DrawingOptions.Default with { Switchable = false };
        File.WriteAllText(
            Path.Combine(folder, "minutes.svg"),
            BarPlot.Svg("Minutes to the proven repair", "min", [.. players.Select(p => BarOf(p.Player, p.Minutes))], plain));
        File.WriteAllText(
            Path.Combine(folder, "wrong-parts.svg"),
            BarPlot.Svg("Wrong parts bought, per car", "", [.. players.Select(p => BarOf(p.Player, p.WrongParts))], plain));
        ImmutableArray<ReliabilityPoint> points = [.. players.Where(p => p.Player == Engine)
            .SelectMany(p => p.Suspects.Bins)
            .Select(b => new ReliabilityPoint(b.Stated, b.Hit, b.Count))];
        File.WriteAllText(
            Path.Combine(folder, "reliability.svg"), ReliabilityCurve.Svg("How suspects' odds came true", points, plain));
    }

    private static Bar BarOf(string player, Interval value) =>
        new(player, value.Mean, Math.Max(0, value.Mean - value.Half), value.Mean + value.Half);
}
