namespace Halfsplit.Simulation.Networks;

public sealed partial class NetworkSolver
{
    /// <summary>Half a unit in the last place of one.</summary>
    private const double Rounding = 1.1102230246251565e-16;

    /// <summary>The error that a cancellation may bring, as a share of the result, before the paths are eliminated anew.</summary>
    private const double MostLoss = 1e-13;

    /// <summary>Per node on a path, the currents that meet there, summed without their signs.</summary>
    private readonly double[] reach;
    private readonly double[] pairResponse;
    private readonly int[] pathNodes;
    private PathElimination? pathElimination;

    /// <summary>What the network is between two points, in ohms, its sources at rest: what an ohmmeter would see.</summary>
    /// <param name="from">A node's index, or −1 for the reference.</param>
    /// <param name="to">A node's index, or −1 for the reference.</param>
    /// <returns>Ohms, zero if both are the same point. Accurate even where both points all but float.</returns>
    /// <exception cref="ArgumentException">There is no such node.</exception>
    /// <exception cref="InvalidOperationException">There is no factor, or nodes float.</exception>
    public double ResistanceBetween(int from, int to)
    {
        RequireFactor();
        CheckPair(from, to);
        if (from == to)
            return 0;
        var response = pairResponse.AsSpan();
        var steps = BetweenOnPath(from, to, response);
        var resistance = Drop(response, from, to);
        Unmark(steps);
        return resistance;
    }

    /// <summary>Finds the node volts for one ampere led in at one point and out at another, all sources at rest.</summary>
    /// <param name="from">A node's index, or −1 for the reference.</param>
    /// <param name="to">A node's index, or −1 for the reference.</param>
    /// <param name="volts">
    /// Receives volts per ampere, accurate in proportion to the resistance between the two points, even where both all
    /// but float: to a few units in the last place where the paths are short, else to twelve digits.
    /// <see cref="Solve"/> with +1 and −1 would err in proportion to the leak's ohms instead.
    /// </param>
    /// <returns>The resistance between the two points in ohms.</returns>
    /// <exception cref="ArgumentException">There is no such node, or the memory has the wrong length.</exception>
    /// <exception cref="InvalidOperationException">There is no factor, or nodes float.</exception>
    public double SolveBetween(int from, int to, Span<double> volts)
    {
        RequireFactor();
        CheckPair(from, to);
        CheckLength(volts.Length, plan.NodeCount, "volts", nameof(volts));
        volts.Clear();
        if (from == to)
            return 0;
        var steps = BetweenOnPath(from, to, volts);
        BackwardOffPath(volts);
        Unmark(steps);
        return Drop(volts, from, to);
    }

    /// <summary>Prepares conductances of any size between two points, without solving again for each.</summary>
    /// <param name="from">A node's index, or −1 for the reference.</param>
    /// <param name="to">A node's index, or −1 for the reference.</param>
    /// <param name="volts">The node volts without the added conductance.</param>
    /// <param name="response">Receives what <see cref="SolveBetween"/> gives.</param>
    /// <exception cref="ArgumentException">There is no such node, or a memory has the wrong length.</exception>
    /// <exception cref="InvalidOperationException">There is no factor, or nodes float.</exception>
    public AddedConductance Across(int from, int to, ReadOnlySpan<double> volts, Span<double> response)
    {
        CheckLength(volts.Length, plan.NodeCount, "volts", nameof(volts));
        var resistance = SolveBetween(from, to, response);
        return new AddedConductance(Drop(volts, from, to), resistance);
    }

    private static double Drop(ReadOnlySpan<double> volts, int from, int to) =>
        (from < 0 ? 0 : volts[from]) - (to < 0 ? 0 : volts[to]);

    private void CheckPair(int from, int to)
    {
        NetworkShape.CheckEnd(from, plan.NodeCount, "probe", 0, nameof(from));
        NetworkShape.CheckEnd(to, plan.NodeCount, "probe", 1, nameof(to));
    }

    /// <summary>
    /// Finds the response on the paths of both points, and leaves those steps marked. Substitution lets the current
    /// into one point and out of the other cancel on the way; where the paths are short, or that would cost digits, the
    /// two points are kept to the end of another elimination, which cancels nothing.
    /// </summary>
    private ReadOnlySpan<int> BetweenOnPath(int from, int to, Span<double> volts)
    {
        var length = from < 0 ? 0 : FollowUp(plan.StepOf[from], 0);
        if (to >= 0)
            length = FollowUp(plan.StepOf[to], length);
        var steps = path.AsSpan(0, length);
        steps.Sort();
        if (from < 0 || to < 0)
            SubstituteOnPath(from, to, steps, volts);
        else if (length <= ShortPath || SubstituteOnPath(from, to, steps, volts) * Rounding > MostLoss * Drop(volts, from, to))
            KeepPair(from, to, steps, volts);
        return steps;
    }

    /// <returns>The ohms that a rounding of one ampere can make of volts on the way.</returns>
    private double SubstituteOnPath(int from, int to, ReadOnlySpan<int> steps, Span<double> volts)
    {
        foreach (var step in steps)
            volts[plan.Order[step]] = reach[plan.Order[step]] = 0;
        if (from >= 0)
            volts[from] = reach[from] = 1;
        if (to >= 0)
        {
            volts[to] = -1;
            reach[to] = 1;
        }

        var ohms = 0.0;
        foreach (var step in steps)
        {
            var node = plan.Order[step];
            ohms += reach[node] * reciprocal[node];
            for (var entry = plan.ColumnStart[step]; entry < plan.ColumnStart[step + 1]; entry++)
            {
                volts[plan.Row[entry]] += share[entry] * volts[node];
                reach[plan.Row[entry]] += share[entry] * reach[node];
            }
        }

        for (var index = steps.Length - 1; index >= 0; index--)
            BackwardStep(steps[index], volts);
        return ohms;
    }

    private void BackwardStep(int step, Span<double> volts)
    {
        var node = plan.Order[step];
        volts[node] = (volts[node] * reciprocal[node]) + Mean(plan.ColumnStart[step], plan.ColumnStart[step + 1], volts);
    }

    private void BackwardOffPath(Span<double> volts)
    {
        for (var step = plan.NodeCount - 1; step >= 0; step--)
        {
            if (!onPath[step])
                BackwardStep(step, volts);
        }
    }

    private void KeepPair(int from, int to, ReadOnlySpan<int> steps, Span<double> volts)
    {
        var order = pathNodes.AsSpan(0, steps.Length);
        var place = 0;
        foreach (var step in steps)
        {
            var node = plan.Order[step];
            if (node != from && node != to)
                order[place++] = node;
        }

        order[place] = from;
        order[place + 1] = to;
        var elimination = StartPathElimination(order, steps);
        elimination.Eliminate(kept: 2);
        (volts[from], volts[to]) = elimination.VoltsOfKeptPair();
        elimination.Backward(kept: 2, volts);
    }

    /// <summary>
    /// Sets up the dense elimination of the marked steps: their branches and leaks, and what the steps off the path
    /// have added to them.
    /// </summary>
    private PathElimination StartPathElimination(ReadOnlySpan<int> nodesInOrder, ReadOnlySpan<int> steps)
    {
        var elimination = pathElimination ??= new PathElimination(plan.NodeCount);
        elimination.Start(nodesInOrder);
        foreach (var step in steps)
        {
            var node = plan.Order[step];
            elimination.Add(node, Branch.Reference, givenLeak[node]);
            for (var index = plan.ColumnBranchStart[step]; index < plan.ColumnBranchStart[step + 1]; index++)
            {
                var branch = plan.ColumnBranches[index];
                var (from, to) = Shape.Branches[branch];
                elimination.Add(from, to, given[branch]);
            }

            for (var index = plan.IncomingStart[step]; index < plan.IncomingStart[step + 1]; index++)
            {
                var entry = plan.Incoming[index];
                var owner = plan.Owner[entry];
                if (onPath[owner])
                    continue;
                elimination.Add(node, Branch.Reference, share[entry] * value[LeakStart + plan.Order[owner]]);
                for (var other = entry + 1; other < plan.ColumnStart[owner + 1]; other++)
                    elimination.Add(node, plan.Row[other], share[entry] * value[other]);
            }
        }

        return elimination;
    }
}
