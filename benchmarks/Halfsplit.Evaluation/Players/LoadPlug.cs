using Halfsplit.Circuits.Model;
using Halfsplit.Evaluation.Play;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Evaluation.Players;

/// <summary>The load's own connector and its cavities on the harness side.</summary>
internal sealed record LoadPlug(string Connector, TerminalName Feed, TerminalName? Return)
{
    /// <summary>Null where the load has no connector of its own.</summary>
    public static LoadPlug? Of(LoadWiring wiring)
    {
        if (HarnessSide(wiring, wiring.Feed) is not { } feed)
        {
            return null;
        }

        return new LoadPlug(feed.Part, feed, HarnessSide(wiring, wiring.Return) is { } back && back.Part == feed.Part ? back : null);
    }

    private static TerminalName? HarnessSide(LoadWiring wiring, CurrentPath path)
    {
        var network = wiring.Network;
        for (var i = 0; i < path.Branches.Length && network.Branches[path.Branches[i]].Use != BranchUse.Wire; i++)
        {
            if (network.Branches[path.Branches[i]].Use == BranchUse.Cavity)
            {
                var connector = network.Branches[path.Branches[i]].Owner;
                return network.Circuit.Terminals.First(t => t.Part == connector && network.NodeOf(t) == path.Nodes[i + 1]);
            }
        }

        return null;
    }
}
