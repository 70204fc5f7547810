using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Diagnosis.Checks;

/// <summary>A terminal that a lead can touch in an arrangement.</summary>
/// <param name="Place">Where it is; null: at hand.</param>
public sealed record TestPoint(TerminalName Terminal, int Node, Place? Place)
{
    public double Reach => Place?.Reach ?? 0;
}

/// <summary>Which terminals can be touched, given what is unplugged and removed.</summary>
public static class TestPoints
{
    /// <summary>
    /// One point per node, the handiest terminal first: battery posts, fuse tabs, connector cavities, then the rest.
    /// </summary>
    public static ImmutableArray<TestPoint> Touchable(
        CircuitNetwork network, Arrangement arrangement, Func<Part, bool> isReachable)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(arrangement);
        ArgumentNullException.ThrowIfNull(isReachable);
        var seen = new HashSet<int>();
        var points = ImmutableArray.CreateBuilder<TestPoint>();
        foreach (var (terminal, part, _) in network.Circuit.Terminals
            .Select(t => (Terminal: t, Part: network.Circuit[t.Part], Rank: 0))
            .Where(t => isReachable(t.Part) && !network.IsBus(t.Terminal) && CanTouch(t.Part, t.Terminal.Name, arrangement))
            .Select((t, order) => (t.Terminal, t.Part, Rank: (Handiness(t.Part) * 10000) + order))
            .OrderBy(t => t.Rank))
        {
            var node = network.NodeOf(terminal);
            if (seen.Add(node))
            {
                points.Add(new TestPoint(terminal, node, network.Circuit.FindPlace(part.Notes.Place)));
            }
        }

        return points.ToImmutable();
    }

    /// <summary>The ends of a wire at which a clamp can go round it: the body is everywhere, but not where a wire meets it.</summary>
    public static IEnumerable<TerminalName> ClampEnds(Circuit circuit, Wire wire)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(wire);
        TerminalName[] ends = [wire.From, wire.To];
        var placed = Array.FindAll(ends, e => circuit.Find(e.Part)?.Notes.Place is not null);
        return placed.Length > 0 ? placed : ends;
    }

    private static bool CanTouch(Part part, string terminal, Arrangement arrangement)
    {
        if (!part.Notes.Probe)
        {
            return false;
        }

        var removed = arrangement.Removed.Contains(part.Id);
        return part switch
        {
            Splice => false,
            Metal => true,
            Connector connector => arrangement.Unplugged.Contains(part.Id) || !connector.Sealed,
            // In its socket a blade fuse shows its two tabs; the socket only when it is pulled.
            Fuse { IsPluggable: true } => removed != terminal.EndsWith('p'),
            // A relay in its socket hides everything; its own pins are reached on the bench.
            Relay => removed && !terminal.EndsWith('p'),
            _ => true,
        };
    }

    private static int Handiness(Part part) => part switch
    {
        Battery => 0,
        Metal => 1,
        Fuse => 2,
        Connector => 3,
        Relay => 4,
        Ground => 5,
        _ => 6,
    };
}
