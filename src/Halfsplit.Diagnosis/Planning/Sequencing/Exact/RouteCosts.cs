namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>The positions that can be reached, and the least cost of getting an action done from each by any route.</summary>
internal sealed class RouteCosts
{
    private readonly Dictionary<int, double[]> _route = [];
    private readonly double[] _least;

    public RouteCosts(RepairProblem problem)
    {
        var actions = problem.ActionCount;
        var positions = Reachable(problem);
        _least = new double[actions];
        Array.Fill(_least, double.PositiveInfinity);
        foreach (var position in positions)
        {
            var costs = new double[actions];
            for (var action = 0; action < actions; action++)
            {
                costs[action] = problem.Costs.Cost(position, action);
                _least[action] = Math.Min(_least[action], costs[action]);
            }

            _route.Add(position, costs);
        }

        while (Shorten(problem, positions))
            DetoursPay = true;
    }

    /// <summary>
    /// True if somewhere an action is got done more cheaply by doing another before it. The exact solver does only what
    /// can tell or cure something; where detours pay, its value is the optimum among such policies.
    /// </summary>
    public bool DetoursPay { get; private set; }

    /// <summary>How many positions can be reached.</summary>
    public int PositionCount => _route.Count;

    /// <summary>Least cost of all that must be done from a position until an action is done, the action's own included.</summary>
    public double Route(int position, int action) => _route[position][action];

    /// <summary>Least cost of an action from anywhere.</summary>
    public double Least(int action) => _least[action];

    private static List<int> Reachable(RepairProblem problem)
    {
        var positions = new List<int> { problem.Costs.Start };
        var seen = new HashSet<int>(positions);
        for (var i = 0; i < positions.Count; i++)
        {
            for (var action = 0; action < problem.ActionCount; action++)
            {
                var after = problem.Costs.After(positions[i], action);
                if (seen.Add(after))
                    positions.Add(after);
            }
        }

        return positions;
    }

    private bool Shorten(RepairProblem problem, List<int> positions)
    {
        var shortened = false;
        foreach (var position in positions)
        {
            var costs = _route[position];
            for (var by = 0; by < costs.Length; by++)
            {
                var first = problem.Costs.Cost(position, by);
                var onward = _route[problem.Costs.After(position, by)];
                for (var action = 0; action < costs.Length; action++)
                {
                    // A gain that small is rounding.
                    if (first + onward[action] < costs[action] * (1 - 1e-12))
                    {
                        costs[action] = first + onward[action];
                        shortened = true;
                    }
                }
            }
        }

        return shortened;
    }
}
