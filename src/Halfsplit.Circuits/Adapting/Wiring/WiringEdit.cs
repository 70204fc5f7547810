using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting.Wiring;

/// <summary>
/// A circuit's wiring while it is changed. Paths that nothing touches stay as they were written. Ends of links are
/// good until the next change.
/// </summary>
internal sealed class WiringEdit
{
    private readonly List<Route> _routes;

    public WiringEdit(Circuit circuit)
    {
        _routes = [.. circuit.Paths.Select(p => RouteOf(WiringResolver.Trace(circuit.Parts, p)!.Value, p))];
    }

    /// <summary>Every wire with its ends in the order of its path.</summary>
    public IEnumerable<LinkEnd> Wires => _routes.SelectMany(r => Enumerable.Range(0, r.Links.Count)
        .Where(i => r.Links[i].Wire is not null)
        .Select(i => new LinkEnd(r, r.Links[i], r.Terminals[i], r.Terminals[i + 1])));

    /// <summary>True if a path comes to this part.</summary>
    public bool Mentions(string part) => _routes.Any(r => r.Terminals.Any(t => t.Part == part));

    /// <summary>The links that end at a terminal, those inside parts left out.</summary>
    public List<LinkEnd> LinksAt(TerminalName terminal)
    {
        var found = new List<LinkEnd>();
        foreach (var route in _routes)
        {
            for (var i = 0; i < route.Links.Count; i++)
            {
                if (route.Links[i].IsInside)
                {
                    continue;
                }

                var (from, to) = (route.Terminals[i], route.Terminals[i + 1]);
                if (from == terminal)
                {
                    found.Add(new LinkEnd(route, route.Links[i], from, to));
                }

                if (to == terminal)
                {
                    found.Add(new LinkEnd(route, route.Links[i], to, from));
                }
            }
        }

        return found;
    }

    /// <summary>Puts another wire in the place of one.</summary>
    public void Replace(PathWire old, PathWire present)
    {
        var end = Wires.First(w => ReferenceEquals(w.Link.Wire, old));
        end.Link.Wire = present;
        end.Route.Written = null;
    }

    /// <summary>Puts terminals into a wire: the wire before them, what is inside the part, the wire behind them.</summary>
    public void Insert(PathWire into, IReadOnlyList<TerminalName> middle, PathWire before, PathWire behind)
    {
        var end = Wires.First(w => ReferenceEquals(w.Link.Wire, into));
        var at = end.Route.Links.IndexOf(end.Link);
        end.Route.Terminals.InsertRange(at + 1, middle);
        end.Route.Links.RemoveAt(at);
        end.Route.Links.InsertRange(
            at, [new Link(before, false), .. middle.Skip(1).Select(_ => new Link(null, true)), new Link(behind, false)]);
        end.Route.Written = null;
    }

    /// <summary>Takes one end of a link, <see cref="LinkEnd.Here"/>, to another terminal; the rest of its path stays where it was.</summary>
    public void MoveEnd(LinkEnd link, TerminalName to)
    {
        var (route, at) = (link.Route, link.Route.Links.IndexOf(link.Link));
        if (route.Terminals[at] == link.Here && route.Terminals[at + 1] == link.There)
        {
            Replace(route, Piece(route, 0, at), Changed([to, .. route.Terminals.Skip(at + 1)], [.. route.Links.Skip(at)]));
        }
        else
        {
            Replace(
                route, Changed([.. route.Terminals.Take(at + 1), to], [.. route.Links.Take(at + 1)]),
                Piece(route, at + 1, route.Terminals.Count - 1));
        }
    }

    /// <summary>Takes a link away.</summary>
    public void Remove(LinkEnd link)
    {
        var (route, at) = (link.Route, link.Route.Links.IndexOf(link.Link));
        Replace(route, Piece(route, 0, at), Piece(route, at + 1, route.Terminals.Count - 1));
    }

    /// <summary>Adds a path: terminals with what is between them.</summary>
    public void Add(IEnumerable<TerminalName> terminals, IEnumerable<Link> links) =>
        _routes.Add(Changed([.. terminals], [.. links]));

    /// <summary>Parts every path that runs through this part's inside, so that its terminals stand at ends.</summary>
    public void PartAt(string part)
    {
        for (var i = 0; i < _routes.Count; i++)
        {
            var route = _routes[i];
            var at = Enumerable.Range(0, route.Links.Count)
                .FirstOrDefault(n => route.Links[n].IsInside && route.Terminals[n].Part == part, -1);
            if (at >= 0)
            {
                Replace(route, Piece(route, 0, at), Piece(route, at + 1, route.Terminals.Count - 1));
                i--;
            }
        }
    }

    /// <summary>Puts a terminal in the place of another wherever it stands; what then touches itself goes.</summary>
    public void Substitute(TerminalName old, TerminalName present)
    {
        foreach (var route in _routes.Where(r => r.Terminals.Contains(old)))
        {
            for (var i = 0; i < route.Terminals.Count; i++)
            {
                route.Terminals[i] = route.Terminals[i] == old ? present : route.Terminals[i];
            }

            for (var i = route.Links.Count - 1; i >= 0; i--)
            {
                if (route.Terminals[i] == route.Terminals[i + 1])
                {
                    route.Terminals.RemoveAt(i);
                    route.Links.RemoveAt(i);
                }
            }

            route.Written = null;
        }

        _routes.RemoveAll(r => r.Links.Count == 0);
    }

    /// <summary>Gives a part another name.</summary>
    public void Rename(string old, string present)
    {
        foreach (var route in _routes.Where(r => r.Terminals.Any(t => t.Part == old)))
        {
            for (var i = 0; i < route.Terminals.Count; i++)
            {
                route.Terminals[i] = route.Terminals[i] is var t && t.Part == old ? t with { Part = present } : t;
            }

            if (route.Written is { } written)
            {
                route.Written = new WiringPath([.. written.Items.Select(item => item is PathPart p && p.Part == old ? p with { Part = present } : item)]);
            }
        }
    }

    /// <summary>The paths as a sheet writes them, with these parts.</summary>
    public ImmutableArray<WiringPath> Paths(IReadOnlyCollection<Part> parts) => [.. Joined(parts).Select(r => Written(r, parts))];

    /// <summary>Changed routes that go on at the other side of the part where one ends, put together.</summary>
    private List<Route> Joined(IReadOnlyCollection<Part> parts)
    {
        var routes = _routes.ToList();
        for (var i = 0; i < routes.Count; i++)
        {
            var route = routes[i];
            var part = parts.FirstOrDefault(p => p.Id == route.Terminals[^1].Part);
            var next = route.Written is not null || part is null
                ? null
                : routes.Find(r => r != route && r.Written is null && GoesThrough(part, route.Terminals[^1], r.Terminals[0]));
            if (next is not null)
            {
                routes[i] = Changed(
                    [.. route.Terminals, .. next.Terminals], [.. route.Links, new Link(null, true), .. next.Links]);
                routes.Remove(next);
                i = -1;
            }
        }

        return routes;
    }

    private static bool GoesThrough(Part part, TerminalName from, TerminalName to) => from.Part == to.Part && from != to
        && (part is Connector ? from.Name[..^1] == to.Name[..^1] : part is not Load && part.PassThrough == (from.Name, to.Name));

    private static WiringPath Written(Route route, IReadOnlyCollection<Part> parts)
    {
        if (route.Written is { } unchanged && IsSame(unchanged, route, parts))
        {
            return unchanged;
        }

        var byId = parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var shortened = new Dictionary<int, PathPart>();
        foreach (var i in Enumerable.Range(0, route.Links.Count).Where(i => route.Links[i].IsInside))
        {
            var terminal = route.Terminals[i];
            var part = byId.GetValueOrDefault(terminal.Part);
            if (part is not null and not Connector && part.PassThrough == (terminal.Name, route.Terminals[i + 1].Name))
            {
                shortened[i] = new PathPart(terminal.Part, null);
            }
        }

        foreach (var i in Enumerable.Range(0, route.Links.Count).Where(i => route.Links[i].IsInside))
        {
            var terminal = route.Terminals[i];
            if (byId.GetValueOrDefault(terminal.Part) is Connector)
            {
                // A cavity is written without its halves only where that says which way it is passed.
                shortened[i] = new PathPart(terminal.Part, terminal.Name[..^1]);
                if (!IsSame(Items(route, shortened), route, parts))
                {
                    shortened.Remove(i);
                }
            }
        }

        return Items(route, shortened);
    }

    private static WiringPath Items(Route route, Dictionary<int, PathPart> shortened)
    {
        var items = ImmutableArray.CreateBuilder<PathItem>();
        for (var i = 0; i < route.Terminals.Count; i++)
        {
            if (shortened.TryGetValue(i, out var through))
            {
                items.Add(through);
                i++;
            }
            else
            {
                var (part, name) = route.Terminals[i];
                items.Add(new PathPart(part, name.Length == 0 ? null : name));
            }

            if (i < route.Links.Count && route.Links[i].Wire is { } wire)
            {
                items.Add(wire);
            }
        }

        return new WiringPath(items.ToImmutable());
    }

    private static bool IsSame(WiringPath path, Route route, IReadOnlyCollection<Part> parts) =>
        WiringResolver.Trace(parts, path) is { } steps && RouteOf(steps, path) is var other
        && other.Terminals.SequenceEqual(route.Terminals)
        && other.Links.Zip(route.Links).All(l => ReferenceEquals(l.First.Wire, l.Second.Wire) && l.First.IsInside == l.Second.IsInside);

    private static Route RouteOf(ImmutableArray<PathStep> steps, WiringPath path)
    {
        var (terminals, links) = (new List<TerminalName>(), new List<Link>());
        foreach (var step in steps)
        {
            if (terminals.Count > 0)
            {
                links.Add(new Link(step.Wire, false));
            }

            terminals.Add(step.Entry);
            if (step.Entry != step.Leave)
            {
                links.Add(new Link(null, true));
                terminals.Add(step.Leave);
            }
        }

        return new Route(terminals, links, path);
    }

    /// <summary>Part of a route, from one terminal to another, without insides at its ends; null where no link is left.</summary>
    private static Route? Piece(Route route, int from, int to)
    {
        while (from < to && route.Links[from].IsInside)
        {
            from++;
        }

        while (from < to && route.Links[to - 1].IsInside)
        {
            to--;
        }

        return from >= to ? null : Changed(route.Terminals[from..(to + 1)], route.Links[from..to]);
    }

    private static Route Changed(List<TerminalName> terminals, List<Link> links) => new(terminals, links);

    private void Replace(Route route, params Route?[] pieces)
    {
        var at = _routes.IndexOf(route);
        _routes.RemoveAt(at);
        _routes.InsertRange(at, pieces.OfType<Route>());
    }
}
