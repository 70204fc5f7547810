using System.Collections.Immutable;

namespace Halfsplit.Simulation.Networks;

/// <summary>Finds the nodes that no conductance joins to the reference.</summary>
internal static class FloatingNodes
{
    public static ImmutableArray<int> Find(NetworkShape shape, ReadOnlySpan<double> conductance, ReadOnlySpan<double> leak)
    {
        var set = new int[shape.NodeCount + 1];
        for (var node = 0; node < set.Length; node++)
            set[node] = node;

        var reference = shape.NodeCount;
        for (var node = 0; node < leak.Length; node++)
        {
            if (leak[node] > 0)
                Join(set, node, reference);
        }

        for (var index = 0; index < conductance.Length; index++)
        {
            var (from, to) = shape.Branches[index];
            if (conductance[index] > 0)
                Join(set, from < 0 ? reference : from, to < 0 ? reference : to);
        }

        var floating = ImmutableArray.CreateBuilder<int>();
        for (var node = 0; node < reference; node++)
        {
            if (Root(set, node) != Root(set, reference))
                floating.Add(node);
        }

        return floating.ToImmutable();
    }

    private static void Join(int[] set, int a, int b) => set[Root(set, a)] = Root(set, b);

    private static int Root(int[] set, int node)
    {
        while (set[node] != node)
            node = set[node] = set[set[node]];
        return node;
    }
}
