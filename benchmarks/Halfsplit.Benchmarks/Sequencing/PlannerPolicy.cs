using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>The planner that Halfsplit ships, asked anew at every step.</summary>
/// <param name="nodes">Its budget of nodes for one choice.</param>
/// <param name="slack">How many times what is only estimated a way may be dearer and still be preferred for the check that it begins with.</param>
internal sealed class PlannerPolicy(int nodes, double slack)
{
    /// <summary>The policy.</summary>
    public int Choose(RepairProblem problem, RepairStanding standing)
    {
        var used = 0UL;
        for (var check = 0; check < standing.Shown.Length; check++)
        {
            used |= standing.Shown[check] >= 0 ? 1UL << check : 0;
        }

        for (var repair = 0; repair < standing.Failed.Length; repair++)
        {
            used |= standing.Failed[repair] ? 1UL << (problem.Checks.Length + repair) : 0;
        }

        return new LookAhead(problem, nodes, slack).Rank([.. standing.Weights], standing.Position, used)[0].Action;
    }
}
