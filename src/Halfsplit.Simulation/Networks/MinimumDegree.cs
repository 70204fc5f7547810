namespace Halfsplit.Simulation.Networks;

/// <summary>
/// Chooses the order of elimination. The node with the fewest neighbours goes first, since eliminating it joins its
/// neighbours pairwise. Nodes with one or two neighbours cost the same, so among them the one with the least
/// elimination below it goes first: a long wire of joints then folds up in a tree of logarithmic height, and a change
/// anywhere on it re-eliminates a dozen nodes, not thousands.
/// </summary>
internal static class MinimumDegree
{
    /// <summary>
    /// Orders the nodes by level of the elimination tree. On return <paramref name="later"/>[node] lists, unsorted,
    /// the neighbours that the node has at the moment it is eliminated.
    /// </summary>
    /// <returns>The nodes in order of elimination, and each node's level: the height of the tree below it.</returns>
    public static (int[] Order, int[] Level) Find(List<int>[] neighbours, out int[][] later)
    {
        var count = neighbours.Length;
        var adjacent = new int[count][];
        var queue = new PriorityQueue<int, long>(count);
        var key = new long[count];
        var level = new int[count];
        var eliminated = new bool[count];
        for (var node = 0; node < count; node++)
        {
            adjacent[node] = [.. neighbours[node].Distinct().Order()];
            queue.Enqueue(node, key[node] = Key(adjacent[node].Length, 0, node));
        }

        var order = new int[count];
        var fronts = later = new int[count][];
        var merged = new int[count];
        for (var step = 0; step < count; step++)
        {
            int node;
            while (!queue.TryDequeue(out node, out var priority) || eliminated[node] || priority != key[node])
            {
                // A stale entry: the node was eliminated or its key has changed since.
            }

            eliminated[node] = true;
            order[step] = node;
            var front = adjacent[node];
            fronts[node] = front;
            adjacent[node] = [];
            foreach (var other in front)
            {
                adjacent[other] = Merge(adjacent[other], front, node, other, merged);
                level[other] = Math.Max(level[other], level[node] + 1);
                var changed = Key(adjacent[other].Length, level[other], other);
                if (changed != key[other])
                    queue.Enqueue(other, key[other] = changed);
            }
        }

        // Any order that keeps children before parents gives the same fill. Level by level, neighbours in the list do
        // not wait for each other's result; equal degrees side by side let the numeric loops run without choosing.
        Array.Sort(order, Comparer<int>.Create((a, b) =>
            level[a] != level[b] ? level[a].CompareTo(level[b])
            : fronts[a].Length != fronts[b].Length ? fronts[a].Length.CompareTo(fronts[b].Length)
            : a.CompareTo(b)));
        return (order, level);
    }

    private static long Key(int degree, int level, int node)
    {
        var cost = degree is 1 or 2 ? 1 : degree;
        return ((((long)cost << 20) | (uint)level) << 20) | (uint)node;
    }

    /// <summary>The sorted union of two sorted lists without the eliminated node and the list's own node.</summary>
    private static int[] Merge(int[] own, int[] front, int eliminated, int self, int[] merged)
    {
        int i = 0, j = 0, length = 0;
        while (i < own.Length || j < front.Length)
        {
            int next;
            if (j >= front.Length || (i < own.Length && own[i] < front[j]))
                next = own[i++];
            else
            {
                next = front[j++];
                if (i < own.Length && own[i] == next)
                    i++;
            }

            if (next != eliminated && next != self)
                merged[length++] = next;
        }

        return merged[..length];
    }
}
