using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>
/// The hypotheses worth planning with: the likeliest cars, thinned to a bounded number, each with its share of the odds
/// and the class it belongs to. Cars that the same repair mends are of one class: telling them apart is worth nothing.
/// </summary>
public sealed class Partition
{
    /// <summary>Odds below which a car does not shape the plan.</summary>
    private const double LeastOdds = 1e-4;

    private Partition(Hypothesis[] cars, double[] weights, int[] classes, int classCount)
    {
        Cars = cars;
        Weights = weights;
        Classes = classes;
        ClassCount = classCount;
        Entropy = EntropyOf(ClassWeights());
    }

    public IReadOnlyList<Hypothesis> Cars { get; }

    /// <summary>Add up to one.</summary>
    public IReadOnlyList<double> Weights { get; }

    public IReadOnlyList<int> Classes { get; }

    public int ClassCount { get; }

    /// <summary>Bits still missing to know the class.</summary>
    public double Entropy { get; }

    /// <summary>Thins the posterior.</summary>
    /// <param name="most">How many cars at most.</param>
    public static Partition Of(Posterior posterior, Func<Suspect, string> classOf, int most)
    {
        ArgumentNullException.ThrowIfNull(posterior);
        ArgumentNullException.ThrowIfNull(classOf);
        var space = posterior.Space;
        var alive = space.Hypotheses.Where(h => posterior.Odds[h.Index] > 0 && posterior.SuspectOdds[h.Suspect] >= LeastOdds).ToList();
        var perSuspect = Math.Max(1, most / Math.Max(1, alive.Select(h => h.Suspect).Distinct().Count()));
        var cars = new List<Hypothesis>();
        var weights = new List<double>();
        foreach (var group in alive.GroupBy(h => h.Suspect))
        {
            var chosen = group.OrderByDescending(h => posterior.Odds[h.Index]).ThenBy(h => h.Index).Take(perSuspect).ToList();
            var scale = posterior.SuspectOdds[group.Key] / chosen.Sum(h => posterior.Odds[h.Index]);
            foreach (var car in chosen.OrderBy(h => h.Index))
            {
                cars.Add(car);
                weights.Add(posterior.Odds[car.Index] * scale);
            }
        }

        var total = weights.Sum();
        var names = new Dictionary<string, int>(StringComparer.Ordinal);
        var classes = cars.Select(c =>
        {
            var name = classOf(space.Suspects[c.Suspect]);
            return names.TryGetValue(name, out var known) ? known : names[name] = names.Count;
        }).ToArray();
        return new Partition([.. cars], [.. weights.Select(w => w / total)], classes, names.Count);
    }

    /// <summary>
    /// A smaller partition that stands for this one: cars picked at even steps of the summed odds, so that no part of
    /// the circuit is left out. For a first look at many checks.
    /// </summary>
    /// <param name="picks">How many picks; the same car may be picked several times and then weighs more.</param>
    public Partition Thin(int picks)
    {
        if (picks >= Cars.Count)
        {
            return this;
        }

        var cars = new List<Hypothesis>();
        var weights = new List<double>();
        var classes = new List<int>();
        var sum = 0.0;
        var next = 0.5 / picks;
        for (var i = 0; i < Cars.Count; i++)
        {
            sum += Weights[i];
            var hits = 0;
            for (; next < sum; next += 1.0 / picks)
            {
                hits++;
            }

            if (hits > 0)
            {
                cars.Add(Cars[i]);
                weights.Add((double)hits / picks);
                classes.Add(Classes[i]);
            }
        }

        return new Partition([.. cars], [.. weights], [.. classes], ClassCount);
    }

    internal static double EntropyOf(ReadOnlySpan<double> weights)
    {
        var total = 0.0;
        foreach (var weight in weights)
        {
            total += weight;
        }

        var entropy = 0.0;
        foreach (var weight in weights)
        {
            if (weight > 0 && total > 0)
            {
                entropy -= weight / total * Math.Log2(weight / total);
            }
        }

        return entropy;
    }

    private double[] ClassWeights()
    {
        var sums = new double[ClassCount];
        for (var i = 0; i < Weights.Count; i++)
        {
            sums[Classes[i]] += Weights[i];
        }

        return sums;
    }
}
