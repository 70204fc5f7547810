using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>
/// The check with the most information about the needed repair per cost, one step ahead, until one repair is likely enough
/// or nothing tells any more; then <see cref="RepairOrder"/>.
/// </summary>
/// <param name="Enough">Odds of the likeliest repair above which no check is done; 1 isolates it fully.</param>
internal sealed record OneStepInformation(double Enough)
{
    /// <summary>Bits below which a check tells nothing; above what rounding leaves.</summary>
    private const double LeastBits = 1e-9;

    /// <summary>The policy.</summary>
    public int Choose(RepairProblem problem, RepairStanding standing)
    {
        var classes = Classes(problem, standing);
        var check = Likeliest(problem, standing.Weights, classes) < Enough ? Best(problem, standing, classes) : -1;
        return check >= 0 ? check : RepairOrder.Choose(problem, standing);
    }

    private static int Best(RepairProblem problem, RepairStanding standing, int[] classes)
    {
        var (best, most) = (-1, 0.0);
        for (var check = 0; check < problem.Checks.Length; check++)
        {
            if (standing.Shown[check] >= 0)
                continue;
            var bits = Bits(problem, standing.Weights, classes, check);
            var score = bits / problem.Costs.Cost(standing.Position, check);
            if (bits > LeastBits && score > most)
                (best, most) = (check, score);
        }

        return best;
    }

    /// <summary>Expected information of a check about the class, in bits.</summary>
    public static double Bits(RepairProblem problem, double[] weights, int[] classes, int check)
    {
        var (count, odds) = (problem.Checks[check].OutcomeCount, problem.Checks[check].Odds);
        var byClass = new double[problem.Repairs.Length + 1];
        for (var s = 0; s < weights.Length; s++)
            byClass[classes[s]] += weights[s];
        var bits = Partition.EntropyOf(byClass);
        for (var outcome = 0; outcome < count; outcome++)
        {
            Array.Clear(byClass);
            var probability = 0.0;
            for (var s = 0; s < weights.Length; s++)
            {
                byClass[classes[s]] += weights[s] * odds[(s * count) + outcome];
                probability += weights[s] * odds[(s * count) + outcome];
            }

            bits -= probability * Partition.EntropyOf(byClass);
        }

        return bits;
    }

    /// <summary>The repair each state asks for: the one with the most cure per cost among those not tried; the last number if none.</summary>
    private static int[] Classes(RepairProblem problem, RepairStanding standing)
    {
        var classes = new int[problem.StateCount];
        for (var s = 0; s < classes.Length; s++)
        {
            classes[s] = problem.Repairs.Length;
            var most = 0.0;
            for (var repair = 0; repair < problem.Repairs.Length; repair++)
            {
                var score = problem.Repairs[repair].Cures[s]
                    / problem.Costs.Cost(standing.Position, problem.Checks.Length + repair);
                if (!standing.Failed[repair] && score > most)
                    (classes[s], most) = (repair, score);
            }
        }

        return classes;
    }

    private static double Likeliest(RepairProblem problem, double[] weights, int[] classes)
    {
        var byClass = new double[problem.Repairs.Length + 1];
        for (var s = 0; s < weights.Length; s++)
            byClass[classes[s]] += weights[s];
        return byClass.Max();
    }
}
