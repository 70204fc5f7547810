using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Lint;

/// <summary>What joins two terminals.</summary>
internal enum EdgeKind
{
    /// <summary>A wire.</summary>
    Wire,

    /// <summary>They touch: joint, connector cavity, ground point on its metal.</summary>
    Touch,

    /// <summary>A fuse, breaker or PTC.</summary>
    Protection,

    /// <summary>A contact of a switch or relay, or a diode: conducts in some state.</summary>
    Contact,

    /// <summary>A resistor or sensor.</summary>
    Resistance,

    /// <summary>A module's output to its feed or ground.</summary>
    Output,

    /// <summary>An alternator's field, from D+ to its ground.</summary>
    Field,

    /// <summary>From an alternator's B+ to its D+, which has the same volts while it gives.</summary>
    Generator,

    /// <summary>A load or a coil.</summary>
    Consumer,
}

/// <param name="Part">The part whose inside it is; null for wires and joints.</param>
/// <param name="Wire">The wire, if it is one.</param>
internal readonly record struct Edge(TerminalName From, TerminalName To, EdgeKind Kind, string? Part, Wire? Wire);

/// <summary>Which terminals hang together, and through what.</summary>
internal sealed class CircuitGraph
{
    private readonly Dictionary<TerminalName, List<Edge>> _edges = [];
    private readonly HashSet<TerminalName> _wired = [];
    private readonly HashSet<TerminalName> _fed;
    private readonly HashSet<TerminalName> _grounded;

    public CircuitGraph(Circuit circuit)
    {
        Positive = new TerminalName(circuit.Battery.Id, "pos");
        Negative = new TerminalName(circuit.Battery.Id, "neg");
        foreach (var wire in circuit.Wires)
        {
            Outside(wire.From, wire.To, EdgeKind.Wire, wire);
        }

        foreach (var joint in circuit.Joints)
        {
            Outside(joint.First, joint.Second, EdgeKind.Touch, null);
        }

        foreach (var part in circuit.Parts)
        {
            Inside(circuit, part);
        }

        // D+ is fed from inside and grounded by its field; what feeds it does not go on to ground, nor the other way round.
        _fed = Reach(Positive, e => e.Kind is not (EdgeKind.Consumer or EdgeKind.Field));
        _grounded = Reach(Negative, e => e.Kind is not (EdgeKind.Consumer or EdgeKind.Generator));
    }

    public TerminalName Positive { get; }

    public TerminalName Negative { get; }

    public IReadOnlyList<Edge> Edges(TerminalName terminal) => _edges.GetValueOrDefault(terminal) ?? [];

    /// <summary>True if a wire ends here or something is plugged on.</summary>
    public bool IsWired(TerminalName terminal) => _wired.Contains(terminal);

    /// <summary>In some state of switches, relays and outputs the feed gets here without going through a load.</summary>
    public bool IsFed(TerminalName terminal) => _fed.Contains(terminal);

    /// <summary>In some state one gets from here to the negative post without going through a load.</summary>
    public bool IsGrounded(TerminalName terminal) => _grounded.Contains(terminal);

    /// <summary>
    /// All terminals one can come to from the start. A part's inside is never crossed twice in a row (30 to 87 and
    /// back to 87a); nothing goes on beyond the battery's posts.
    /// </summary>
    /// <param name="passes">Which edges may be taken.</param>
    /// <param name="stopsAt">Terminals that are reached but not left.</param>
    public HashSet<TerminalName> Reach(
        TerminalName start, Func<Edge, bool> passes, Func<TerminalName, bool>? stopsAt = null, Action<Edge>? onEdge = null)
    {
        var reached = new HashSet<TerminalName> { start };
        var queue = new Queue<(TerminalName At, string? Crossed)>();
        var seen = new HashSet<(TerminalName, string?)> { (start, null) };
        queue.Enqueue((start, null));
        while (queue.TryDequeue(out var current))
        {
            var isEnd = current.At == Positive || current.At == Negative || (stopsAt?.Invoke(current.At) ?? false);
            if (isEnd && current.At != start)
            {
                continue;
            }

            foreach (var edge in Edges(current.At))
            {
                if (!passes(edge) || (edge.Part is not null && edge.Part == current.Crossed))
                {
                    continue;
                }

                reached.Add(edge.To);
                onEdge?.Invoke(edge);
                if (seen.Add((edge.To, edge.Part)))
                {
                    queue.Enqueue((edge.To, edge.Part));
                }
            }
        }

        return reached;
    }

    private void Outside(TerminalName a, TerminalName b, EdgeKind kind, Wire? wire)
    {
        _wired.Add(a);
        _wired.Add(b);
        Both(a, b, kind, null, wire);
    }

    private void Inside(Circuit circuit, Part part)
    {
        switch (part)
        {
            case Connector:
                foreach (var cavity in circuit.Cavities(part.Id))
                {
                    Join(part, cavity + "a", cavity + "b", EdgeKind.Touch);
                }

                break;
            case Ground ground:
                Both(new TerminalName(ground.Id), new TerminalName(ground.Metal), EdgeKind.Touch, ground.Id, null);
                break;
            case Fuse or Breaker or Ptc:
                Join(part, "1", "2", EdgeKind.Protection);
                break;
            case Switch choice:
                foreach (var contact in choice.Positions.Values.SelectMany(c => c).Distinct())
                {
                    Join(part, contact.From, contact.To, EdgeKind.Contact);
                }

                break;
            case Relay relay:
                Join(part, "86", "85", EdgeKind.Consumer);
                foreach (var contact in relay.Terminals.Where(t => t.StartsWith("87", StringComparison.Ordinal)))
                {
                    Join(part, "30", contact, EdgeKind.Contact);
                }

                break;
            case Diode:
                Join(part, "a", "k", EdgeKind.Contact);
                break;
            case Resistor or Sensor { Type: not SensorType.Potentiometer }:
                Join(part, "1", "2", EdgeKind.Resistance);
                break;
            case Sensor:
                Join(part, "supply", "ground", EdgeKind.Resistance);
                Join(part, "signal", "ground", EdgeKind.Resistance);
                break;
            case Module module:
                foreach (var output in module.Outputs)
                {
                    foreach (var rail in output.Side == OutputSide.Low ? module.Grounds : module.Feeds)
                    {
                        Join(part, output.Name, rail, EdgeKind.Output);
                    }
                }

                break;
            case Alternator:
                Join(part, "D+", "31", EdgeKind.Field);
                Join(part, "D+", "B+", EdgeKind.Generator);
                break;
            case Load load:
                foreach (var terminal in load.Terminals.Where(t => t != load.Across.Neg))
                {
                    Join(part, terminal, load.Across.Neg, EdgeKind.Consumer);
                }

                break;
            default:
                break;
        }
    }

    private void Join(Part part, string a, string b, EdgeKind kind) =>
        Both(new TerminalName(part.Id, a), new TerminalName(part.Id, b), kind, part.Id, null);

    private void Both(TerminalName a, TerminalName b, EdgeKind kind, string? part, Wire? wire)
    {
        One(a, new Edge(a, b, kind, part, wire));
        One(b, new Edge(b, a, kind, part, wire));
    }

    private void One(TerminalName from, Edge edge)
    {
        if (!_edges.TryGetValue(from, out var list))
        {
            _edges.Add(from, list = []);
        }

        list.Add(edge);
    }
}
