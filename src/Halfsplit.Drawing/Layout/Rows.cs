using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Symbols;

namespace Halfsplit.Drawing.Layout;

/// <summary>Gives every box its row: below everything it is fed from, and as near to its neighbours as the rest allows.</summary>
internal static class Rows
{
    private const int Passes = 12;

    /// <summary>A ground stands at the foot: the wire to it may be long, the step from it to the metal not.</summary>
    private const int GroundWeight = 8;

    public static void Assign(Graph graph)
    {
        var order = TopDown(graph);
        foreach (var box in order)
        {
            box.Row = Uppers(box).Select(l => l.Upper.Box.Row + 1).DefaultIfEmpty(0).Max();
        }

        var last = graph.Boxes.Count == 0 ? 0 : graph.Boxes.Max(b => b.Row);
        if (graph.Rail is { } rail)
        {
            last = Math.Max(last, graph.Boxes.Where(b => b != rail).Select(b => b.Row + 1).DefaultIfEmpty(0).Max());
            rail.Row = last;
        }

        for (var pass = 0; pass < Passes; pass++)
        {
            for (var i = order.Count - 1; i >= 0; i--)
            {
                Pull(order[i], graph.Rail, last);
            }

            foreach (var box in order)
            {
                Pull(box, graph.Rail, last);
            }
        }

        CloseGaps(graph);
    }

    private static IEnumerable<Link> Uppers(Box box) => box.Top.SelectMany(p => p.Links);

    private static IEnumerable<Link> Lowers(Box box) => box.Bottom.SelectMany(p => p.Links);

    private static int Weight(Link link) => link.Upper.Box is BarBox { Part: Metal or Ground } ? GroundWeight : 1;

    /// <summary>Towards the side that pulls harder, as far as the neighbours let it.</summary>
    private static void Pull(Box box, Box? rail, int last)
    {
        if (box == rail || (box.Top.Count == 0 && box.Bottom.Count == 0))
        {
            return;
        }

        var (up, down, low, high) = (0, 0, 0, rail is null ? last : last - 1);
        foreach (var link in Uppers(box))
        {
            up += Weight(link);
            low = Math.Max(low, link.Upper.Box.Row + 1);
        }

        foreach (var link in Lowers(box))
        {
            down += Weight(link);
            high = Math.Min(high, link.Lower.Box.Row - 1);
        }

        if (up != down && low <= high)
        {
            box.Row = down > up ? high : low;
        }
    }

    /// <summary>Every box after all that feed it.</summary>
    private static List<Box> TopDown(Graph graph)
    {
        var waiting = graph.Boxes.Select(b => Uppers(b).Count()).ToArray();
        var order = new List<Box>(graph.Boxes.Where(b => waiting[b.Order] == 0));
        for (var i = 0; i < order.Count; i++)
        {
            foreach (var link in Lowers(order[i]))
            {
                if (--waiting[link.Lower.Box.Order] == 0)
                {
                    order.Add(link.Lower.Box);
                }
            }
        }

        return order;
    }

    private static void CloseGaps(Graph graph)
    {
        var used = graph.Boxes.Select(b => b.Row).Distinct().Order().ToList();
        var place = used.Select((row, i) => (row, i)).ToDictionary(p => p.row, p => p.i);
        foreach (var box in graph.Boxes)
        {
            box.Row = place[box.Row];
        }
    }
}
