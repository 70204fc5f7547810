using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>
/// Value of information one step ahead (Heckerman, Breese and Rommelse 1995): the check after which
/// <see cref="RepairOrder"/> alone would cost least, if that is less than going without it.
/// </summary>
internal static class OneStepWorth
{
    /// <summary>The policy.</summary>
    public static int Choose(RepairProblem problem, RepairStanding standing)
    {
        var (best, least) = RepairOrder.Plan(problem, standing.Position, standing.Weights, standing.Failed);
        Span<double> shown = stackalloc double[standing.Weights.Length];
        for (var check = 0; check < problem.Checks.Length; check++)
        {
            if (standing.Shown[check] >= 0)
                continue;
            var (count, odds) = (problem.Checks[check].OutcomeCount, problem.Checks[check].Odds);
            var after = problem.Costs.After(standing.Position, check);
            var value = problem.Costs.Cost(standing.Position, check);
            for (var outcome = 0; outcome < count; outcome++)
            {
                for (var s = 0; s < shown.Length; s++)
                    shown[s] = standing.Weights[s] * odds[(s * count) + outcome];
                value += RepairOrder.Plan(problem, after, shown, standing.Failed).Value;
            }

            if (value < least)
                (best, least) = (check, value);
        }

        return best;
    }
}
