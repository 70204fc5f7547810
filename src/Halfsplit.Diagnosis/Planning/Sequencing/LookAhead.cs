namespace Halfsplit.Diagnosis.Planning.Sequencing;

/// <summary>An action with what it is expected to cost in all, down to the end of the work.</summary>
/// <param name="Action">Index of a check or repair; <see cref="LookAhead.HandOver"/> for ending here.</param>
/// <param name="Value">Expected cost, minutes and prices, this action included.</param>
internal readonly record struct PlannedAction(int Action, PlanValue Value);

/// <summary>
/// Chooses the next action of a <see cref="RepairProblem"/>. A base policy (the check that tells most about the repair
/// per cost, or the repairs in the order of odds per cost, whichever comes out cheaper) says what any situation is
/// worth; each action is tried once with the base policy to follow (roll-out), branches of little weight only estimated, the best
/// ones again in finer grain, then with a choice before the base policy takes over, and so on, until the budget of nodes is spent.
/// There is an answer from the start. Deterministic: budgets count nodes, sums run in a fixed order, and ties go to
/// the lower index. (Roll-out over information per cost: F. Tu and K. R. Pattipati, "Rollout strategies for sequential
/// fault diagnosis", 2003.)
/// </summary>
internal sealed class LookAhead
{
    /// <summary>The action of ending the work without a cure.</summary>
    public const int HandOver = -1;

    /// <summary>Share of the odds below which a branch is not looked into, from the first rough pass to the last.</summary>
    private static readonly double[] Grains = [0.3, 0.1, 0.03];

    /// <summary>Actions kept for the next finer pass.</summary>
    private const int KeptByGrain = 10;

    /// <summary>Actions looked into with a choice to follow.</summary>
    private const int KeptByChoice = 5;

    /// <summary>Checks and repairs tried where a choice follows.</summary>
    private const int ChecksPerChoice = 4, RepairsPerChoice = 2;

    /// <summary>Most choices before the base policy takes over.</summary>
    private const int MostChoices = 6;

    private readonly RepairProblem _problem;
    private readonly double _slack;
    private readonly BasePolicy _base;
    private readonly NodeBudget _budget;

    /// <param name="problem">At most 64 checks and repairs.</param>
    /// <param name="nodes">Budget of nodes; at least one per action is spent whatever it says.</param>
    /// <param name="slack">
    /// How many times what is only estimated of the cheapest way another's cost may lie above it, and its check still come first because
    /// it tells more bits per cost: such differences are none.
    /// </param>
    public LookAhead(RepairProblem problem, int nodes, double slack = 0)
    {
        ArgumentNullException.ThrowIfNull(problem);
        if (problem.ActionCount > 64)
        {
            throw new ArgumentException("At most 64 checks and repairs can be planned with.", nameof(problem));
        }

        _problem = problem;
        _slack = slack;
        _budget = new NodeBudget(nodes);
        _base = new BasePolicy(problem, _budget);
    }

    /// <summary>Nodes spent so far.</summary>
    public int NodesSpent => _budget.Spent;

    /// <summary>
    /// The actions looked into, cheapest in expectation first, but a check that tells more per cost before those that are not clearly cheaper. Never
    /// empty.
    /// </summary>
    /// <param name="weights">Odds of the states; any positive total.</param>
    /// <param name="position">Where things stand.</param>
    /// <param name="used">Bits of the checks and repairs that are no longer open.</param>
    public IReadOnlyList<PlannedAction> Rank(ReadOnlySpan<double> weights, int position, ulong used)
    {
        var total = StateWeights.Total(weights);
        var node = new Node([.. weights], position, used);
        var candidates = _base.Candidates(node.Weights, position, used, _problem.Checks.Length, _problem.Repairs.Length).ToList();
        var ranked = candidates.ConvertAll(action => new PlannedAction(action, ValueOf(node, action, 0, Grains[0] * total)));
        ranked.Add(new PlannedAction(HandOver, new PlanValue(_problem.HandOver * total, 0, 0)));
        Sort(ranked);
        var likeliest = _base.Likeliest(weights, used);
        foreach (var grain in Grains.Skip(1))
        {
            ranked = Refined(ranked, likeliest, node, grain * total);
        }

        for (var choices = 1; choices <= MostChoices && !_budget.IsSpent; choices++)
        {
            Improve(ranked, node, choices, Grains[^1] * total);
        }

        Prefer(ranked, candidates);
        return [.. ranked.Select(r => r with { Value = r.Value * (1 / total) })];
    }

    /// <summary>
    /// The best actions looked into in finer grain, as far as the budget goes, and no others: estimates of different grain
    /// can't be compared. With them the repair that is blamed most.
    /// </summary>
    private List<PlannedAction> Refined(List<PlannedAction> ranked, int likeliest, in Node node, double mass)
    {
        if (_budget.IsSpent)
        {
            return ranked;
        }

        var refined = new List<PlannedAction>();
        foreach (var action in ranked)
        {
            if (action.Action == HandOver)
            {
                refined.Add(action);
            }
            else if (action.Action == likeliest || (refined.Count < KeptByGrain && !_budget.IsSpent))
            {
                refined.Add(action with { Value = ValueOf(node, action.Action, 0, mass) });
            }
        }

        Sort(refined);
        return refined;
    }

    /// <summary>Looks at the best actions with choices to follow; what is found can only be cheaper.</summary>
    private void Improve(List<PlannedAction> ranked, in Node node, int choices, double mass)
    {
        for (var i = 0; i < Math.Min(ranked.Count, KeptByChoice) && !_budget.IsSpent; i++)
        {
            if (ranked[i].Action == HandOver)
            {
                continue;
            }

            var deeper = ValueOf(node, ranked[i].Action, choices, mass);
            if (deeper.Cost < ranked[i].Value.Cost)
            {
                ranked[i] = ranked[i] with { Value = deeper };
            }
        }

        Sort(ranked);
    }

    /// <summary>Where a check comes first, the one that tells most per cost of those that the estimates can't part from it.</summary>
    private void Prefer(List<PlannedAction> ranked, List<int> byTelling)
    {
        if (!IsCheck(ranked[0]))
        {
            return;
        }

        var most = ranked[0].Value.Cost + (_slack * ranked[0].Value.Estimated);
        var preferred = ranked.Where(r => IsCheck(r) && r.Value.Cost <= most).MinBy(r => byTelling.IndexOf(r.Action));
        ranked.Remove(preferred);
        ranked.Insert(0, preferred);
    }

    private bool IsCheck(PlannedAction planned) => planned.Action != HandOver && planned.Action < _problem.Checks.Length;

    /// <summary>What an action costs down to the end, weighted, when so many choices and then the base policy follow.</summary>
    private PlanValue ValueOf(in Node node, int action, int choices, double mass)
    {
        var costs = _problem.Costs;
        var value = PlanValue.Of(costs, node.Position, action) * StateWeights.Total(node.Weights);
        var position = costs.After(node.Position, action);
        var used = node.Used | (1UL << action);
        var next = new double[node.Weights.Length];
        if (action >= _problem.Checks.Length)
        {
            var repair = _problem.Repairs[action - _problem.Checks.Length];
            var failed = StateWeights.AfterFailure(node.Weights, repair, next);
            return failed > 0
                ? value + new PlanValue(repair.WrongCost * failed, 0, 0) + Best(new Node(next, position, used), choices, mass)
                : value;
        }

        var check = _problem.Checks[action];
        for (var outcome = 0; outcome < check.OutcomeCount; outcome++)
        {
            if (StateWeights.After(node.Weights, check, outcome, next) > 0)
            {
                value += Best(new Node(next, position, used), choices, mass);
            }
        }

        return value;
    }

    private PlanValue Best(in Node node, int choices, double mass)
    {
        var best = _base.Value(node.Weights, node.Position, node.Used, mass);
        if (choices == 0 || _budget.IsSpent || StateWeights.Total(node.Weights) < mass)
        {
            return best;
        }

        foreach (var action in _base.Candidates(node.Weights, node.Position, node.Used, ChecksPerChoice, RepairsPerChoice))
        {
            var value = ValueOf(node, action, choices - 1, mass);
            best = value.Cost < best.Cost ? value : best;
        }

        return best;
    }

    private static void Sort(List<PlannedAction> ranked) => ranked.Sort((a, b) =>
        Math.Round(a.Value.Cost, 9).CompareTo(Math.Round(b.Value.Cost, 9)) is not 0 and var order
            ? order
            : a.Action.CompareTo(b.Action));

    private readonly record struct Node(double[] Weights, int Position, ulong Used);
}
