namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>
/// A <see cref="RepairProblem"/> as a decision graph over beliefs. Only what can tell or cure something is a choice, and
/// nothing twice; so it has no cycles.
/// </summary>
internal sealed class RepairGraph : IDecisionGraph<Belief>
{
    private readonly RepairProblem _problem;
    private readonly KnownStateCosts _known;
    private readonly double[] _weights;

    public RepairGraph(RepairProblem problem)
    {
        _problem = problem;
        Space = new BeliefSpace(problem);
        Routes = new RouteCosts(problem);
        _known = new KnownStateCosts(problem, Routes);
        _weights = new double[problem.StateCount];
    }

    public BeliefSpace Space { get; }

    public RouteCosts Routes { get; }

    public double EndCost(Belief state) => _problem.HandOver;

    public double LowerBound(Belief state)
    {
        Span<double> weights = stackalloc double[_problem.StateCount];
        Space.Weigh(state, weights);
        return Weighed(weights, _known.Of(state.Failed, state.Position));
    }

    public void AddChoices(Belief state, List<DecisionChoice<Belief>> choices)
    {
        Space.Weigh(state, _weights);
        for (var check = 0; check < _problem.Checks.Length; check++)
        {
            if (!Space.TellsNothing(state.Alive, check) && Space.OutcomeOf(state, check) < 0)
                choices.Add(Check(state, check));
        }

        for (var repair = 0; repair < _problem.Repairs.Length; repair++)
        {
            if (Space.MayCure(state.Alive, repair) && !BeliefSpace.HasFailed(state, repair))
                choices.Add(Repair(state, repair));
        }
    }

    private DecisionChoice<Belief> Check(in Belief state, int check)
    {
        var (count, odds) = (_problem.Checks[check].OutcomeCount, _problem.Checks[check].Odds);
        var after = _problem.Costs.After(state.Position, check);
        var outcomes = new List<DecisionOutcome<Belief>>(count);
        Span<double> shown = stackalloc double[_weights.Length];
        for (var outcome = 0; outcome < count; outcome++)
        {
            var probability = 0.0;
            for (var s = 0; s < shown.Length; s++)
            {
                shown[s] = _weights[s] * odds[(s * count) + outcome];
                probability += shown[s];
            }

            if (probability > 0)
                outcomes.Add(Next(Space.Shown(state, check, outcome, after), shown, probability, 0));
        }

        return DecisionChoice<Belief>.Of(check, _problem.Costs.Cost(state.Position, check), [.. outcomes]);
    }

    private DecisionChoice<Belief> Repair(in Belief state, int repair)
    {
        var action = _problem.Checks.Length + repair;
        Span<double> left = stackalloc double[_weights.Length];
        var probability = 0.0;
        for (var s = 0; s < left.Length; s++)
        {
            left[s] = _weights[s] * (1 - _problem.Repairs[repair].Cures[s]);
            probability += left[s];
        }

        DecisionOutcome<Belief>[] outcomes = probability > 0
            ? [Next(Space.NotCured(state, repair, _problem.Costs.After(state.Position, action)), left, probability, _problem.Repairs[repair].WrongCost)]
            : [];
        return DecisionChoice<Belief>.Of(action, _problem.Costs.Cost(state.Position, action), outcomes);
    }

    private DecisionOutcome<Belief> Next(Belief next, ReadOnlySpan<double> weights, double probability, double cost)
    {
        var reduced = Space.Reduced(next);
        return new DecisionOutcome<Belief>(
            probability, cost, reduced, Weighed(weights, _known.Of(reduced.Failed, reduced.Position)) / probability);
    }

    private static double Weighed(ReadOnlySpan<double> weights, double[] costs)
    {
        var sum = 0.0;
        for (var s = 0; s < weights.Length; s++)
        {
            // A state that is out may be one without a cure, at an infinite cost.
            if (weights[s] > 0)
                sum += weights[s] * costs[s];
        }

        return sum;
    }
}
