using System.Collections.Immutable;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis;

/// <summary>What one thing noticed says about every hypothesis.</summary>
/// <param name="Id">The caller's name for it.</param>
/// <param name="LogLikelihoods">Natural logarithm of how likely it would be told, one per hypothesis in the order of <paramref name="Space"/>.</param>
/// <param name="Space">The hypotheses: single faults, "none of these", and pairs where they joined in.</param>
/// <param name="IsIncluded">A stronger statement says it already: it counts no more, and its logarithms are 0.</param>
public sealed record NoticedWeight(
    string Id, Noticed What, ImmutableArray<double> LogLikelihoods, HypothesisSpace Space, bool IsIncluded)
{
    /// <summary>
    /// The logarithm of how likely it would be told with this suspect, its cars weighed by their priors, over how likely
    /// with "none of these": above 0 it speaks for the suspect. 0 for a suspect that is not there.
    /// </summary>
    public double LogRatioOf(Suspect suspect)
    {
        var (sum, total, none) = (0.0, 0.0, 0.0);
        foreach (var car in Space.Hypotheses)
        {
            none = car.IsNone ? LogLikelihoods[car.Index] : none;
            if (Space.Suspects[car.Suspect] == suspect)
            {
                // Weighed as if this thing had not been said: else it would vouch for itself.
                var weight = Math.Exp(car.LogPrior - LogLikelihoods[car.Index]);
                total += weight;
                sum += weight * Math.Exp(LogLikelihoods[car.Index]);
            }
        }

        return total > 0 ? Math.Log(sum / total) - none : 0;
    }
}

public sealed partial class Investigation
{
    private readonly List<(string Id, Noticed What)> _noticed = [];
    private NoticedEvidence? _evidence;
    private HypothesisSpace? _weighed;

    /// <summary>The single faults, with what was noticed weighed in; worked out when first asked for.</summary>
    private HypothesisSpace _singles => _weighed ??= _noticed.Count == 0 ? _unnoticed : _unnoticed.Noticing(Evidence());

    /// <summary>What was noticed, in the order in which it was said.</summary>
    public IReadOnlyList<(string Id, Noticed What)> NoticedThings => _noticed;

    /// <summary>Takes something that was noticed: evidence before the first reading, whenever it is said.</summary>
    /// <param name="id">A name of the caller's; <see cref="WithdrawNoticed"/> uses it.</param>
    public void Notice(string id, Noticed what)
    {
        ArgumentNullException.ThrowIfNull(what);
        _noticed.Add((id, what));
        ForgetWeighed();
    }

    /// <summary>Takes it back as if it had never been said; false if there is no such thing.</summary>
    public bool WithdrawNoticed(string id)
    {
        var removed = _noticed.RemoveAll(n => n.Id == id) > 0;
        if (removed)
        {
            ForgetWeighed();
        }

        return removed;
    }

    /// <summary>What each thing noticed says, by itself, about every hypothesis.</summary>
    public ImmutableArray<NoticedWeight> NoticedWeights()
    {
        if (_noticed.Count == 0)
        {
            return [];
        }

        var space = Assess().Posterior.Space;
        var all = Evidence();
        var logs = new double[space.Hypotheses.Length][];
        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] = new double[all.Things.Length];
            all.LogLikelihoods(space.Suspects[space.Hypotheses[i].Suspect], space.Hypotheses[i], logs[i]);
        }

        return [.. _noticed.Select(n => new NoticedWeight(
            n.Id, n.What, [.. logs.Select(l => l[all.Things.IndexOf(n.What)])], space, all.IsIncluded(n.What)))];
    }

    /// <summary>What each thing noticed did to one suspect, in the order in which they were said.</summary>
    private ImmutableArray<NoticedStep> NoticedSteps(Suspect suspect, double final) =>
        [.. _noticed.Select(n => new NoticedStep(n.Id, n.What, OddsWithout(n.Id, suspect), final))];

    private double OddsWithout(string noticed, Suspect suspect)
    {
        var other = Anew();
        other._noticed.AddRange(_noticed.Where(n => n.Id != noticed));
        other._entries.AddRange(_entries);
        return other.Suspects.FirstOrDefault(s => s.Suspect == suspect)?.Odds ?? 0;
    }

    /// <summary>The checks that a result from the bench has answered, by their ids.</summary>
    private IEnumerable<string> AskedOnTheBench() => _noticed.Any(n => n.What.Kind.InsteadOf is not null)
        ? _allChecks.Values
            .Where(c => _noticed.Any(n => n.What.Kind.InsteadOf == c.Subject && n.What.About == c.Probe.About))
            .Select(c => c.Id)
        : [];

    private NoticedEvidence Evidence() => _evidence ??=
        NoticedEvidence.Of(_forecaster.Simulator, Complaint, _unnoticed, _noticed.Select(n => n.What));

    private void ForgetWeighed()
    {
        _weighed = null;
        _evidence = null;
        _assessment = null;
        _oddsAfter.Clear();
    }
}
