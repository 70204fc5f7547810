using Halfsplit.Diagnosis.Planning.Sequencing;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>
/// The optimum by trying everything that was not done yet, useless actions included: no bounds, no memory, no merging,
/// and none of the exact solver's code. Weights are not scaled to one, so values are costs times the odds of coming here.
/// </summary>
internal static class PlainEnumeration
{
    public static double Optimum(RepairProblem problem) =>
        Least(problem, problem.Costs.Start, problem.Weights, new bool[problem.ActionCount]);

    private static double Least(RepairProblem problem, int position, double[] weights, bool[] done)
    {
        var mass = weights.Sum();
        if (mass == 0)
            return 0;
        var best = mass * problem.HandOver;
        for (var action = 0; action < done.Length; action++)
        {
            if (done[action])
                continue;
            done[action] = true;
            var after = problem.Costs.After(position, action);
            var value = mass * problem.Costs.Cost(position, action);
            if (action < problem.Checks.Length)
            {
                var check = problem.Checks[action];
                for (var o = 0; o < check.OutcomeCount && value < best; o++)
                    value += Least(problem, after, [.. weights.Select((w, s) => w * check.Odds[(s * check.OutcomeCount) + o])], done);
            }
            else
            {
                var repair = problem.Repairs[action - problem.Checks.Length];
                var left = weights.Select((w, s) => w * (1 - repair.Cures[s])).ToArray();
                value += (left.Sum() * repair.WrongCost) + (value < best ? Least(problem, after, left, done) : 0);
            }

            best = Math.Min(best, value);
            done[action] = false;
        }

        return best;
    }
}
