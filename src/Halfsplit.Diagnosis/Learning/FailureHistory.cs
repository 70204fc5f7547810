using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Learning;

/// <summary>How often something was what was wrong, and how often the weights made one expect it.</summary>
/// <param name="Name">Kind and mode (<c>motor/brushes-worn</c>), or a suspect of the circuit (<c>M1 brushes worn</c>).</param>
/// <param name="Jobs">Finished jobs in which it was; 0 or more.</param>
/// <param name="Expected">In how many of them it was expected beforehand; 0 or more.</param>
public sealed record LearnedCount(string Name, int Jobs, double Expected);

/// <summary>
/// What finished jobs teach about how often things fail: counts by kind of fault, and by suspect of this one circuit. A
/// job keeps the history it was opened with.
/// </summary>
/// <remarks>
/// A weight is taken as a rate that is known as well as if so many faults had been expected and seen (the strength): the
/// conjugate gamma prior of a Poisson count. After n faults where e were expected, the rate is (strength + n) /
/// (strength + e) of what it was. The kinds learn from all circuits; a suspect learns from its own circuit, against what
/// its kind's rate makes one expect there, so that no job counts twice.
/// </remarks>
public sealed class FailureHistory
{
    /// <summary>Names expected less often than this, and never met, are left out: they move nothing that can be seen.</summary>
    private const double WorthKeeping = 0.01;

    private static readonly FrozenDictionary<string, double> Strengths =
        DataFile.Numbers(typeof(FailureHistory).Assembly, "learning.csv", "item");

    private readonly FrozenDictionary<string, LearnedCount> _kinds;
    private readonly FrozenDictionary<string, LearnedCount> _suspects;

    /// <summary>Takes counts as a job file keeps them.</summary>
    /// <param name="jobs">Finished jobs counted.</param>
    /// <param name="circuitJobs">Those among them on this circuit.</param>
    /// <param name="kinds">Counts by kind and mode.</param>
    /// <param name="suspects">Counts by suspect, of this circuit alone.</param>
    /// <param name="kindStrength">Expected faults that a kind's weight counts for; above 0.</param>
    /// <param name="circuitStrength">The same of a suspect in its circuit; above 0.</param>
    public FailureHistory(
        int jobs, int circuitJobs, ImmutableArray<LearnedCount> kinds, ImmutableArray<LearnedCount> suspects,
        double kindStrength, double circuitStrength)
    {
        (Jobs, CircuitJobs, Kinds, Suspects) = (jobs, circuitJobs, kinds, suspects);
        // A file that says otherwise is damaged; the weights must stay above 0 all the same.
        (KindStrength, CircuitStrength) = (Math.Max(1e-3, kindStrength), Math.Max(1e-3, circuitStrength));
        _kinds = ByName(kinds);
        _suspects = ByName(suspects);
    }

    public int Jobs { get; }

    public int CircuitJobs { get; }

    public ImmutableArray<LearnedCount> Kinds { get; }

    public ImmutableArray<LearnedCount> Suspects { get; }

    public double KindStrength { get; }

    public double CircuitStrength { get; }

    /// <summary>Nothing learned: the weights are those of the table.</summary>
    public static FailureHistory None { get; } = new(0, 0, [], [], Strengths["kind-jobs"], Strengths["circuit-jobs"]);

    /// <summary>Learns from finished jobs. Their order does not matter; of two with one name the first by fault counts.</summary>
    /// <param name="cases">The jobs.</param>
    /// <param name="circuit">Title of the circuit whose suspects are wanted.</param>
    public static FailureHistory Of(IEnumerable<ProvenCase> cases, string circuit)
    {
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(circuit);
        // One order whatever order the files came in: sums then agree to the last digit.
        var all = cases
            .OrderBy(c => c.Job, StringComparer.Ordinal).ThenBy(c => c.Fault.Suspect, StringComparer.Ordinal)
            .DistinctBy(c => c.Job).ToList();
        if (all.Count == 0)
        {
            return None;
        }

        var kinds = new Tally();
        foreach (var job in all)
        {
            kinds.Found(job.Fault.Kind);
            foreach (var share in job.Expected.Shares)
            {
                kinds.Expect(share.Kind, share.Share);
            }
        }

        var byKind = new FailureHistory(all.Count, 0, kinds.Counts(), [], None.KindStrength, None.CircuitStrength);
        var suspects = new Tally();
        var own = all.Where(c => c.Expected.IsOf(circuit)).ToList();
        foreach (var job in own)
        {
            suspects.Found(job.Fault.Suspect);
            var weights = job.Expected.Shares.Select(s => s.Share * byKind.KindFactor(s.Kind)).ToList();
            var total = weights.Sum();
            for (var i = 0; i < weights.Count; i++)
            {
                suspects.Expect(job.Expected.Shares[i].Suspect, weights[i] / total);
            }
        }

        return new FailureHistory(
            all.Count, own.Count, kinds.Counts(), suspects.Counts(), None.KindStrength, None.CircuitStrength);
    }

    /// <summary>The name under which a mode is counted by kind.</summary>
    public static string KindOf(FaultMode mode)
    {
        ArgumentNullException.ThrowIfNull(mode);
        return $"{mode.Kind}/{mode.Mode}";
    }

    /// <summary>What the weight of a mode is multiplied with; always above 0, 1 where nothing is learned.</summary>
    public double FactorOf(FaultMode mode)
    {
        ArgumentNullException.ThrowIfNull(mode);
        return KindFactor(KindOf(mode)) * SuspectFactor(mode.Id);
    }

    /// <summary>The part of it that comes from the kind.</summary>
    public double KindFactor(string kind) => Factor(_kinds, kind, KindStrength);

    /// <summary>The part of it that comes from this circuit.</summary>
    public double SuspectFactor(string suspect) => Factor(_suspects, suspect, CircuitStrength);

    private static double Factor(FrozenDictionary<string, LearnedCount> counts, string name, double strength) =>
        counts.TryGetValue(name, out var count) ? (strength + count.Jobs) / (strength + count.Expected) : 1;

    private static FrozenDictionary<string, LearnedCount> ByName(ImmutableArray<LearnedCount> counts) => counts
        .Where(c => c.Jobs >= 0 && c.Expected >= 0)
        .DistinctBy(c => c.Name)
        .ToFrozenDictionary(c => c.Name, StringComparer.Ordinal);

    private sealed class Tally
    {
        private readonly SortedDictionary<string, (int Jobs, double Expected)> _counts = new(StringComparer.Ordinal);

        public void Found(string name)
        {
            var (jobs, expected) = _counts.GetValueOrDefault(name);
            _counts[name] = (jobs + 1, expected);
        }

        public void Expect(string name, double share)
        {
            var (jobs, expected) = _counts.GetValueOrDefault(name);
            _counts[name] = (jobs, expected + share);
        }

        public ImmutableArray<LearnedCount> Counts() => [.. _counts
            .Where(c => c.Value.Jobs > 0 || c.Value.Expected >= WorthKeeping)
            .Select(c => new LearnedCount(c.Key, c.Value.Jobs, Math.Round(c.Value.Expected, 4)))];
    }
}
