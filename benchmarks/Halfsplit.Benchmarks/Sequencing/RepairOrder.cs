using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>
/// No checks: repairs in the order of probability per cost, recalculated after each failure, until handing over is cheaper.
/// </summary>
internal static class RepairOrder
{
    /// <summary>The policy.</summary>
    public static int Choose(RepairProblem problem, RepairStanding standing) =>
        Plan(problem, standing.Position, standing.Weights, standing.Failed).Action;

    /// <summary>Its first action and its expected cost, for odds that need not add up to one.</summary>
    public static (int Action, double Value) Plan(RepairProblem problem, int position, ReadOnlySpan<double> weights, bool[] failed)
    {
        var left = weights.ToArray();
        var tried = (bool[])failed.Clone();
        var steps = new List<(int Repair, double Cost, double Before, double After)>();
        var mass = left.Sum();
        while (mass > 0 && Next(problem, position, left, tried) is >= 0 and var repair)
        {
            var action = problem.Checks.Length + repair;
            var before = mass;
            mass = 0;
            for (var s = 0; s < left.Length; s++)
            {
                left[s] *= 1 - problem.Repairs[repair].Cures[s];
                mass += left[s];
            }

            steps.Add((repair, problem.Costs.Cost(position, action), before, mass));
            tried[repair] = true;
            position = problem.Costs.After(position, action);
        }

        var value = mass > 0 ? mass * problem.HandOver : 0;
        var first = RepairStanding.HandOver;
        for (var i = steps.Count - 1; i >= 0; i--)
        {
            var (repair, cost, before, after) = steps[i];
            var go = (before * cost) + (after * problem.Repairs[repair].WrongCost) + value;
            var stop = before * problem.HandOver;
            first = go <= stop ? problem.Checks.Length + repair : RepairStanding.HandOver;
            value = Math.Min(go, stop);
        }

        return (first, value);
    }

    /// <summary>The repair with the most probability of a cure per cost, a failure's cost included; −1 if none may cure.</summary>
    private static int Next(RepairProblem problem, int position, double[] weights, bool[] tried)
    {
        var (best, most) = (-1, 0.0);
        for (var repair = 0; repair < tried.Length; repair++)
        {
            var cured = 0.0;
            for (var s = 0; s < weights.Length; s++)
                cured += weights[s] * problem.Repairs[repair].Cures[s];
            var score = cured / (problem.Costs.Cost(position, problem.Checks.Length + repair) + problem.Repairs[repair].WrongCost);
            if (!tried[repair] && score > most)
                (best, most) = (repair, score);
        }

        return best;
    }
}
