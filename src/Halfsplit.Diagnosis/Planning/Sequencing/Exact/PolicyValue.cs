namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>The expected cost of a policy on a <see cref="RepairProblem"/>: its whole tree is walked, nothing is drawn.</summary>
internal sealed class PolicyValue
{
    private readonly RepairProblem _problem;
    private readonly RepairPolicy _policy;
    private readonly BeliefSpace _space;
    private readonly Dictionary<Belief, double> _known = [];
    private readonly HashSet<Belief> _open = [];

    public PolicyValue(RepairProblem problem, RepairPolicy policy)
    {
        _problem = problem;
        _policy = policy;
        _space = new BeliefSpace(problem);
    }

    /// <summary>Expected cost from the start to the end; infinite if it hands over where that is not allowed.</summary>
    /// <exception cref="InvalidOperationException">The policy comes back to where it was and so never ends.</exception>
    public static double Of(RepairProblem problem, RepairPolicy policy)
    {
        var walk = new PolicyValue(problem, policy);
        return walk.Of(walk._space.Start);
    }

    /// <summary>Expected cost of an action at some point, the policy being followed after it.</summary>
    public double Of(RepairStanding standing, int action)
    {
        var belief = _space.Of(standing);
        var weights = new double[_problem.StateCount];
        _space.Weigh(belief, weights);
        return Act(belief, weights, action);
    }

    private double Of(in Belief belief)
    {
        if (_known.TryGetValue(belief, out var known))
            return known;
        if (!_open.Add(belief))
            throw new InvalidOperationException("The policy comes back to where it was.");
        var weights = new double[_problem.StateCount];
        _space.Weigh(belief, weights);
        var action = _policy(_problem, Standing(belief, [.. weights]));
        var value = Act(belief, weights, action);
        _open.Remove(belief);
        _known.Add(belief, value);
        return value;
    }

    private double Act(in Belief belief, double[] weights, int action) =>
        action == RepairStanding.HandOver ? _problem.HandOver
        : action < _problem.Checks.Length ? Check(belief, weights, action)
        : Repair(belief, weights, action - _problem.Checks.Length);

    private double Check(in Belief belief, double[] weights, int check)
    {
        var sum = _problem.Costs.Cost(belief.Position, check);
        var after = _problem.Costs.After(belief.Position, check);
        if (_space.OutcomeOf(belief, check) >= 0)
            return sum + Of(belief with { Position = after });
        var (count, odds) = (_problem.Checks[check].OutcomeCount, _problem.Checks[check].Odds);
        for (var outcome = 0; outcome < count; outcome++)
        {
            var probability = 0.0;
            for (var s = 0; s < weights.Length; s++)
                probability += weights[s] * odds[(s * count) + outcome];
            if (probability > 0)
                sum += probability * Of(_space.Shown(belief, check, outcome, after));
        }

        return sum;
    }

    private double Repair(in Belief belief, double[] weights, int repair)
    {
        var action = _problem.Checks.Length + repair;
        var (cures, wrong) = (_problem.Repairs[repair].Cures, _problem.Repairs[repair].WrongCost);
        var sum = _problem.Costs.Cost(belief.Position, action);
        var after = _problem.Costs.After(belief.Position, action);
        if (BeliefSpace.HasFailed(belief, repair))
            return sum + wrong + Of(belief with { Position = after });
        var probability = 0.0;
        for (var s = 0; s < weights.Length; s++)
            probability += weights[s] * (1 - cures[s]);
        return probability > 0 ? sum + (probability * (wrong + Of(_space.NotCured(belief, repair, after)))) : sum;
    }

    private RepairStanding Standing(in Belief belief, double[] weights)
    {
        var shown = new int[_problem.Checks.Length];
        for (var check = 0; check < shown.Length; check++)
            shown[check] = _space.OutcomeOf(belief, check);
        var failed = new bool[_problem.Repairs.Length];
        for (var repair = 0; repair < failed.Length; repair++)
            failed[repair] = BeliefSpace.HasFailed(belief, repair);
        return new RepairStanding(belief.Position, weights, shown, failed);
    }
}
