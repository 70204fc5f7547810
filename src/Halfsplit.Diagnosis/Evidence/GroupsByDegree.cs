using System.Collections.Immutable;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// Odds of each answer in words in the lower, the middle and the upper part of a cell of severity: a lamp that glows at its lower
/// end and is dark at its upper. Two such looks hang on the same degree, so they are weighed together, part by part.
/// </summary>
/// <param name="Low">Of the lower part.</param>
/// <param name="Middle">Of the middle.</param>
/// <param name="High">Of the upper part.</param>
public sealed record GroupsByDegree(ImmutableArray<double> Low, ImmutableArray<double> Middle, ImmutableArray<double> High)
{
    /// <summary>The middle part ends here, in standard deviations of the cell; the outer ones are looked at where their mean lies.</summary>
    private const double MiddleEnds = 0.6, OuterMean = 1.25;

    /// <summary>Odds of each answer, the degree unknown inside its cell.</summary>
    public ImmutableArray<double> Mean => Given(0, 1);

    /// <summary>Odds of each answer where numbers tell of the degree.</summary>
    /// <param name="mean">Where they put it, in standard deviations of its cell.</param>
    /// <param name="variance">How much of the cell's variance they left.</param>
    internal ImmutableArray<double> Given(double mean, double variance)
    {
        var shares = Shares(mean, variance);
        return [.. Low.Select((low, i) => (shares.Low * low) + (shares.Middle * Middle[i]) + (shares.High * High[i]))];
    }

    /// <summary>The faults of a car in the lower and in the upper part of its cell; null where its severity has none.</summary>
    internal static (ImmutableArray<Fault> Low, ImmutableArray<Fault> High)? Ends(CircuitNetwork network, Hypothesis car) =>
        Moved(network, car, -OuterMean) is { } low && Moved(network, car, OuterMean) is { } high ? (low, high) : null;

    /// <summary>The faults of a car so many standard deviations up its cell; null where its severity has none.</summary>
    internal static ImmutableArray<Fault>? Moved(CircuitNetwork network, Hypothesis car, double deviations)
    {
        if (car.Severity is not { } cell || car.Faults is not [{ Severity: { } severity } fault])
        {
            return null;
        }

        var (branch, spread) = cell.Branches[0];
        var added = fault.Mode == FaultModes.Shorted ? 0 : network.Branches[branch].Ohms;
        var moved = ((added + severity) * Math.Exp(deviations * spread)) - added;
        return moved > 0 ? [fault with { Severity = moved }] : null;
    }

    /// <summary>
    /// Logarithm of the probability of all such words at once.
    /// </summary>
    /// <param name="mean">Where numbers put the degree, in standard deviations of its cell.</param>
    /// <param name="variance">How much of the cell's variance they left.</param>
    internal static double LogMix(double mean, double variance, double logLow, double logMiddle, double logHigh)
    {
        var shares = Shares(mean, variance);
        return JointLikelihood.LogAdd(
            JointLikelihood.LogAdd(Math.Log(shares.Low) + logLow, Math.Log(shares.Middle) + logMiddle), Math.Log(shares.High) + logHigh);
    }

    private static (double Low, double Middle, double High) Shares(double mean, double variance)
    {
        // Never quite sure of a part: a cell's edges are soft, and neighbouring cells meet.
        const double Least = 0.02;
        var spread = Math.Sqrt(Math.Max(variance, 0.01));
        var low = Math.Max(Least, Normal.Below((-MiddleEnds - mean) / spread));
        var high = Math.Max(Least, Normal.Below((mean - MiddleEnds) / spread));
        var middle = Math.Max(Least, 1 - low - high);
        var sum = low + middle + high;
        return (low / sum, middle / sum, high / sum);
    }
}
