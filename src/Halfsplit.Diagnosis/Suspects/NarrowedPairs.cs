using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Suspects;

/// <summary>
/// Pairs tried in a few degrees each may all miss what many exact readings say. The likeliest of them are looked at in all
/// degrees of one fault and then of the other, in turn.
/// </summary>
internal static class NarrowedPairs
{
    /// <summary>How many of the likeliest pairs are looked at: many look alike from where was read; an assumption.</summary>
    private const int Most = 8;

    /// <summary>How often each fault's degrees are gone through; an assumption.</summary>
    private const int Rounds = 2;

    /// <summary>The same pairs, the likeliest in the degrees around those that fit best.</summary>
    /// <param name="singles">The space of single faults.</param>
    /// <param name="tried">The pairs in few degrees.</param>
    /// <param name="posterior">What the readings say of them.</param>
    /// <param name="weigh">Weighs a space against the same readings.</param>
    public static IReadOnlyList<FaultPair> Of(
        HypothesisSpace singles, IReadOnlyList<FaultPair> tried, Posterior posterior, Func<HypothesisSpace, Posterior> weigh)
    {
        var best = BestOf(posterior).Take(Most).ToDictionary(b => b.Suspect.Id, b => b.Degrees, StringComparer.Ordinal);
        for (var round = 0; round < Rounds; round++)
        {
            GoThrough(p => new FaultPair(TriedDegrees.All(p.First.Mode), TriedDegrees.Only(p.Second.Mode, best[p.Id].Second)));
            GoThrough(p => new FaultPair(TriedDegrees.Only(p.First.Mode, best[p.Id].First), TriedDegrees.All(p.Second.Mode)));
        }

        return [.. tried.Select(p => best.TryGetValue(p.Id, out var at)
            ? new FaultPair(TriedDegrees.Around(p.First.Mode, at.First), TriedDegrees.Around(p.Second.Mode, at.Second))
            : p)];

        void GoThrough(Func<FaultPair, FaultPair> degrees)
        {
            var found = weigh(singles.WithPairs([.. tried.Where(p => best.ContainsKey(p.Id)).Select(degrees)]));
            foreach (var (suspect, at) in BestOf(found))
            {
                best[suspect.Id] = at;
            }
        }
    }

    /// <summary>The likeliest degrees of each pair, likeliest pair first.</summary>
    public static IEnumerable<(Suspect Suspect, (Fault First, Fault Second) Degrees)> BestOf(Posterior posterior) =>
        posterior.Space.Hypotheses
            .Where(h => h.Faults.Length == 2)
            .GroupBy(h => h.Suspect)
            .Select(g => (Suspect: posterior.Space.Suspects[g.Key], Car: g.MaxBy(h => posterior.LogOdds[h.Index])!))
            .OrderByDescending(b => Math.Round(posterior.LogOdds[b.Car.Index], 6)).ThenBy(b => b.Suspect.Id, StringComparer.Ordinal)
            .Select(b => (b.Suspect, (b.Car.Faults[0], b.Car.Faults[1])));
}
