using System.Collections.Immutable;
using Halfsplit.Diagnosis.Evidence;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>The limits of one reading, stretches that are alike in it put together.</summary>
internal static class Limits
{
    /// <summary>Share of the service current that must flow for a reading to count as loaded.</summary>
    private const double LoadedShare = 0.05;

    /// <summary>Share of the supply that a resistance must take at the service current to be worth a word.</summary>
    private const double HarmfulShare = 0.05;

    /// <summary>Splits the limits into what could still hide harm, worst first, and what carried current and can't.</summary>
    /// <param name="serviceOhms">For each branch, supply volts over its service current.</param>
    public static (ImmutableArray<ResistanceLimit> NotCleared, ImmutableArray<ResistanceLimit> Proven) Of(
        LimitSearch search, Forecaster forecaster, double[] serviceOhms)
    {
        var network = forecaster.Network;
        var volts = network.Circuit.Battery.NominalVolts;
        var all = new List<ResistanceLimit>();
        foreach (var stretch in search.Path())
        {
            if (!search.Covers(stretch))
            {
                continue;
            }

            var amps = stretch.Branches.Max(b => Math.Abs(search.Point.Amps(b)));
            var service = stretch.Branches.Min(b => serviceOhms[b]);
            var harmful = HarmfulShare * service;
            var loaded = amps * service >= LoadedShare * volts;
            if (!loaded && !search.Hides(stretch, harmful))
            {
                // Shown by something else than its own drop, and clear: nothing to say.
                continue;
            }

            var hidden = search.Hidden(stretch, harmful);
            // What shows only because a relay or module gave up elsewhere was not what this reading looked at.
            if (!search.IsDirect(stretch, 1.05 * hidden))
            {
                continue;
            }

            // With current the very same digits say little: a tenth of a count is a hair's breadth.
            var same = loaded ? null : search.Same(stretch, hidden);
            all.Add(new ResistanceLimit([stretch], amps, same, hidden, (loaded ? hidden : same ?? hidden) / service, loaded));
        }

        var merged = all
            .GroupBy(l => (Rough(l.Ohms), Rough(l.Amps), l.IsLoaded))
            .Select(g => g.First() with { Stretches = [.. g.SelectMany(l => l.Stretches)], Share = g.Max(l => l.Share) })
            .OrderByDescending(l => Rough(l.Share))
            .ToList();
        return (
            [.. merged.Where(l => l.Share >= HarmfulShare)],
            [.. merged.Where(l => l.Share < HarmfulShare && l.IsLoaded)]);
    }

    /// <summary>Steps of about a tenth: finer is not known.</summary>
    private static int Rough(double value) => value < 1e-6 ? int.MinValue : (int)Math.Round(Math.Log(value) * 8);
}
