using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Safety;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>A check with what it is expected to tell and what it takes.</summary>
/// <param name="Bits">Expected information about which repair is needed.</param>
public sealed record RankedCheck(Check Check, Effort Effort, double Bits)
{
    /// <summary>Bits per minute.</summary>
    public double Score => Bits / Math.Max(0.05, Effort.Minutes);
}

/// <summary>Ranks checks by information per minute of the change of arrangement they need. Deterministic.</summary>
public sealed class Planner(Forecaster forecaster, DiagnosisOptions options)
{
    /// <summary>Cars planned with.</summary>
    private const int MostCars = 120;

    /// <summary>Bits below which a check is not worth mentioning.</summary>
    public const double LeastBits = 0.02;

    /// <summary>Cars of the first look.</summary>
    private const int FewCars = 40;

    /// <summary>Checks kept after the first look.</summary>
    private const int Looked = 80;

    /// <summary>Checks that are computed in full after the quick look.</summary>
    private const int Screened = 24;

    private readonly Screening _screening = new(forecaster);
    private readonly SafetyScreen _safety = new(forecaster, options);

    /// <summary>The best checks, best first; empty when nothing that can be done would tell anything.</summary>
    /// <param name="most">How many at most.</param>
    public ImmutableArray<RankedCheck> Rank(
        Posterior posterior, IEnumerable<Check> checks, Position position, ImmutableArray<Repair> repairs,
        Func<Suspects.Suspect, string> classOf, int most)
    {
        ArgumentNullException.ThrowIfNull(posterior);
        ArgumentNullException.ThrowIfNull(checks);
        var circuit = forecaster.Network.Circuit;
        var partition = Partition.Of(posterior, classOf, MostCars);
        if (partition.ClassCount < 2)
        {
            return [];
        }

        var byMinutes = checks
            .Select(c => (Check: c, Minutes: Effort.MinutesOf(circuit, options, position, c)))
            .OrderBy(c => c.Minutes).ThenBy(c => c.Check.Id, StringComparer.Ordinal);
        // First all checks on a few cars, then the better ones on all of them, then the best with computed spreads.
        var few = partition.Thin(FewCars);
        var looked = Screen(byMinutes, few, repairs, few.Cars.Count < partition.Cars.Count ? Looked : Screened);
        var screened = few.Cars.Count < partition.Cars.Count
            ? Screen(looked, partition, repairs, Screened)
            : looked;
        var outlooks = new Outlook[partition.Cars.Count];
        var best = new BestOf<RankedCheck>(most);
        foreach (var (check, _) in screened)
        {
            for (var i = 0; i < outlooks.Length; i++)
            {
                outlooks[i] = Outlook.Of(forecaster.Of(partition.Cars[i], check, repairs));
            }

            var ranked = new RankedCheck(
                check, Effort.Of(circuit, options, position, check), Information.Bits(partition, check, outlooks));
            if (ranked.Bits >= LeastBits && (!best.IsFull || ranked.Score > best.Least)
                && _safety.Allows(check, partition, repairs))
            {
                best.Offer(ranked, ranked.Score);
            }
        }

        return [.. best.Items];
    }

    private List<(Check Check, double Minutes)> Screen(
        IEnumerable<(Check Check, double Minutes)> byMinutes, Partition partition, ImmutableArray<Repair> repairs, int most)
    {
        var outlooks = new Outlook[partition.Cars.Count];
        var kept = new BestOf<(Check, double)>(most);
        foreach (var (check, minutes) in byMinutes)
        {
            // No check can tell more than everything: dearer ones can no longer win a place.
            if (kept.IsFull && partition.Entropy / minutes < kept.Least)
            {
                break;
            }

            _screening.Look(check, partition.Cars, repairs, outlooks);
            var bits = Information.Bits(partition, check, outlooks);
            if (bits >= LeastBits)
            {
                kept.Offer((check, minutes), bits / minutes);
            }
        }

        return [.. kept.Items.OrderBy(k => k.Item2).ThenBy(k => k.Item1.Id, StringComparer.Ordinal)];
    }

    /// <summary>True if a check may be done on every car that is still likely.</summary>
    public bool IsSafe(
        Posterior posterior, Check check, ImmutableArray<Repair> repairs, Func<Suspects.Suspect, string> classOf) =>
        _safety.Allows(check, Partition.Of(posterior, classOf, MostCars), repairs);
}
