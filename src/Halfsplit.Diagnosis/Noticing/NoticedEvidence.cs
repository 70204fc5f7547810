using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;

namespace Halfsplit.Diagnosis.Noticing;

/// <summary>
/// What was noticed, as evidence on every car: how likely each thing would have been told by somebody with this car. The
/// order in which things were said does not matter, and saying one twice adds nothing.
/// </summary>
/// <remarks>
/// "None of these" is moved by no single thing: it gets what all suspects get on average. Things that no one suspect
/// explains together raise it a little.
/// </remarks>
internal sealed class NoticedEvidence
{
    private readonly CircuitSimulator _simulator;
    private readonly Signs _signs;
    private readonly double[] _none;

    /// <summary>All things together under each single fault, by its index.</summary>
    private readonly double[] _singles;

    private NoticedEvidence(CircuitSimulator simulator, Signs signs, ImmutableArray<Noticed> things, int cars)
    {
        _simulator = simulator;
        _signs = signs;
        Things = things;
        _none = new double[things.Length];
        _singles = new double[cars];
    }

    /// <summary>Each once, in one order.</summary>
    public ImmutableArray<Noticed> Things { get; }

    /// <param name="space">Single faults, before anything was noticed; their weights give what is average.</param>
    /// <param name="things">What was noticed, in any order.</param>
    public static NoticedEvidence Of(
        CircuitSimulator simulator, Complaint complaint, HypothesisSpace space, IEnumerable<Noticed> things)
    {
        var sorted = things.Distinct().Order().ToImmutableArray();
        var evidence = new NoticedEvidence(simulator, new Signs(simulator, complaint), sorted, space.Hypotheses.Length);
        var total = 0.0;
        var logs = new double[sorted.Length];
        var sums = new double[sorted.Length];
        foreach (var car in space.Hypotheses)
        {
            if (car.IsNone)
            {
                continue;
            }

            var weight = Math.Exp(car.LogPrior);
            total += weight;
            evidence.LogLikelihoods(space.Suspects[car.Suspect], car, logs);
            for (var i = 0; i < logs.Length; i++)
            {
                sums[i] += weight * Math.Exp(logs[i]);
                evidence._singles[car.Index] += logs[i];
            }
        }

        for (var i = 0; i < sums.Length; i++)
        {
            evidence._none[i] = total > 0 ? Math.Log(sums[i] / total) : 0;
        }

        foreach (var car in space.Hypotheses.Where(c => c.IsNone))
        {
            evidence._singles[car.Index] = evidence._none.Sum();
        }

        return evidence;
    }

    /// <summary>The logarithm of the likelihood of each thing under one car, in the order of <see cref="Things"/>.</summary>
    public void LogLikelihoods(Suspect suspect, Hypothesis car, Span<double> logs)
    {
        if (car.IsNone)
        {
            _none.CopyTo(logs);
            return;
        }

        var seen = new CarSeen(_simulator, suspect.Modes, car.Faults, car.ThresholdFactor);
        for (var i = 0; i < Things.Length; i++)
        {
            logs[i] = IsIncluded(Things[i]) ? 0 : LogLikelihood(Things[i], seen);
        }
    }

    /// <summary>All of them together.</summary>
    public double LogLikelihood(Suspect suspect, Hypothesis car)
    {
        if (car.Faults.Length < 2)
        {
            return _singles[car.Index];
        }

        Span<double> logs = stackalloc double[Things.Length];
        LogLikelihoods(suspect, car, logs);
        var sum = 0.0;
        foreach (var log in logs)
        {
            sum += log;
        }

        return sum;
    }

    /// <summary>True where a stronger statement about the same thing says it already.</summary>
    public bool IsIncluded(Noticed what) => Things.Any(other =>
        other.Kind.Includes == what.Kind.Name && (what.About is null || other.About is null || other.About == what.About));

    private double LogLikelihood(Noticed what, CarSeen car)
    {
        var so = Math.Clamp(_signs.Of(what, car), 0, 1);
        return Math.Log((what.Kind.IfSo * so) + (what.Kind.Otherwise * (1 - so)));
    }
}
