using System.Collections.Concurrent;
using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Devices;
using Halfsplit.Simulation.Networks;

namespace Halfsplit.Simulation.Compiled;

/// <summary>
/// A circuit as nodes, branches and devices: everything that does not depend on faults, conditions or arrangements.
/// Built once per circuit; safe to share between threads.
/// </summary>
public sealed class CircuitNetwork
{
    private readonly Dictionary<TerminalName, int> _nodes;
    private readonly Dictionary<string, int[]> _byTarget;
    private readonly HashSet<int> _busNodes;
    private readonly ConcurrentDictionary<string, NetworkShape> _shapes = new(StringComparer.Ordinal);

    internal CircuitNetwork(
        Circuit circuit,
        Dictionary<TerminalName, int> nodes,
        ImmutableArray<string> nodeNames,
        ImmutableArray<NetworkBranch> branches,
        ImmutableArray<Device> devices)
    {
        Circuit = circuit;
        _nodes = nodes;
        NodeNames = nodeNames;
        Branches = branches;
        Devices = devices;
        _byTarget = branches
            .Select((branch, index) => (branch, index))
            .Where(p => p.branch.Target is not null)
            .GroupBy(p => p.branch.Target!, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Select(p => p.index).ToArray(), StringComparer.Ordinal);
        var offset = 0;
        for (var i = 0; i < devices.Length; i++)
        {
            devices[i].Slot = i;
            devices[i].Offset = offset;
            offset += devices[i].ParameterCount;
        }

        ParameterCount = offset;
        Fixed = InStage(devices, DeviceStage.Fixed);
        Fast = InStage(devices, DeviceStage.Fast);
        Slow = InStage(devices, DeviceStage.Slow);
        Melting = InStage(devices, DeviceStage.Melting);
        Stamping = [.. devices.Where(d => d.Stage != DeviceStage.Fixed)];
        _busNodes = [.. circuit.Parts.OfType<Module>()
            .SelectMany(m => m.Buses.SelectMany(b => Reached(new TerminalName(m.Id, b))))];
    }

    public Circuit Circuit { get; }

    /// <summary>One terminal's name for each node, the first in the order of the sheet.</summary>
    public ImmutableArray<string> NodeNames { get; }

    public ImmutableArray<NetworkBranch> Branches { get; }

    internal ImmutableArray<Device> Devices { get; }

    /// <summary>The devices that stamp once and never change, in the order of all devices.</summary>
    internal ImmutableArray<Device> Fixed { get; }

    /// <summary>Diodes and filaments.</summary>
    internal ImmutableArray<Device> Fast { get; }

    /// <summary>Relays, motors and modules.</summary>
    internal ImmutableArray<Device> Slow { get; }

    /// <summary>Fuses and protectors.</summary>
    internal ImmutableArray<Device> Melting { get; }

    /// <summary>All that may stamp anew with every solution.</summary>
    internal ImmutableArray<Device> Stamping { get; }

    internal int ParameterCount { get; }

    /// <summary>The node of a terminal; −1 is the reference, the battery's negative post.</summary>
    /// <exception cref="KeyNotFoundException">The circuit has no such terminal.</exception>
    public int NodeOf(TerminalName terminal) => _nodes.TryGetValue(terminal, out var node)
        ? node
        : throw new KeyNotFoundException($"The circuit has no terminal {terminal}.");

    public bool HasTerminal(TerminalName terminal) => _nodes.ContainsKey(terminal);

    /// <summary>The branches that a fault's name for a thing stands for; empty if none.</summary>
    public ReadOnlySpan<int> BranchesOf(string target) =>
        _byTarget.TryGetValue(target, out var found) ? found : [];

    /// <summary>True if only wires, plugs and sockets lie between two terminals: what loads one loads the other.</summary>
    public bool IsFedThroughSmallParts(TerminalName first, TerminalName second)
    {
        return Reached(first).Contains(NodeOf(second));
    }

    /// <summary>True if a terminal hangs on a wire that carries a module's messages.</summary>
    public bool IsBus(TerminalName terminal) => _busNodes.Contains(NodeOf(terminal));

    private static ImmutableArray<Device> InStage(ImmutableArray<Device> devices, DeviceStage stage) =>
        [.. devices.Where(d => d.Stage == stage)];

    /// <summary>The nodes joined to a terminal by wires, plugs and sockets.</summary>
    private HashSet<int> Reached(TerminalName terminal)
    {
        var seen = new HashSet<int> { NodeOf(terminal) };
        var queue = new Queue<int>(seen);
        while (queue.TryDequeue(out var node))
        {
            foreach (var branch in Branches)
            {
                if (branch.Use is BranchUse.Wire or BranchUse.Cavity or BranchUse.Socket && (branch.From == node || branch.To == node))
                {
                    var other = branch.From == node ? branch.To : branch.From;
                    if (other >= 0 && seen.Add(other))
                    {
                        queue.Enqueue(other);
                    }
                }
            }
        }

        return seen;
    }

    /// <summary>The solver's shape with extra branches laid on (jumpers, shorts, lamps).</summary>
    internal NetworkShape ShapeWith(ReadOnlySpan<Attachment> attachments)
    {
        var key = "";
        foreach (var attachment in attachments)
        {
            key += $"{attachment.From},{attachment.To};";
        }

        if (_shapes.TryGetValue(key, out var known))
        {
            return known;
        }

        var branches = new Branch[Branches.Length + attachments.Length];
        for (var i = 0; i < Branches.Length; i++)
        {
            branches[i] = new Branch(Branches[i].From, Branches[i].To);
        }

        for (var i = 0; i < attachments.Length; i++)
        {
            branches[Branches.Length + i] = new Branch(attachments[i].From, attachments[i].To);
        }

        return _shapes.GetOrAdd(key, NetworkShape.Create(NodeNames.Length, branches));
    }
}
