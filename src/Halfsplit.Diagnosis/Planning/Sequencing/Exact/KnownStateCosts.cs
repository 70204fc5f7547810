namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>
/// What the work costs at least for someone who knows the state and so only repairs or hands over: the lower bound of the
/// exact search, as no check is worth more than knowing all.
/// </summary>
internal sealed class KnownStateCosts(RepairProblem problem, RouteCosts routes)
{
    private readonly Dictionary<(uint Failed, int Position), double[]> _byState = [];
    private readonly Dictionary<uint, double[]> _anywhere = [];

    /// <summary>At least so much from a position in each state.</summary>
    public double[] Of(uint failed, int position)
    {
        if (_byState.TryGetValue((failed, position), out var known))
            return known;
        var costs = new double[problem.StateCount];
        Array.Fill(costs, problem.HandOver);
        for (var repair = 0; repair < problem.Repairs.Length; repair++)
        {
            if ((failed >> repair & 1) != 0)
                continue;
            var (cures, wrong) = (problem.Repairs[repair].Cures, problem.Repairs[repair].WrongCost);
            var onward = Anywhere(failed | 1U << repair);
            var first = routes.Route(position, problem.Checks.Length + repair);
            for (var state = 0; state < costs.Length; state++)
            {
                if (cures[state] > 0)
                    costs[state] = Math.Min(costs[state], first + Uncured(cures[state], wrong, onward[state]));
            }
        }

        _byState.Add((failed, position), costs);
        return costs;
    }

    /// <summary>The same with every repair as cheap as it is from the best of all positions: the order by odds per cost is best then.</summary>
    private double[] Anywhere(uint failed)
    {
        if (_anywhere.TryGetValue(failed, out var known))
            return known;
        var costs = new double[problem.StateCount];
        var order = new List<(double Price, int Repair)>();
        for (var state = 0; state < costs.Length; state++)
        {
            order.Clear();
            for (var repair = 0; repair < problem.Repairs.Length; repair++)
            {
                var cures = problem.Repairs[repair].Cures[state];
                if ((failed >> repair & 1) == 0 && cures > 0)
                    order.Add(((routes.Least(problem.Checks.Length + repair) + ((1 - cures) * problem.Repairs[repair].WrongCost)) / cures, repair));
            }

            order.Sort();
            var cost = problem.HandOver;
            for (var i = order.Count - 1; i >= 0; i--)
            {
                var repair = order[i].Repair;
                cost = Math.Min(cost, routes.Least(problem.Checks.Length + repair) + Uncured(
                    problem.Repairs[repair].Cures[state], problem.Repairs[repair].WrongCost, cost));
            }

            costs[state] = cost;
        }

        _anywhere.Add(failed, costs);
        return costs;
    }

    /// <summary>Without a product of nought and infinity.</summary>
    private static double Uncured(double cures, double wrong, double onward) => cures >= 1 ? 0 : (1 - cures) * (wrong + onward);
}
