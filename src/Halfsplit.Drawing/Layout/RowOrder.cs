using Halfsplit.Drawing.Schematic;

namespace Halfsplit.Drawing.Layout;

/// <summary>
/// Orders the boxes in their rows, and the free ports on their boxes, so that few wires cross: sweeps by the middle of the
/// neighbours, then swaps of neighbours that help. Starts from the order of the sheet and keeps it where nothing speaks
/// against it, so that one part more leaves the others where they were.
/// </summary>
internal sealed class RowOrder(Grid grid)
{
    private const int MostSweeps = 24, MostIdleSweeps = 6;

    public void Apply()
    {
        Start();
        var best = Keep();
        var least = Crossings.Count(grid);
        for (var (sweep, idle) = (0, 0); sweep < MostSweeps && idle < MostIdleSweeps && least > 0; sweep++)
        {
            Sweep(isDown: sweep % 2 == 0);
            Swap();
            var crossings = Crossings.Count(grid);
            idle++;
            if (crossings < least)
            {
                (least, best, idle) = (crossings, Keep(), 0);
            }
        }

        Restore(best);
    }

    /// <summary>Depth first from the feed, in the order of the sheet.</summary>
    private void Start()
    {
        foreach (var row in grid.Rows)
        {
            row.Clear();
        }

        var seen = new bool[grid.Graph.Boxes.Count];
        var stack = new Stack<Box>();
        foreach (var start in grid.Graph.Boxes)
        {
            if (start.Top.Any(p => p.Links.Count > 0))
            {
                continue;
            }

            stack.Push(start);
            while (stack.TryPop(out var box))
            {
                if (seen[box.Order])
                {
                    continue;
                }

                seen[box.Order] = true;
                grid.Rows[box.Row].Add(box);
                foreach (var link in box.Bottom.SelectMany(p => p.Links).Reverse())
                {
                    stack.Push(link.Lower.Box);
                }
            }
        }

        for (var row = 0; row < grid.Rows.Count; row++)
        {
            grid.Number(row);
        }
    }

    private void Sweep(bool isDown)
    {
        for (var i = 0; i < grid.Rows.Count; i++)
        {
            var row = isDown ? i : grid.Rows.Count - 1 - i;
            var middles = grid.Rows[row].Select(b => Middle(isDown ? b.Top : b.Bottom)).ToArray();
            Sort(grid.Rows[row], middles);
            grid.Number(row);
            foreach (var box in grid.Rows[row])
            {
                OrderPorts(box);
            }
        }
    }

    /// <summary>Boxes without neighbours keep their place; the others are sorted among the places that are left.</summary>
    private static void Sort(List<Box> row, double[] middles)
    {
        var places = Enumerable.Range(0, row.Count).Where(i => !double.IsNaN(middles[i])).ToList();
        var sorted = places.OrderBy(i => middles[i]).ThenBy(i => i).Select(i => row[i]).ToList();
        for (var i = 0; i < places.Count; i++)
        {
            row[places[i]] = sorted[i];
        }
    }

    private static double Middle(List<Port> ports)
    {
        var (sum, count) = (0.0, 0);
        foreach (var port in ports)
        {
            foreach (var link in port.Links)
            {
                sum += Crossings.Position(port.Side == Side.Top ? link.Upper : link.Lower);
                count++;
            }
        }

        return count == 0 ? double.NaN : sum / count;
    }

    private static void OrderPorts(Box box)
    {
        if (box.HasFreePorts)
        {
            Reorder(box.Top);
            Reorder(box.Bottom);
        }
        else if (box.CanMirror)
        {
            var asIs = Crossings.Within(box);
            box.IsMirrored = !box.IsMirrored;
            if (Crossings.Within(box) >= asIs)
            {
                box.IsMirrored = !box.IsMirrored;
            }
        }
    }

    private static void Reorder(List<Port> ports)
    {
        if (ports.Count < 2)
        {
            return;
        }

        var middles = ports.Select(p => Middle([p])).ToArray();
        var sorted = Enumerable.Range(0, ports.Count)
            .OrderBy(i => double.IsNaN(middles[i]) ? double.MaxValue : middles[i]).ThenBy(i => i)
            .Select(i => ports[i]).ToList();
        ports.Clear();
        ports.AddRange(sorted);
    }

    /// <summary>Neighbours change places as long as that takes crossings away.</summary>
    private void Swap()
    {
        for (var (more, pass) = (true, 0); more && pass < 8; pass++)
        {
            more = false;
            for (var row = 0; row < grid.Rows.Count; row++)
            {
                var boxes = grid.Rows[row];
                for (var i = 0; i + 1 < boxes.Count; i++)
                {
                    if (Crossings.Between(boxes[i + 1], boxes[i]) < Crossings.Between(boxes[i], boxes[i + 1]))
                    {
                        (boxes[i], boxes[i + 1]) = (boxes[i + 1], boxes[i]);
                        (boxes[i].Column, boxes[i + 1].Column) = (i, i + 1);
                        more = true;
                    }
                }

                foreach (var box in boxes)
                {
                    OrderPorts(box);
                }
            }
        }
    }

    private sealed record Kept(List<List<Box>> Rows, List<(Box Box, Port[] Top, Port[] Bottom, bool IsMirrored)> Ports);

    private Kept Keep() => new(
        [.. grid.Rows.Select(r => new List<Box>(r))],
        [.. grid.Boxes.Where(b => b.HasFreePorts || b.CanMirror).Select(b => (b, b.Top.ToArray(), b.Bottom.ToArray(), b.IsMirrored))]);

    private void Restore(Kept kept)
    {
        for (var row = 0; row < grid.Rows.Count; row++)
        {
            grid.Rows[row].Clear();
            grid.Rows[row].AddRange(kept.Rows[row]);
            grid.Number(row);
        }

        foreach (var (box, top, bottom, isMirrored) in kept.Ports)
        {
            box.Top.Clear();
            box.Top.AddRange(top);
            box.Bottom.Clear();
            box.Bottom.AddRange(bottom);
            box.IsMirrored = isMirrored;
        }
    }
}
