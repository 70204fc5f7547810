namespace Halfsplit.Diagnosis.Planning.Sequencing;

/// <summary>An action with what it is expected to cost in all, down to the end of the work.</summary>
/// <param name="Action">Index of a check or repair; <see cref="LookAhead.HandOver"/> for ending here.</param>
/// <param name="Value">Expected cost, minutes and prices, this action included.</param>
internal readonly record struct PlannedAction(int Action, PlanValue Value);

/// <summary>
/// Chooses the next action of a <see cref="RepairProblem"/>. A base policy (the check that tells most about the repair
/// per cost, or the repairs in the order of odds per cost, whichever comes out cheaper) says what any situation is
/// worth; each action is tried once with the base policy to follow (roll-out), then the best ones with a choice before
/// the base policy takes over, and so on, until the budget of nodes is spent. There is an answer from the start, and a
/// larger budget never makes the expected cost higher. Deterministic: budgets count nodes, sums run in a fixed order, and ties go to
/// the lower index. (Roll-out over information per cost: F. Tu and K. R. Pattipati, "Rollout strategies for sequential
/// fault diagnosis", 2003.)
/// </summary>
internal sealed class LookAhead
{
    /// <summary>The action of ending the work without a cure.</summary>
    public const int HandOver = -1;

    /// <summary>Share of the odds below which a branch is not looked into, from the first rough pass to the last.</summary>
    private static readonly double[] Grains = [0.1, 0.03, 0.01];

    /// <summary>Actions kept for the next finer pass.</summary>
    private const int KeptByGrain = 10;

    /// <summary>Actions looked into with a choice to follow.</summary>
    private const int KeptByChoice = 5;

    /// <summary>Checks and repairs tried where a choice follows.</summary>
    private const int ChecksPerChoice = 4, RepairsPerChoice = 2;

    /// <summary>Most choices before the base policy takes over.</summary>
    private const int MostChoices = 6;

    private readonly RepairProblem _problem;
    private readonly BasePolicy _base;
    private readonly NodeBudget _budget;

    /// <param name="problem">At most 64 checks and repairs.</param>
    /// <param name="nodes">Budget of nodes; at least one per action is spent whatever it says.</param>
    public LookAhead(RepairProblem problem, int nodes)
    {
        ArgumentNullException.ThrowIfNull(problem);
        if (problem.ActionCount > 64)
        {
            throw new ArgumentException("At most 64 checks and repairs can be planned with.", nameof(problem));
        }

        _problem = problem;
        _budget = new NodeBudget(nodes);
        _base = new BasePolicy(problem, _budget);
    }

    /// <summary>Nodes spent so far.</summary>
    public int NodesSpent => _budget.Spent;

    /// <summary>All actions worth a thought, cheapest in expectation first. Never empty.</summary>
    /// <param name="weights">Odds of the states; any positive total.</param>
    /// <param name="position">Where things stand.</param>
    /// <param name="used">Bits of the checks and repairs that are no longer open.</param>
    public IReadOnlyList<PlannedAction> Rank(ReadOnlySpan<double> weights, int position, ulong used)
    {
        var total = StateWeights.Total(weights);
        var node = new Node([.. weights], position, used);
        var ranked = new List<PlannedAction> { new(HandOver, new PlanValue(_problem.HandOver * total, 0, 0)) };
        foreach (var action in _base.Candidates(node.Weights, position, used, _problem.Checks.Length, _problem.Repairs.Length))
        {
            ranked.Add(new PlannedAction(action, ValueOf(node, action, 0, Grains[0] * total)));
        }

        Sort(ranked);
        foreach (var grain in Grains.Skip(1))
        {
            Improve(ranked, node, KeptByGrain, 0, grain * total);
        }

        for (var choices = 1; choices <= MostChoices && !_budget.IsSpent; choices++)
        {
            Improve(ranked, node, KeptByChoice, choices, Grains[^1] * total);
        }

        return [.. ranked.Select(r => r with { Value = r.Value * (1 / total) })];
    }

    /// <summary>Looks deeper into the best actions; what is found can only be cheaper.</summary>
    private void Improve(List<PlannedAction> ranked, in Node node, int kept, int choices, double mass)
    {
        for (var i = 0; i < Math.Min(ranked.Count, kept) && !_budget.IsSpent; i++)
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
