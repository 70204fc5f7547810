using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>
/// One-step roll-out (Tu and Pattipati 2003): the action after which another policy would cost least, its whole tree being
/// walked. Remembers the problem it was first asked about.
/// </summary>
internal sealed class RollOut(RepairPolicy policy)
{
    private PolicyValue? _after;

    /// <summary>The policy.</summary>
    public int Choose(RepairProblem problem, RepairStanding standing)
    {
        _after ??= new PolicyValue(problem, policy);
        var (best, least) = (RepairStanding.HandOver, problem.HandOver);
        for (var action = 0; action < problem.ActionCount; action++)
        {
            var check = action < problem.Checks.Length;
            if (check ? standing.Shown[action] >= 0 : standing.Failed[action - problem.Checks.Length])
                continue;
            if (_after.Of(standing, action) is var value && value < least)
                (best, least) = (action, value);
        }

        return best;
    }
}
