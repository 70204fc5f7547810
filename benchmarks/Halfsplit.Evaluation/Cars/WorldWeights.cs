using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Jobs.Practice;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Evaluation.Cars;

/// <summary>
/// How often things fail in the world of the evaluation, which is not how often the players think they do. One world for
/// all cars of a run, or its errors would average out.
/// </summary>
public static class WorldWeights
{
    /// <summary>Spread of the logarithm of the factor by which the world's weight of a kind of fault is off.</summary>
    private const double KindSpread = 0.35;

    /// <summary>Further spread from part to part: this car's fuse box leaks, that one's does not.</summary>
    private const double PartSpread = 0.25;

    /// <summary>One weight for each mode.</summary>
    public static double[] Of(Circuit circuit, IReadOnlyList<FaultMode> modes, FaultSource source)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(modes);
        if (source == FaultSource.Flat)
        {
            var ways = modes.GroupBy(m => m.Owner, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
            return [.. modes.Select(m => 1.0 / ways[m.Owner])];
        }

        return [.. modes.Select(m => FailureWeights.Of(m, FaultPlace.EnvironmentOf(circuit, m))
            * new SeededChance(Seeds.Of("kind", m.Kind, m.Mode)).Factor(KindSpread)
            * new SeededChance(Seeds.Of("part", circuit.Title, m.Part, m.Mode)).Factor(PartSpread))];
    }
}
