using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Symbols;

namespace Halfsplit.Drawing.Schematic;

/// <summary>
/// Turns a circuit into boxes and downward links. Every part is a symbol, every cavity of a connector one of its own, every
/// wire has its label as a box in its way, so that nothing drawn later can lie on a text.
/// </summary>
internal sealed class GraphBuilder
{
    private readonly Circuit _circuit;
    private readonly Graph _graph;
    private readonly Potentials _potentials;
    private readonly Dictionary<TerminalName, Port> _ports = [];
    private readonly Dictionary<string, BarBox> _bars = new(StringComparer.Ordinal);

    private GraphBuilder(Circuit circuit)
    {
        _circuit = circuit;
        _graph = new Graph(circuit);
        _potentials = new Potentials(circuit);
    }

    /// <summary>A conductor between two ports, before it is known which is above.</summary>
    private sealed record Connection(Port First, Port Second, Conductor Conductor);

    public static Graph Build(Circuit circuit)
    {
        var builder = new GraphBuilder(circuit);
        builder.AddParts();
        builder.AddConductors();
        return builder._graph;
    }

    private void AddParts()
    {
        var wired = _circuit.Wires.SelectMany(w => (TerminalName[])[w.From, w.To])
            .Concat(_circuit.Joints.SelectMany(j => (TerminalName[])[j.First, j.Second]))
            .Select(t => t.Part)
            .Concat(_circuit.Parts.OfType<Ground>().Select(g => g.Metal))
            .ToHashSet(StringComparer.Ordinal);
        foreach (var part in _circuit.Parts.OrderBy(p => p is not Battery))
        {
            if (part is Connector connector)
            {
                var isFirst = true;
                foreach (var cavity in _circuit.Cavities(connector.Id))
                {
                    Take(new CavityBox(connector, cavity, isFirst, _potentials));
                    isFirst = false;
                }
            }
            else if (part is not Metal || wired.Contains(part.Id))
            {
                Take(SymbolChoice.For(part, _potentials));
            }
        }
    }

    private void Take(PartBox box)
    {
        _graph.Add(box);
        if (box is BarBox bar)
        {
            _bars[bar.Part.Id] = bar;
            return;
        }

        foreach (var port in box.Ports.Where(p => p.Terminal is not null))
        {
            _ports[new(box.Part.Id, port.Terminal!)] = port;
        }
    }

    private void AddConductors()
    {
        var connections = new List<Connection>();
        var ends = _circuit.Wires.Select(w => (w.From, w.To, (Wire?)w))
            .Concat(_circuit.Joints.Select(j => (j.First, j.Second, (Wire?)null)))
            .Concat(_circuit.Parts.OfType<Ground>().Select(g => (new TerminalName(g.Id), new TerminalName(g.Metal), (Wire?)null)));
        foreach (var (from, to, wire) in ends)
        {
            var conductor = new Conductor(_graph.Conductors.Count, from, to, wire);
            _graph.Conductors.Add(conductor);
            if (PortsOf(from, to) is { } ports && ports.First != ports.Second)
            {
                connections.Add(new Connection(ports.First, ports.Second, conductor));
            }
        }

        var backward = Circles.BackwardOf(
            _graph.Boxes, connections.Select(c => (Upper(c).Box, Lower(c).Box, IsPlain(c))).ToList());
        for (var i = 0; i < connections.Count; i++)
        {
            Lay(connections[i], backward.Contains(i));
        }

        _graph.Rail = FindRail();
    }

    /// <summary>The ports of a conductor's ends. A bar's is at its top for what comes from above, at its bottom for the rest.</summary>
    private (Port First, Port Second)? PortsOf(TerminalName from, TerminalName to)
    {
        if (from.Part == to.Part && _bars.ContainsKey(from.Part))
        {
            return null;
        }

        var (first, second) = (_ports.GetValueOrDefault(from), _ports.GetValueOrDefault(to));
        var isDown = !_potentials.IsBelow(from, to);
        var firstSide = second is not null ? Opposite(second.Side) : isDown ? Side.Bottom : Side.Top;
        first ??= _bars.TryGetValue(from.Part, out var bar) ? bar.PortAt(firstSide) : null;
        second ??= first is not null && _bars.TryGetValue(to.Part, out bar) ? bar.PortAt(Opposite(first.Side)) : null;
        return first is not null && second is not null ? (first, second) : null;
    }

    private static Side Opposite(Side side) => side == Side.Top ? Side.Bottom : Side.Top;

    private static bool IsPlain(Connection c) => c.First.Side != c.Second.Side;

    private static Port Upper(Connection c) => c.First.Side == Side.Bottom ? c.First : c.Second;

    private static Port Lower(Connection c) => c.First.Side == Side.Bottom ? c.Second : c.First;

    private void Lay(Connection connection, bool isBackward)
    {
        var (first, second, conductor) = connection;
        if (IsPlain(connection) && !isBackward)
        {
            Down(Upper(connection), Lower(connection), conductor, first.Side != Side.Bottom);
        }
        else if (IsPlain(connection))
        {
            // Out at the bottom, back up past both, and in at the top.
            var (below, above) = (Bend(Side.Top), Bend(Side.Bottom));
            _graph.Add(Upper(connection), below, conductor, first.Side != Side.Bottom);
            Down(above, below, conductor, first.Side == Side.Bottom);
            _graph.Add(above, Lower(connection), conductor, first.Side != Side.Bottom);
        }
        else if (first.Side == Side.Bottom)
        {
            var bend = Bend(Side.Top);
            Down(first, bend, conductor, false);
            _graph.Add(second, bend, conductor, true);
        }
        else
        {
            var bend = Bend(Side.Bottom);
            Down(bend, first, conductor, true);
            _graph.Add(bend, second, conductor, false);
        }
    }

    private Port Bend(Side side)
    {
        var bend = _graph.Add(new BendBox());
        var port = new Port(bend, side, null) { IsPhantom = true };
        (side == Side.Top ? bend.Top : bend.Bottom).Add(port);
        return port;
    }

    private void Down(Port upper, Port lower, Conductor conductor, bool isReversed)
    {
        if (conductor.Wire is not { } wire)
        {
            _graph.Add(upper, lower, conductor, isReversed);
            return;
        }

        var label = _graph.Add(new LabelBox(wire));
        var (top, bottom) = (new Port(label, Side.Top, null), new Port(label, Side.Bottom, null));
        label.Top.Add(top);
        label.Bottom.Add(bottom);
        _graph.Add(upper, top, conductor, isReversed);
        _graph.Add(bottom, lower, conductor, isReversed);
    }

    /// <summary>The metal that all current comes down to; none where something hangs below it.</summary>
    private BarBox? FindRail() => _circuit.Parts.OfType<Metal>()
        .Select(m => _bars.GetValueOrDefault(m.Id)).OfType<BarBox>()
        .Where(b => b.Bottom.All(p => p.Links.Count == 0) && b.Top.Any(p => p.Links.Count > 0))
        .OrderByDescending(b => b.Top.Sum(p => p.Links.Count)).ThenBy(b => b.Order)
        .FirstOrDefault();
}
