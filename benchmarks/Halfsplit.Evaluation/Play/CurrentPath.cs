using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Evaluation.Play;

/// <summary>The way the current takes in the healthy circuit, from one node to where it comes from or goes to.</summary>
/// <param name="Nodes">From the start onward; the last is the battery's post where the way gets there.</param>
/// <param name="Branches">Between them: one fewer than nodes.</param>
public sealed record CurrentPath(CircuitNetwork Network, ImmutableArray<int> Nodes, ImmutableArray<int> Branches)
{
    private const double LeastAmps = 1e-5, LeastWatts = 1e-6;

    /// <summary>Parts and wires on the way, in its order.</summary>
    public IEnumerable<string> Owners => Branches.Select(b => Network.Branches[b].Owner).Distinct(StringComparer.Ordinal);

    /// <summary>The rest of the way from a node of it; all of it if the node is not on it.</summary>
    public CurrentPath From(int node)
    {
        var at = Nodes.IndexOf(node);
        return at <= 0 ? this : this with { Nodes = Nodes[at..], Branches = Branches[at..] };
    }

    /// <summary>Follows the most current from a node.</summary>
    /// <param name="upstream">True: to where it comes from; false: to where it goes.</param>
    /// <param name="without">A part whose inside is not followed: the load itself.</param>
    public static CurrentPath Trace(OperatingPoint point, int start, bool upstream, string? without)
    {
        ArgumentNullException.ThrowIfNull(point);
        var network = point.Network;
        var end = upstream ? network.NodeOf(new TerminalName(network.Circuit.Battery.Id, "pos")) : -1;
        var nodes = ImmutableArray.CreateBuilder<int>();
        var branches = ImmutableArray.CreateBuilder<int>();
        nodes.Add(start);
        for (var node = start; node != end;)
        {
            var best = -1;
            var most = LeastAmps;
            for (var i = 0; i < network.Branches.Length; i++)
            {
                var branch = network.Branches[i];
                if (branch.From == branch.To || (branch.From != node && branch.To != node) || branch.Owner == without
                    || IsSource(point, i))
                {
                    continue;
                }

                var other = branch.From == node ? branch.To : branch.From;
                var into = (branch.To == node ? 1 : -1) * point.Amps(i);
                if ((upstream ? into : -into) > most && !nodes.Contains(other))
                {
                    most = upstream ? into : -into;
                    best = i;
                }
            }

            if (best < 0)
            {
                break;
            }

            node = network.Branches[best].From == node ? network.Branches[best].To : network.Branches[best].From;
            branches.Add(best);
            nodes.Add(node);
        }

        return new CurrentPath(network, nodes.ToImmutable(), branches.ToImmutable());
    }

    /// <summary>The battery, and whatever else gives power: the way ends there.</summary>
    private static bool IsSource(OperatingPoint point, int index)
    {
        var branch = point.Network.Branches[index];
        return branch.Use == BranchUse.Source || point.Amps(index) * (point.NodeVolts(branch.From) - point.NodeVolts(branch.To)) < -LeastWatts;
    }
}
