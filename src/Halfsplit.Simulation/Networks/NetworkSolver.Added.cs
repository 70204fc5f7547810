namespace Halfsplit.Simulation.Networks;

public sealed partial class NetworkSolver
{
    /// <summary>Up to this many nodes on the paths, eliminating them anew is as fast as a low-rank update.</summary>
    private const int ShortPath = 32;

    private double[] responses = [];
    private double[] system = [];
    private double[] through = [];

    /// <summary>
    /// Finds the node volts with further conductances (meters, jumpers, shorts) laid across the factored network,
    /// which stays as it is.
    /// </summary>
    /// <param name="added">The conductances; parallel ones add up.</param>
    /// <param name="injected">Amperes from the reference into each node, of any sign.</param>
    /// <param name="volts">Receives each node's volts with all added conductances in place.</param>
    /// <exception cref="ArgumentException">An end, conductance or current is out of range; the message has its index.</exception>
    /// <exception cref="InvalidOperationException">There is no factor, or nodes float.</exception>
    /// <remarks>
    /// On short paths, and wherever a low-rank update would lose digits, the paths of the touched nodes are eliminated
    /// anew with the additions in place, which is as exact as <see cref="Factor"/>. Otherwise a small dense system is
    /// solved whose pivots are all at least one; its error is a few units in the last place of the largest volts.
    /// </remarks>
    public void SolveWithAdded(ReadOnlySpan<AddedBranch> added, ReadOnlySpan<double> injected, Span<double> volts)
    {
        RequireFactor();
        for (var index = 0; index < added.Length; index++)
        {
            NetworkShape.CheckEnd(added[index].From, plan.NodeCount, "added branch", index, nameof(added));
            NetworkShape.CheckEnd(added[index].To, plan.NodeCount, "added branch", index, nameof(added));
            ConductanceRange.Take(added[index].Conductance, "conductance of added branch", index, nameof(added));
        }

        TakeCurrents(injected, volts);
        if (PathLength(added) <= ShortPath)
        {
            EliminateWithAdded(added, volts);
            return;
        }

        Forward(volts);
        Backward(volts);
        if (!UpdateWithAdded(added, volts))
        {
            injected.CopyTo(volts);
            EliminateWithAdded(added, volts);
        }
    }

    private int PathLength(ReadOnlySpan<AddedBranch> added)
    {
        var steps = MarkPaths(added);
        Unmark(steps);
        return steps.Length;
    }

    private Span<int> MarkPaths(ReadOnlySpan<AddedBranch> added)
    {
        var length = 0;
        foreach (var (from, to, _) in added)
        {
            if (from >= 0)
                length = FollowUp(plan.StepOf[from], length);
            if (to >= 0)
                length = FollowUp(plan.StepOf[to], length);
        }

        return path.AsSpan(0, length);
    }

    /// <summary>The exact way: everything off the paths as factored, the paths anew. Takes currents, leaves volts.</summary>
    private void EliminateWithAdded(ReadOnlySpan<AddedBranch> added, Span<double> volts)
    {
        var steps = MarkPaths(added);
        steps.Sort();
        for (var step = 0; step < plan.NodeCount; step++)
        {
            if (onPath[step])
                continue;
            var own = volts[plan.Order[step]];
            for (var entry = plan.ColumnStart[step]; entry < plan.ColumnStart[step + 1]; entry++)
                volts[plan.Row[entry]] += share[entry] * own;
        }

        var order = pathNodes.AsSpan(0, steps.Length);
        for (var place = 0; place < steps.Length; place++)
            order[place] = plan.Order[steps[place]];
        var elimination = StartPathElimination(order, steps);
        foreach (var node in order)
            elimination.Inject(node, volts[node]);
        foreach (var (from, to, conductance) in added)
            elimination.Add(from, to, conductance);
        elimination.Eliminate(kept: 0);
        elimination.Backward(kept: 0, volts);
        BackwardOffPath(volts);
        Unmark(steps);
    }

    /// <summary>
    /// The low-rank way: one response per addition, then the currents through them from (1 + g·R) i = g·u, where R has
    /// the drops of each response across each addition and u the drops without any.
    /// </summary>
    /// <returns>False, with nothing changed, where digits would be lost.</returns>
    private bool UpdateWithAdded(ReadOnlySpan<AddedBranch> added, Span<double> volts)
    {
        var (nodes, count) = (plan.NodeCount, added.Length);
        if (responses.Length < count * nodes)
        {
            responses = new double[count * nodes];
            system = new double[count * count];
            through = new double[count];
        }

        for (var column = 0; column < count; column++)
        {
            var response = responses.AsSpan(column * nodes, nodes);
            SolveBetween(added[column].From, added[column].To, response);
            for (var row = 0; row < count; row++)
                system[(row * count) + column] = added[row].Conductance * Drop(response, added[row].From, added[row].To);
            through[column] = added[column].Conductance * Drop(volts, added[column].From, added[column].To);
        }

        if (!SolveSystem(count))
            return false;
        for (var index = 0; index < count; index++)
        {
            var current = through[index];
            var response = responses.AsSpan(index * nodes, nodes);
            for (var node = 0; node < nodes; node++)
                volts[node] -= current * response[node];
        }

        return true;
    }

    /// <summary>Solves the small system in place. It needs no exchange of rows: every pivot is at least one.</summary>
    private bool SolveSystem(int count)
    {
        for (var pivot = 0; pivot < count; pivot++)
        {
            // What the earlier additions have taken away from this one's share says how many digits it has cost.
            var whole = system[(pivot * count) + pivot] + 1;
            for (var earlier = 0; earlier < pivot; earlier++)
                Subtract(pivot, earlier, count);
            var remaining = system[(pivot * count) + pivot] += 1;
            if (whole * Rounding > MostLoss * remaining)
                return false;
        }

        for (var row = count - 1; row >= 0; row--)
        {
            var sum = through[row];
            for (var column = row + 1; column < count; column++)
                sum -= system[(row * count) + column] * through[column];
            through[row] = sum / system[(row * count) + row];
        }

        return true;
    }

    private void Subtract(int row, int pivot, int count)
    {
        var factor = system[(row * count) + pivot] / system[(pivot * count) + pivot];
        for (var column = pivot + 1; column < count; column++)
            system[(row * count) + column] -= factor * system[(pivot * count) + column];
        through[row] -= factor * through[pivot];
    }
}
