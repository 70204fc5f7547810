using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Symbols;

namespace Halfsplit.Drawing.Layout;

/// <summary>
/// Gives every box its x. Neighbours keep their distance; beyond that, link after link is made straight if the distances allow
/// it, the long ones first. The distances and the straight links together are difference constraints, kept feasible by
/// raising only what a new one moves; a straight link that would close a circle of too little room is given up.
/// </summary>
internal sealed class Columns
{
    private const double Gap = 9, FrameGap = 10;
    private const int RelaxPasses = 40;
    private const double Exact = 1e-6;

    private readonly Grid _grid;
    private readonly double[] _x;
    private readonly List<(int Other, double Shift)>[] _straight;
    private readonly Box[] _boxes;

    private Columns(Grid grid)
    {
        _grid = grid;
        _boxes = [.. grid.Graph.Boxes];
        _x = new double[_boxes.Length];
        _straight = [.. _boxes.Select(_ => new List<(int, double)>())];
    }

    public static void Place(Grid grid)
    {
        var columns = new Columns(grid);
        columns.Pack();
        foreach (var link in columns.ByImportance())
        {
            columns.TryStraighten(link);
        }

        columns.Pack();
        columns.Relax();
        columns.Write();
    }

    private Box? Left(Box box) => box.Column > 0 ? _grid.Rows[box.Row][box.Column - 1] : null;

    private Box? Right(Box box) => box.Column + 1 < _grid.Rows[box.Row].Count ? _grid.Rows[box.Row][box.Column + 1] : null;

    /// <summary>From one left edge to the next.</summary>
    private static double Distance(Box left, Box right)
    {
        var between = left is RouteBox && right is RouteBox ? 2
            : left.IsFramed != right.IsFramed || left.Place != right.Place ? Gap + FrameGap : Gap;
        return left.Width + between + right.FramePad;
    }

    /// <summary>Everything as far left as the constraints allow.</summary>
    private void Pack()
    {
        Array.Fill(_x, 0);
        var queue = new Queue<Box>(_boxes);
        while (queue.TryDequeue(out var box))
        {
            foreach (var (other, least) in Pushed(box))
            {
                if (_x[other.Order] < least - Exact)
                {
                    _x[other.Order] = least;
                    queue.Enqueue(other);
                }
            }
        }
    }

    private IEnumerable<(Box Other, double Least)> Pushed(Box box)
    {
        if (Right(box) is { } right)
        {
            yield return (right, _x[box.Order] + Distance(box, right));
        }

        foreach (var (other, shift) in _straight[box.Order])
        {
            yield return (_boxes[other], _x[box.Order] + shift);
        }
    }

    /// <summary>Long wires first, then labels, then symbols; of the links of one port, the middle one first.</summary>
    private IEnumerable<Link> ByImportance() => _grid.Channels.SelectMany(c => c)
        .Where(l => !l.Upper.IsPhantom && !l.Lower.IsPhantom && l.Lower.Box != _grid.Graph.Rail)
        .Select((link, i) => (link, i))
        .OrderBy(p => Rank(p.link)).ThenBy(p => OffMiddle(p.link)).ThenBy(p => p.i)
        .Select(p => p.link);

    private static int Rank(Link link) => (link.Upper.Box, link.Lower.Box) switch
    {
        (RouteBox, RouteBox) => 0,
        (RouteBox, _) or (_, RouteBox) => 1,
        (LabelBox, _) or (_, LabelBox) => 2,
        _ => 3,
    };

    private static int OffMiddle(Link link) =>
        OffMiddle(link.Upper, link, l => Crossings.Position(l.Lower)) + OffMiddle(link.Lower, link, l => Crossings.Position(l.Upper));

    private static int OffMiddle(Port port, Link link, Func<Link, double> position)
    {
        if (port.Links.Count < 2)
        {
            return 0;
        }

        var sorted = port.Links.OrderBy(position).ToList();
        return Math.Abs((2 * sorted.IndexOf(link)) - (sorted.Count - 1));
    }

    private void TryStraighten(Link link)
    {
        var (upper, lower) = (link.Upper.Box.Order, link.Lower.Box.Order);
        if (upper == lower)
        {
            return;
        }

        var shift = link.Upper.Offset - link.Lower.Offset;
        var before = new Dictionary<int, double>();
        if (Raise(lower, _x[upper] + shift, upper, before) && Raise(upper, _x[lower] - shift, lower, before))
        {
            _straight[upper].Add((lower, shift));
            _straight[lower].Add((upper, -shift));
            return;
        }

        foreach (var (box, x) in before)
        {
            _x[box] = x;
        }
    }

    /// <summary>Moves a box to the right with all that it pushes; false if that would push the fixed one.</summary>
    private bool Raise(int start, double least, int fixedBox, Dictionary<int, double> before)
    {
        if (_x[start] >= least - Exact)
        {
            return true;
        }

        before.TryAdd(start, _x[start]);
        _x[start] = least;
        var queue = new Queue<Box>();
        queue.Enqueue(_boxes[start]);
        while (queue.TryDequeue(out var box))
        {
            foreach (var (other, needed) in Pushed(box))
            {
                if (_x[other.Order] >= needed - Exact)
                {
                    continue;
                }

                if (other.Order == fixedBox)
                {
                    return false;
                }

                before.TryAdd(other.Order, _x[other.Order]);
                _x[other.Order] = needed;
                queue.Enqueue(other);
            }
        }

        return true;
    }

    /// <summary>What is joined by straight links moves as one towards what it is linked to, as far as there is room.</summary>
    private void Relax()
    {
        var block = BlocksOf(out var blocks);
        for (var pass = 0; pass < RelaxPasses; pass++)
        {
            var order = blocks.OrderBy(b => b.Min(i => _x[i])).ThenBy(b => b[0]).ToList();
            if (pass % 2 == 0)
            {
                order.Reverse();
            }

            var moved = false;
            foreach (var members in order)
            {
                moved |= Move(members, block);
            }

            if (!moved)
            {
                break;
            }
        }
    }

    private bool Move(List<int> members, int[] block)
    {
        var (toLeft, toRight) = (double.MaxValue, double.MaxValue);
        var wishes = new List<double>();
        foreach (var box in members.Select(i => _boxes[i]))
        {
            if (Left(box) is { } left && block[left.Order] != block[box.Order])
            {
                toLeft = Math.Min(toLeft, _x[box.Order] - _x[left.Order] - Distance(left, box));
            }

            if (Right(box) is { } right && block[right.Order] != block[box.Order])
            {
                toRight = Math.Min(toRight, _x[right.Order] - _x[box.Order] - Distance(box, right));
            }

            foreach (var port in box.Ports)
            {
                foreach (var link in port.Links)
                {
                    var other = port.Side == Side.Top ? link.Upper : link.Lower;
                    if (block[other.Box.Order] != block[box.Order] && other.Box != _grid.Graph.Rail && !other.IsPhantom)
                    {
                        wishes.Add(_x[other.Box.Order] + other.Offset - _x[box.Order] - port.Offset);
                    }
                }
            }
        }

        if (wishes.Count == 0)
        {
            return false;
        }

        wishes.Sort();
        var wish = (wishes[(wishes.Count - 1) / 2] + wishes[wishes.Count / 2]) / 2;
        var step = Math.Clamp(wish, -Math.Max(0, toLeft), Math.Max(0, toRight));
        if (Math.Abs(step) < 0.01)
        {
            return false;
        }

        foreach (var i in members)
        {
            _x[i] += step;
        }

        return true;
    }

    private int[] BlocksOf(out List<List<int>> blocks)
    {
        var block = new int[_boxes.Length];
        Array.Fill(block, -1);
        blocks = [];
        for (var start = 0; start < block.Length; start++)
        {
            if (block[start] >= 0 || _boxes[start] == _grid.Graph.Rail)
            {
                continue;
            }

            var members = new List<int> { start };
            block[start] = blocks.Count;
            for (var i = 0; i < members.Count; i++)
            {
                foreach (var (other, _) in _straight[members[i]])
                {
                    if (block[other] < 0)
                    {
                        block[other] = blocks.Count;
                        members.Add(other);
                    }
                }
            }

            blocks.Add(members);
        }

        return block;
    }

    private void Write()
    {
        var placed = _boxes.Where(b => b != _grid.Graph.Rail).ToList();
        var least = placed.Count == 0 ? 0 : placed.Min(b => _x[b.Order] - b.FramePad);
        foreach (var box in placed)
        {
            box.X = Math.Round(_x[box.Order] - least);
        }

        if (_grid.Graph.Rail is BarBox { Top: [var port, ..] } rail)
        {
            // The rail lies under everything that comes down to it.
            var ends = port.Links.Select(l => l.Upper.X).ToList();
            rail.X = ends.Min() - port.Offset;
            rail.Rail = (port.Offset - 14, ends.Max() - rail.X + 14);
        }
    }
}
