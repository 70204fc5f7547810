namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>The optimum of a small <see cref="RepairProblem"/>, and how to reach it: what every planner is judged against.</summary>
internal sealed class ExactPolicy
{
    /// <summary>Values nearer than that, relatively, count as equal: their sums are rounded.</summary>
    private const double Rounding = 1e-12;

    private readonly RepairGraph _graph;
    private readonly DecisionGraphValue<Belief> _values;
    private readonly Belief _start;

    private ExactPolicy(RepairGraph graph, DecisionGraphValue<Belief> values, Belief start, double value)
    {
        _graph = graph;
        _values = values;
        _start = start;
        Value = value;
    }

    /// <summary>Least expected cost to the end; infinite if handing over is not allowed and some state has no sure cure.</summary>
    public double Value { get; }

    /// <summary>Beliefs met on the way; a measure of the problem's size.</summary>
    public int BeliefCount => _values.StateCount;

    /// <inheritdoc cref="RouteCosts.DetoursPay"/>
    public bool DetoursPay => _graph.Routes.DetoursPay;

    /// <summary>Solves a problem; null if it takes more beliefs than allowed.</summary>
    /// <exception cref="ArgumentException">The problem does not fit into <see cref="BeliefSpace"/>.</exception>
    public static ExactPolicy? Solve(RepairProblem problem, int mostBeliefs = 10_000_000)
    {
        var graph = new RepairGraph(problem);
        var values = new DecisionGraphValue<Belief>(graph, mostBeliefs);
        var start = graph.Space.Reduced(graph.Space.Start);
        var value = values.Of(start);
        return values.GaveUp ? null : new ExactPolicy(graph, values, start, value);
    }

    /// <summary>All first actions that reach the optimum, in their order; handing over comes last.</summary>
    public IReadOnlyList<int> BestActions() => Best(_start, Value);

    /// <summary>The expected cost of each first action that tells or may cure something, if all goes on as well as can be.</summary>
    public IReadOnlyList<(int Action, double Value)> ActionValues() => _values.OfChoices(_start);

    /// <summary>The first of the best actions at any point.</summary>
    public int Choose(RepairProblem problem, RepairStanding standing)
    {
        var belief = _graph.Space.Reduced(_graph.Space.Of(standing));
        return Best(belief, _values.Of(belief))[0];
    }

    private List<int> Best(Belief belief, double value)
    {
        var limit = value * (1 + Rounding);
        var best = _values.OfChoices(belief, Math.BitIncrement(limit)).Where(c => c.Value <= limit).Select(c => c.Action).ToList();
        if (_graph.EndCost(belief) <= limit)
            best.Add(RepairStanding.HandOver);
        return best;
    }
}
