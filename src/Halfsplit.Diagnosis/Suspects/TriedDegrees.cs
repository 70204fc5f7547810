using System.Collections.Immutable;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Suspects;

/// <summary>Some degrees of a way to fail that stand for all of them.</summary>
/// <param name="Faults">The way to fail in these degrees.</param>
/// <param name="Share">Of the mode's weight, for each of them.</param>
/// <param name="IsWide">They stand far apart: each has to answer for its surroundings.</param>
internal sealed record TriedDegrees(FaultMode Mode, ImmutableArray<Fault> Faults, double Share, bool IsWide)
{
    /// <summary>Odds against a mode's likeliest degree below which a degree is left out.</summary>
    private const double Unlikely = 1e-3;

    private const int MostLikely = 4;

    /// <summary>Three degrees over the whole range.</summary>
    public static TriedDegrees Coarse(FaultMode mode)
    {
        ImmutableArray<Fault> all = [.. mode.Faults()];
        ImmutableArray<Fault> few = all.Length <= 3 ? all : [all[all.Length / 4], all[all.Length / 2], all[^2]];
        return new TriedDegrees(mode, few, 1.0 / few.Length, IsWide: true);
    }

    /// <summary>All degrees.</summary>
    public static TriedDegrees All(FaultMode mode) => new(mode, [.. mode.Faults()], ShareOf(mode), IsWide: false);

    /// <summary>One degree: what readings show.</summary>
    public static TriedDegrees Only(FaultMode mode, Fault fault) => new(mode, [fault], ShareOf(mode), IsWide: false);

    /// <summary>A degree and its neighbours; by itself if it is none of the mode's.</summary>
    public static TriedDegrees Around(FaultMode mode, Fault fault)
    {
        ImmutableArray<Fault> all = [.. mode.Faults()];
        var at = all.IndexOf(fault);
        return at < 0 ? Only(mode, fault) : new(mode, all[Math.Max(0, at - 1)..Math.Min(all.Length, at + 2)], ShareOf(mode), IsWide: false);
    }

    /// <summary>The degrees of a single suspect that some readings leave.</summary>
    public static TriedDegrees Left(FaultMode mode, int suspect, Posterior posterior)
    {
        var odds = posterior.Space.Hypotheses
            .Where(c => c.Suspect == suspect)
            .GroupBy(c => c.Faults[0])
            .Select(g => (Fault: g.Key, Odds: g.Sum(c => posterior.Odds[c.Index])))
            .ToList();
        var least = Unlikely * odds.Max(o => o.Odds);
        var left = odds.Where(o => o.Odds >= least).OrderBy(o => o.Fault.Severity).Select(o => o.Fault).ToList();
        var few = left.Count <= MostLikely
            ? left
            : [.. Enumerable.Range(0, MostLikely).Select(i => left[i * (left.Count - 1) / (MostLikely - 1)])];
        return new TriedDegrees(mode, [.. few], ShareOf(mode) * left.Count / few.Count, IsWide: left.Count > few.Count);
    }

    private static double ShareOf(FaultMode mode) => 1.0 / Math.Max(1, mode.Severities.Length);
}
