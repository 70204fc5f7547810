using Halfsplit.Circuits.Model;

namespace Halfsplit.Drawing.Tests.Reading;

/// <summary>Which terminals a drawing joins, found by following its lines, and which the circuit joins.</summary>
internal static class DrawnNets
{
    /// <summary>A name for each terminal's net, the same for all that the lines join.</summary>
    public static Dictionary<string, int> OfLines(DrawnPage page)
    {
        var sets = new Sets(page.Wires.Count + page.Terminals.Count);
        for (var i = 0; i < page.Wires.Count; i++)
        {
            for (var j = i + 1; j < page.Wires.Count; j++)
            {
                var (a, b) = (page.Wires[i], page.Wires[j]);
                // Lines that only cross are not joined: an end of one must lie on the other.
                if (a.Touches(b.X1, b.Y1) || a.Touches(b.X2, b.Y2) || b.Touches(a.X1, a.Y1) || b.Touches(a.X2, a.Y2))
                {
                    sets.Join(i, j);
                }
            }
        }

        var names = new Dictionary<string, int>(StringComparer.Ordinal);
        var at = page.Wires.Count;
        foreach (var (terminal, point) in page.Terminals)
        {
            for (var i = 0; i < page.Wires.Count; i++)
            {
                if (page.Wires[i].Touches(point.X, point.Y))
                {
                    sets.Join(at, i);
                }
            }

            names[terminal] = at++;
        }

        return names.ToDictionary(n => n.Key, n => sets.Of(n.Value));
    }

    public static Dictionary<string, int> OfCircuit(Circuit circuit, IEnumerable<string> terminals)
    {
        var index = terminals.Select((t, i) => (t, i)).ToDictionary(p => p.t, p => p.i);
        var sets = new Sets(index.Count);
        foreach (var (from, to) in circuit.Wires.Select(w => (w.From.ToString(), w.To.ToString()))
            .Concat(circuit.Joints.Select(j => (j.First.ToString(), j.Second.ToString())))
            .Concat(circuit.Parts.OfType<Ground>().Select(g => (g.Id, g.Metal))))
        {
            sets.Join(index[from], index[to]);
        }

        return index.ToDictionary(n => n.Key, n => sets.Of(n.Value));
    }

    private sealed class Sets(int count)
    {
        private readonly int[] _parent = [.. Enumerable.Range(0, count)];

        public int Of(int i)
        {
            while (_parent[i] != i)
            {
                i = _parent[i] = _parent[_parent[i]];
            }

            return i;
        }

        public void Join(int i, int j) => _parent[Of(i)] = Of(j);
    }
}
