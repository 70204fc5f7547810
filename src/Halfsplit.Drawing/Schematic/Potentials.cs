using Halfsplit.Circuits.Model;

namespace Halfsplit.Drawing.Schematic;

/// <summary>
/// How near each terminal is to the feed: 1 at the battery's positive post, 0 at its negative one, in between as if every
/// conductor, contact and part were one and the same resistance and every switch closed. It only tells up from down.
/// </summary>
internal sealed class Potentials
{
    private const int Rounds = 400;
    private const double OverRelaxation = 1.7;
    private const double Tolerance = 1e-4;

    private readonly Dictionary<TerminalName, int> _index = [];
    private readonly List<List<int>> _neighbours = [];
    private readonly double[] _share;

    public Potentials(Circuit circuit)
    {
        foreach (var wire in circuit.Wires)
        {
            Join(wire.From, wire.To);
        }

        foreach (var joint in circuit.Joints)
        {
            Join(joint.First, joint.Second);
        }

        foreach (var part in circuit.Parts)
        {
            Inside(circuit, part);
        }

        var high = Node(new(circuit.Battery.Id, "pos"));
        var low = Node(new(circuit.Battery.Id, "neg"));
        _share = new double[_neighbours.Count];
        Relax(high, low);
    }

    /// <summary>True if the first is nearer the ground by more than the reckoning errs.</summary>
    public bool IsBelow(TerminalName first, TerminalName second) => Of(first) < Of(second) - Tolerance;

    public double Of(TerminalName terminal) => _index.TryGetValue(terminal, out var node) ? _share[node] : 0.5;

    private void Relax(int high, int low)
    {
        Array.Fill(_share, 0.5);
        _share[high] = 1;
        _share[low] = 0;
        for (var round = 0; round < Rounds; round++)
        {
            var most = 0.0;
            for (var node = 0; node < _share.Length; node++)
            {
                if (node == high || node == low || _neighbours[node].Count == 0)
                {
                    continue;
                }

                var sum = 0.0;
                foreach (var neighbour in _neighbours[node])
                {
                    sum += _share[neighbour];
                }

                var step = OverRelaxation * ((sum / _neighbours[node].Count) - _share[node]);
                _share[node] += step;
                most = Math.Max(most, Math.Abs(step));
            }

            if (most < 1e-6)
            {
                break;
            }
        }
    }

    private void Inside(Circuit circuit, Part part)
    {
        TerminalName Of(string name) => new(part.Id, name);
        switch (part)
        {
            case Battery:
                break;
            case Connector:
                foreach (var cavity in circuit.Cavities(part.Id))
                {
                    Join(Of(cavity + "a"), Of(cavity + "b"));
                }

                break;
            case Ground ground:
                Join(Of(""), new(ground.Metal));
                break;
            case Relay relay:
                Join(Of("86"), Of("85"));
                foreach (var contact in relay.Terminals.Where(t => t.StartsWith("87", StringComparison.Ordinal)))
                {
                    Join(Of("30"), Of(contact));
                }

                break;
            case Switch change:
                foreach (var contact in change.Positions.Values.SelectMany(c => c).Distinct())
                {
                    Join(Of(contact.From), Of(contact.To));
                }

                break;
            case Module module:
                Inside(module, Of);
                break;
            case Lamp lamp:
                foreach (var filament in lamp.Filaments)
                {
                    Join(Of(filament.Terminal), Of(lamp.Common));
                }

                break;
            default:
                for (var i = 1; i < part.Terminals.Length; i++)
                {
                    Join(Of(part.Terminals[i - 1]), Of(part.Terminals[i]));
                }

                break;
        }
    }

    private void Inside(Module module, Func<string, TerminalName> of)
    {
        foreach (var ground in module.Grounds)
        {
            foreach (var feed in module.Feeds)
            {
                Join(of(feed), of(ground));
            }
        }

        foreach (var (name, pullsUp) in ModulePins.Signals(module))
        {
            foreach (var end in pullsUp ? module.Feeds : module.Grounds)
            {
                Join(of(name), of(end));
            }
        }
    }

    private void Join(TerminalName first, TerminalName second)
    {
        var (a, b) = (Node(first), Node(second));
        _neighbours[a].Add(b);
        _neighbours[b].Add(a);
    }

    private int Node(TerminalName terminal)
    {
        if (!_index.TryGetValue(terminal, out var node))
        {
            _index[terminal] = node = _neighbours.Count;
            _neighbours.Add([]);
        }

        return node;
    }
}
