namespace Halfsplit.Simulation.Networks;

/// <summary>
/// The elimination as straight lists of indexes, so that the numeric loops decide nothing. Values live in one array:
/// first the couplings of each eliminated node to its later neighbours, column by column in order of elimination, then
/// one leak per node, then one place where branches from a node to itself are put out of the way.
/// </summary>
internal sealed class EliminationPlan
{
    /// <summary>Steps <c>From</c> to <c>To</c> − 1 eliminate nodes with the same number of later neighbours.</summary>
    public readonly record struct Group(int Degree, int From, int To);

    public required int NodeCount { get; init; }

    public required int EntryCount { get; init; }

    public required int Height { get; init; }

    /// <summary>The node that each step eliminates.</summary>
    public required int[] Order { get; init; }

    /// <summary>The step that eliminates each node.</summary>
    public required int[] StepOf { get; init; }

    public required Group[] Groups { get; init; }

    /// <summary>The first entry of each step's column, and one past the last.</summary>
    public required int[] ColumnStart { get; init; }

    /// <summary>The later neighbour of each entry; within a column by rising step.</summary>
    public required int[] Row { get; init; }

    /// <summary>The step whose column each entry stands in.</summary>
    public required int[] Owner { get; init; }

    /// <summary>The step of a column's first row, which is its parent in the elimination tree; −1 at a root.</summary>
    public required int[] Parent { get; init; }

    /// <summary>
    /// Where entry e's products with the later entries of its column go. Zero or more: an index into
    /// <see cref="Target"/>, one value index per later entry. Negative: the complement of an index into
    /// <see cref="Run"/>, where the targets lie side by side.
    /// </summary>
    public required int[] Segment { get; init; }

    public required int[] Target { get; init; }

    /// <summary>A number of runs, then for each run its first value index and its length.</summary>
    public required int[] Run { get; init; }

    /// <summary>Per step, the range in <see cref="Incoming"/>.</summary>
    public required int[] IncomingStart { get; init; }

    /// <summary>The entries whose row is the step's node, by rising owner: what earlier eliminations add to its column.</summary>
    public required int[] Incoming { get; init; }

    /// <summary>The value index that each branch adds to.</summary>
    public required int[] Slot { get; init; }

    /// <summary>Per step, the range in <see cref="ColumnBranches"/>.</summary>
    public required int[] ColumnBranchStart { get; init; }

    /// <summary>The branches that add to each step's column or leak, by rising index.</summary>
    public required int[] ColumnBranches { get; init; }

    /// <summary>Per step, the products that are summed into its column, plus one for the step itself.</summary>
    public required long[] Work { get; init; }

    public required long TotalWork { get; init; }

    public int ValueCount => EntryCount + NodeCount + 1;

    public static EliminationPlan Build(int nodeCount, ReadOnlySpan<Branch> branches)
    {
        var neighbours = new List<int>[nodeCount];
        for (var node = 0; node < nodeCount; node++)
            neighbours[node] = [];
        foreach (var (from, to) in branches)
        {
            if (from != to && from >= 0 && to >= 0)
            {
                neighbours[from].Add(to);
                neighbours[to].Add(from);
            }
        }

        var (order, level) = MinimumDegree.Find(neighbours, out var later);
        var stepOf = new int[nodeCount];
        for (var step = 0; step < nodeCount; step++)
            stepOf[order[step]] = step;

        var columnStart = new int[nodeCount + 1];
        for (var step = 0; step < nodeCount; step++)
            columnStart[step + 1] = columnStart[step] + later[order[step]].Length;
        var entryCount = columnStart[nodeCount];
        var row = new int[entryCount];
        var owner = new int[entryCount];
        var parent = new int[nodeCount];
        for (var step = 0; step < nodeCount; step++)
        {
            var column = later[order[step]];
            Array.Sort(column, (a, b) => stepOf[a].CompareTo(stepOf[b]));
            column.CopyTo(row, columnStart[step]);
            owner.AsSpan(columnStart[step], column.Length).Fill(step);
            parent[step] = column.Length == 0 ? -1 : stepOf[column[0]];
        }

        var (segment, target, run) = FillTargets.Find(columnStart, row, stepOf);
        var (incomingStart, incoming) = ListByKey(entryCount, nodeCount, entry => stepOf[row[entry]]);
        var slot = Slots(branches, stepOf, columnStart, row, entryCount, nodeCount);
        var (columnBranchStart, columnBranches) = ListByKey(
            slot.Length,
            nodeCount,
            branch => slot[branch] < entryCount ? owner[slot[branch]]
                : slot[branch] < entryCount + nodeCount ? stepOf[slot[branch] - entryCount]
                : -1);

        var work = new long[nodeCount];
        Array.Fill(work, 1);
        for (var entry = 0; entry < entryCount; entry++)
            work[stepOf[row[entry]]] += columnStart[owner[entry] + 1] - entry;

        return new EliminationPlan
        {
            NodeCount = nodeCount,
            EntryCount = entryCount,
            Height = nodeCount == 0 ? 0 : level.Max() + 1,
            Order = order,
            StepOf = stepOf,
            Groups = GroupSteps(columnStart),
            ColumnStart = columnStart,
            Row = row,
            Owner = owner,
            Parent = parent,
            Segment = segment,
            Target = target,
            Run = run,
            IncomingStart = incomingStart,
            Incoming = incoming,
            Slot = slot,
            ColumnBranchStart = columnBranchStart,
            ColumnBranches = columnBranches,
            Work = work,
            TotalWork = work.Sum(),
        };
    }

    private static Group[] GroupSteps(int[] columnStart)
    {
        var groups = new List<Group>();
        for (int step = 0, from = 0; step < columnStart.Length - 1; step++)
        {
            var degree = columnStart[step + 1] - columnStart[step];
            if (step + 2 == columnStart.Length || columnStart[step + 2] - columnStart[step + 1] != degree)
            {
                groups.Add(new Group(degree, from, step + 1));
                from = step + 1;
            }
        }

        return [.. groups];
    }

    private static int[] Slots(
        ReadOnlySpan<Branch> branches, int[] stepOf, int[] columnStart, int[] row, int entryCount, int nodeCount)
    {
        var slot = new int[branches.Length];
        for (var index = 0; index < branches.Length; index++)
        {
            var (from, to) = branches[index];
            if (from == to)
                slot[index] = entryCount + nodeCount;
            else if (from < 0 || to < 0)
                slot[index] = entryCount + Math.Max(from, to);
            else
            {
                var (first, second) = stepOf[from] < stepOf[to] ? (from, to) : (to, from);
                var start = columnStart[stepOf[first]];
                slot[index] = Array.IndexOf(row, second, start, columnStart[stepOf[first] + 1] - start);
            }
        }

        return slot;
    }

    /// <summary>Lists the items 0 to count − 1 by key, each list rising; items with a negative key are left out.</summary>
    private static (int[] Start, int[] Items) ListByKey(int count, int keys, Func<int, int> keyOf)
    {
        var start = new int[keys + 1];
        for (var item = 0; item < count; item++)
        {
            if (keyOf(item) is >= 0 and var key)
                start[key + 1]++;
        }

        for (var key = 0; key < keys; key++)
            start[key + 1] += start[key];
        var next = start.AsSpan(0, keys).ToArray();
        var items = new int[start[keys]];
        for (var item = 0; item < count; item++)
        {
            if (keyOf(item) is >= 0 and var key)
                items[next[key]++] = item;
        }

        return (start, items);
    }
}
