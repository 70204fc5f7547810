namespace Halfsplit.Simulation.Networks;

public sealed partial class NetworkSolver
{
    /// <summary>Beyond this share of the work, going through the whole network in order is faster than jumping along a path.</summary>
    private const double MostOfTheWork = 0.7;

    private int[] changed = [];
    private readonly int[] path;
    private readonly bool[] onPath;

    /// <summary>
    /// Takes new conductances for some branches and eliminates again only what they can reach: the paths from their
    /// nodes to the root of the elimination tree. The result has the same bits as <see cref="Factor"/> on all values,
    /// since each column adds the same products in the same order.
    /// </summary>
    /// <param name="changedBranches">Indexes of branches.</param>
    /// <param name="branchConductance">Siemens for all branches; only those of the changed ones are read.</param>
    /// <returns>Solved, or the nodes that float.</returns>
    /// <exception cref="ArgumentException">A branch is not there, or its conductance is outside <see cref="ConductanceRange"/>.</exception>
    /// <exception cref="InvalidOperationException">Nothing has been factored yet.</exception>
    public FactorOutcome Refactor(ReadOnlySpan<int> changedBranches, ReadOnlySpan<double> branchConductance)
    {
        if (!hasFactor)
            throw new InvalidOperationException("The network has not been factored.");
        CheckLength(branchConductance.Length, given.Length, "branch conductances", nameof(branchConductance));
        foreach (var branch in changedBranches)
        {
            if ((uint)branch >= (uint)given.Length)
                throw new ArgumentException("There is no such branch to change.", nameof(changedBranches));
            TakeBranch(branchConductance, branch);
        }

        var length = 0;
        foreach (var branch in changedBranches)
        {
            given[branch] = TakeBranch(branchConductance, branch);
            var slot = plan.Slot[branch];
            if (slot < plan.EntryCount)
                length = FollowUp(plan.Owner[slot], length);
            else if (slot < plan.EntryCount + plan.NodeCount)
                length = FollowUp(plan.StepOf[slot - plan.EntryCount], length);
        }

        var steps = path.AsSpan(0, length);
        if (changedBranches.Length > 1)
            steps.Sort();
        Unmark(steps);
        long work = 0;
        foreach (var step in steps)
            work += plan.Work[step];
        if (work > plan.TotalWork * MostOfTheWork)
        {
            EliminateAll();
            return Outcome();
        }

        foreach (var step in steps)
        {
            // A pivot of zero is counted anew when its column is eliminated.
            if (reciprocal[plan.Order[step]] == 0)
                zeroPivots--;
            Reassemble(step);
            EliminateColumn(step);
        }

        return Outcome();
    }

    /// <summary>
    /// <see cref="FactorAndSolve"/> to the bit, with only that eliminated anew which differs from the network factored
    /// before: one car after the other differs in a few branches.
    /// </summary>
    /// <inheritdoc cref="FactorAndSolve"/>
    public FactorOutcome FactorAgainAndSolve(
        ReadOnlySpan<double> branchConductance, ReadOnlySpan<double> leak, ReadOnlySpan<double> injected, Span<double> volts)
    {
        if (!hasFactor || branchConductance.Length != given.Length || !leak.SequenceEqual(givenLeak))
            return FactorAndSolve(branchConductance, leak, injected, volts);
        if (changed.Length < given.Length)
            changed = new int[given.Length];
        var count = 0;
        var known = given;
        for (var branch = 0; branch < known.Length; branch++)
        {
            if (known[branch] != branchConductance[branch])
                changed[count++] = branch;
        }

        var outcome = count == 0 ? Outcome() : Refactor(changed.AsSpan(0, count), branchConductance);
        if (outcome.IsSolved)
            Solve(injected, volts);
        else
            volts.Clear();
        return outcome;
    }

    /// <summary>Adds to the path a step and its ancestors as far as they are not yet on it.</summary>
    private int FollowUp(int step, int length)
    {
        for (; step >= 0 && !onPath[step]; step = plan.Parent[step])
        {
            onPath[step] = true;
            path[length++] = step;
        }

        return length;
    }

    private void Unmark(ReadOnlySpan<int> steps)
    {
        foreach (var step in steps)
            onPath[step] = false;
    }

    /// <summary>Sums a column anew: its branches, then what each earlier elimination adds.</summary>
    private void Reassemble(int step)
    {
        Restore(step);
        var leak = LeakStart + plan.Order[step];
        var end = plan.IncomingStart[step + 1];
        for (var index = plan.IncomingStart[step]; index < end; index++)
        {
            var entry = plan.Incoming[index];
            var owner = plan.Owner[entry];
            value[leak] += share[entry] * value[LeakStart + plan.Order[owner]];
            PassOnEntry(entry, plan.ColumnStart[owner + 1]);
        }
    }

    /// <summary>Sets a column and its leak to what the branches alone make them.</summary>
    private void Restore(int step)
    {
        var start = plan.ColumnStart[step];
        Array.Clear(value, start, plan.ColumnStart[step + 1] - start);
        var node = plan.Order[step];
        value[LeakStart + node] = givenLeak[node];
        var end = plan.ColumnBranchStart[step + 1];
        for (var index = plan.ColumnBranchStart[step]; index < end; index++)
        {
            var branch = plan.ColumnBranches[index];
            value[plan.Slot[branch]] += given[branch];
        }
    }
}
