using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Drawing.Svg;

/// <summary>
/// Amps through every conductor of a drawing, from its first end to its second. Wires and grounds have branches of their own;
/// what flows where terminals touch follows from what flows into each terminal, leaf by leaf. Null where contacts close a
/// ring or several terminals of one part meet, so that it can't be told.
/// </summary>
internal sealed class Flows
{
    private readonly OperatingPoint _point;
    private readonly IReadOnlyList<Conductor> _conductors;
    private readonly Dictionary<TerminalName, List<Conductor>> _at = [];

    public Flows(OperatingPoint point, IReadOnlyList<Conductor> conductors)
    {
        (_point, _conductors) = (point, conductors);
        Amps = new double?[conductors.Count];
        foreach (var conductor in conductors)
        {
            At(conductor.From).Add(conductor);
            At(conductor.To).Add(conductor);
            Amps[conductor.Index] = Known(conductor);
        }

        FollowLeaves();
    }

    public double?[] Amps { get; }

    private List<Conductor> At(TerminalName terminal) =>
        _at.TryGetValue(terminal, out var list) ? list : _at[terminal] = [];

    private double? Known(Conductor conductor)
    {
        if (conductor.Wire is { } wire)
        {
            return _point.WireAmps(wire.Id);
        }

        return _point.Network.Circuit.Find(conductor.From.Part) is Ground ground && ground.Metal == conductor.To.Part
            && _point.Network.BranchesOf(ground.Id) is [var branch, ..]
            ? _point.Amps(branch) : null;
    }

    /// <summary>A terminal with one unknown conductor settles it.</summary>
    private void FollowLeaves()
    {
        var queue = new Queue<TerminalName>(_conductors.SelectMany(c => (TerminalName[])[c.From, c.To]).Distinct());
        while (queue.TryDequeue(out var terminal))
        {
            var unknown = At(terminal).Where(c => Amps[c.Index] is null).ToList();
            if (unknown is not [var conductor] || Inside(terminal) is not { } inside)
            {
                continue;
            }

            var arriving = -inside;
            foreach (var known in At(terminal).Where(c => c != conductor))
            {
                arriving += known.From == terminal ? -Amps[known.Index]!.Value : Amps[known.Index]!.Value;
            }

            Amps[conductor.Index] = conductor.From == terminal ? arriving : -arriving;
            queue.Enqueue(conductor.From == terminal ? conductor.To : conductor.From);
        }
    }

    /// <summary>Amps from a terminal into its part; null where several terminals of the part are one node.</summary>
    private double? Inside(TerminalName terminal)
    {
        var network = _point.Network;
        if (!network.HasTerminal(terminal))
        {
            return null;
        }

        var part = network.Circuit.Find(terminal.Part);
        var node = network.NodeOf(terminal);
        if (part is { IsPluggable: true })
        {
            return network.BranchesOf(terminal.ToString()) is [var socket, ..] ? Into(node, socket) : null;
        }

        if (part is Splice or Metal or Ground)
        {
            return 0;
        }

        if (part is Connector)
        {
            return network.BranchesOf($"{part.Id}.{terminal.Name[..^1]}") is [var cavity, ..] ? Into(node, cavity) : null;
        }

        if (part is null || part.Terminals.Any(t => t != terminal.Name && network.NodeOf(new(part.Id, t)) == node))
        {
            return null;
        }

        var sum = 0.0;
        for (var i = 0; i < network.Branches.Length; i++)
        {
            if (network.Branches[i].Owner == part.Id)
            {
                sum += Into(node, i);
            }
        }

        return sum;
    }

    private double Into(int node, int branch)
    {
        var ends = _point.Network.Branches[branch];
        return (ends.From == node ? _point.Amps(branch) : 0) - (ends.To == node ? _point.Amps(branch) : 0);
    }
}
