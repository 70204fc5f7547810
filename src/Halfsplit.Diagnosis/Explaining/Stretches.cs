using System.Collections.Immutable;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>Cuts a circuit into stretches.</summary>
internal static class Stretches
{
    /// <summary>All stretches, in the order of the network's branches.</summary>
    /// <param name="cuts">Nodes that end a stretch although nothing branches off there: where the leads are.</param>
    public static ImmutableArray<Stretch> Of(CircuitNetwork network, ReadOnlySpan<int> cuts)
    {
        var branches = network.Branches;
        var at = new List<int>?[network.NodeNames.Length];
        for (var i = 0; i < branches.Length; i++)
        {
            if (branches[i].From != branches[i].To)
            {
                Put(at, branches[i].From, i);
                Put(at, branches[i].To, i);
            }
        }

        var taken = new bool[branches.Length];
        var found = ImmutableArray.CreateBuilder<Stretch>();
        for (var i = 0; i < branches.Length; i++)
        {
            if (taken[i] || branches[i].From == branches[i].To || !Stretch.CarriesOn(branches[i].Use))
            {
                continue;
            }

            taken[i] = true;
            var chain = new LinkedList<int>([i]);
            var last = Walk(network, at, taken, cuts, chain, branches[i].To, forward: true);
            var first = Walk(network, at, taken, cuts, chain, branches[i].From, forward: false);
            found.Add(new Stretch(
                Name(network, first), Name(network, last),
                [.. chain.Select(b => branches[b].Target).OfType<string>().Distinct(StringComparer.Ordinal)], [.. chain]));
        }

        return found.ToImmutable();
    }

    private static int Walk(
        CircuitNetwork network, List<int>?[] at, bool[] taken, ReadOnlySpan<int> cuts, LinkedList<int> chain, int node, bool forward)
    {
        while (node >= 0 && at[node] is { Count: 2 } pair && !cuts.Contains(node))
        {
            var next = taken[pair[0]] ? pair[1] : pair[0];
            if (taken[next] || !Stretch.CarriesOn(network.Branches[next].Use))
            {
                break;
            }

            taken[next] = true;
            if (forward)
            {
                chain.AddLast(next);
            }
            else
            {
                chain.AddFirst(next);
            }

            var branch = network.Branches[next];
            node = branch.From == node ? branch.To : branch.From;
        }

        return node;
    }

    private static void Put(List<int>?[] at, int node, int branch)
    {
        if (node >= 0)
        {
            (at[node] ??= []).Add(branch);
        }
    }

    private static string Name(CircuitNetwork network, int node) =>
        node < 0 ? $"{network.Circuit.Battery.Id}.neg" : network.NodeNames[node];
}
