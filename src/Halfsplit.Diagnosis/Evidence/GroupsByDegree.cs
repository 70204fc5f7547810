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
    /// <summary>The outer parts are looked at where their mean lies, in standard deviations of the cell.</summary>
    private const double OuterMean = 1.25;

    /// <summary>Odds of each answer, the degree unknown inside its cell.</summary>
    public ImmutableArray<double> Mean => Given(PartsOfCell.OfNumbers(0, 1));

    /// <summary>Odds of each answer where readings tell of the degree.</summary>
    internal ImmutableArray<double> Given(PartsOfCell parts) =>
        [.. Low.Select((low, i) => (parts.Low * low) + (parts.Middle * Middle[i]) + (parts.High * High[i]))];

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
}
