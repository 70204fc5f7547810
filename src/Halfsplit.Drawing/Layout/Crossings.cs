using Halfsplit.Drawing.Schematic;

namespace Halfsplit.Drawing.Layout;

/// <summary>Counts the crossings that an order of boxes and ports makes.</summary>
internal static class Crossings
{
    /// <summary>Where a port stands in its row: the box's column, and its own share of the box.</summary>
    public static double Position(Port port)
    {
        var ports = port.Side == Side.Top ? port.Box.Top : port.Box.Bottom;
        if (ports.Count < 2)
        {
            return port.Box.Column + 0.5;
        }

        var index = ports.IndexOf(port);
        index = port.Box.IsMirrored ? ports.Count - 1 - index : index;
        return port.Box.Column + ((index + 0.5) / ports.Count);
    }

    public static int Count(Grid grid) => grid.Channels.Sum(Count);

    /// <summary>Pairs of links that change sides, by a binary indexed tree.</summary>
    private static int Count(List<Link> links)
    {
        var ends = links.Select(l => (Upper: Position(l.Upper), Lower: Position(l.Lower))).OrderBy(e => e.Upper).ThenBy(e => e.Lower).ToArray();
        var rank = ends.Select(e => e.Lower).Distinct().Order().Select((x, i) => (x, i)).ToDictionary(p => p.x, p => p.i + 1);
        var tree = new int[rank.Count + 1];
        var (count, seen) = (0, 0);
        for (var i = 0; i < ends.Length;)
        {
            // Links of one port never cross each other, so they are entered only after all of them have asked.
            var first = i;
            for (; i < ends.Length && ends[i].Upper == ends[first].Upper; i++)
            {
                var below = 0;
                for (var at = rank[ends[i].Lower]; at > 0; at -= at & -at)
                {
                    below += tree[at];
                }

                count += seen - below;
            }

            for (var entered = first; entered < i; entered++, seen++)
            {
                for (var at = rank[ends[entered].Lower]; at < tree.Length; at += at & -at)
                {
                    tree[at]++;
                }
            }
        }

        return count;
    }

    /// <summary>Crossings between the links of two boxes of one row if the first stands left of the second.</summary>
    public static int Between(Box left, Box right) => Between(left.Top, right.Top) + Between(left.Bottom, right.Bottom);

    private static int Between(List<Port> left, List<Port> right)
    {
        var count = 0;
        foreach (var first in left.SelectMany(p => p.Links))
        {
            foreach (var second in right.SelectMany(p => p.Links))
            {
                var (a, b) = left[0].Side == Side.Top ? (first.Upper, second.Upper) : (first.Lower, second.Lower);
                count += Position(a) > Position(b) ? 1 : 0;
            }
        }

        return count;
    }

    /// <summary>Crossings among the links of one box.</summary>
    public static int Within(Box box) => Within(box.Top, box.IsMirrored) + Within(box.Bottom, box.IsMirrored);

    private static int Within(List<Port> ports, bool isMirrored)
    {
        var count = 0;
        for (var i = 0; i < ports.Count; i++)
        {
            for (var j = i + 1; j < ports.Count; j++)
            {
                count += isMirrored ? Between([ports[j]], [ports[i]]) : Between([ports[i]], [ports[j]]);
            }
        }

        return count;
    }
}
