using Halfsplit.Drawing.Schematic;

namespace Halfsplit.Drawing.Layout;

/// <summary>The boxes row by row, with long links cut into pieces from each row to the next.</summary>
internal sealed class Grid
{
    public Grid(Graph graph)
    {
        Graph = graph;
        var rows = graph.Boxes.Count == 0 ? 0 : graph.Boxes.Max(b => b.Row) + 1;
        Rows = [.. Enumerable.Range(0, rows).Select(_ => new List<Box>())];
        Channels = [.. Enumerable.Range(0, Math.Max(0, rows - 1)).Select(_ => new List<Link>())];
        foreach (var box in graph.Boxes)
        {
            Rows[box.Row].Add(box);
        }

        foreach (var link in graph.Links)
        {
            Cut(link);
        }

        RelinkPorts();
    }

    public Graph Graph { get; }

    public List<List<Box>> Rows { get; }

    /// <summary>The links between each row and the next; as many as there are rows less one.</summary>
    public List<List<Link>> Channels { get; }

    public IEnumerable<Box> Boxes => Rows.SelectMany(r => r);

    /// <summary>Numbers the boxes of a row as they stand.</summary>
    public void Number(int row)
    {
        for (var i = 0; i < Rows[row].Count; i++)
        {
            Rows[row][i].Column = i;
        }
    }

    private void Cut(Link link)
    {
        var upper = link.Upper;
        for (var row = link.Upper.Box.Row + 1; row < link.Lower.Box.Row; row++)
        {
            var route = Graph.Add(new RouteBox { Row = row });
            Rows[row].Add(route);
            var (top, bottom) = (new Port(route, Side.Top, null), new Port(route, Side.Bottom, null));
            route.Top.Add(top);
            route.Bottom.Add(bottom);
            Channels[row - 1].Add(new Link(upper, top, link.Conductor, link.IsReversed));
            upper = bottom;
        }

        Channels[link.Lower.Box.Row - 1].Add(new Link(upper, link.Lower, link.Conductor, link.IsReversed));
    }

    private void RelinkPorts()
    {
        foreach (var port in Graph.Boxes.SelectMany(b => b.Ports))
        {
            port.Links.Clear();
        }

        foreach (var link in Channels.SelectMany(c => c))
        {
            link.Attach();
        }
    }
}
