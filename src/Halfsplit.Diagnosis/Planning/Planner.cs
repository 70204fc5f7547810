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

        var byEffort = checks
            .Select(c => (Check: c, Effort: Effort.Of(circuit, options, position, c)))
            .OrderBy(c => c.Effort.Minutes).ThenBy(c => c.Check.Id, StringComparer.Ordinal);
        var best = new List<RankedCheck>();
        var forecasts = new Forecast[partition.Cars.Count];
        foreach (var (check, effort) in byEffort)
        {
            // No check can tell more than everything: dearer ones can no longer win a place.
            if (best.Count == most && partition.Entropy / effort.Minutes < best[^1].Score)
            {
                break;
            }

            for (var i = 0; i < forecasts.Length; i++)
            {
                forecasts[i] = forecaster.Of(partition.Cars[i], check, repairs);
            }

            var ranked = new RankedCheck(check, effort, Information.Bits(partition, check, forecasts));
            if (ranked.Bits >= LeastBits && (best.Count < most || ranked.Score > best[^1].Score)
                && _safety.Allows(check, partition, repairs))
            {
                Insert(best, ranked, most);
            }
        }

        return [.. best];
    }

    /// <summary>True if a check may be done on every car that is still likely.</summary>
    public bool IsSafe(
        Posterior posterior, Check check, ImmutableArray<Repair> repairs, Func<Suspects.Suspect, string> classOf) =>
        _safety.Allows(check, Partition.Of(posterior, classOf, MostCars), repairs);

    private static void Insert(List<RankedCheck> best, RankedCheck ranked, int most)
    {
        var at = best.FindIndex(b => ranked.Score > b.Score);
        best.Insert(at < 0 ? best.Count : at, ranked);
        if (best.Count > most)
        {
            best.RemoveAt(most);
        }
    }
}
