namespace Halfsplit.Drawing.Layout;

/// <summary>
/// Gives the trunks of a channel their levels: no two wires on each other, few crossings, few levels. Where a stub from
/// above stands over a stub from below, the upper one's trunk must lie higher; a circle of such demands is broken by letting
/// one stub step aside on a level of its own.
/// </summary>
internal sealed class ChannelRouter
{
    /// <summary>Upright wires nearer than this would look like one.</summary>
    private const double Clear = 6;

    private readonly List<Net> _nets;
    private readonly List<Net> _trunks;

    private ChannelRouter(List<Net> nets)
    {
        _nets = nets;
        _trunks = [.. nets.Where(n => n.HasTrunk)];
    }

    /// <summary>Number of levels used.</summary>
    public static int Route(List<Net> nets)
    {
        var router = new ChannelRouter(nets);
        router.BreakCircles();
        return router.AssignTracks();
    }

    /// <summary>Demands "this trunk above that one", with the lower stub that is in the way.</summary>
    private static Stub? Demand(Net above, Net below)
    {
        foreach (var top in above.Tops)
        {
            foreach (var bottom in below.Bottoms)
            {
                if (Math.Abs(top.X - bottom.X) < Clear && top.Aside != below)
                {
                    return bottom;
                }
            }
        }

        return null;
    }

    private static bool MustLieAbove(Net above, Net below) =>
        below.Tops.Exists(t => t.Aside == above) || Demand(above, below) is not null;

    private void BreakCircles()
    {
        for (var start = 0; start < _trunks.Count; start++)
        {
            while (FindCircle(start) is var (above, below))
            {
                StepAside(below, Demand(above, below)!);
            }
        }
    }

    /// <summary>A demand that closes a circle through the trunks, one that a stub can yield to; null if there is none.</summary>
    private (Net Above, Net Below)? FindCircle(int start)
    {
        var state = new Dictionary<Net, int>();
        var path = new List<Net>();
        return Walk(_trunks[start]);

        (Net, Net)? Walk(Net net)
        {
            state[net] = 1;
            path.Add(net);
            foreach (var below in _trunks)
            {
                if (below == net || !MustLieAbove(net, below))
                {
                    continue;
                }

                if (state.GetValueOrDefault(below) == 1)
                {
                    var circle = path[path.IndexOf(below)..];
                    for (var i = 0; i < circle.Count; i++)
                    {
                        var (a, b) = (circle[i], circle[(i + 1) % circle.Count]);
                        if (!b.Tops.Exists(t => t.Aside == a) && Demand(a, b) is { Port: not null })
                        {
                            return (a, b);
                        }
                    }
                }
                else if (state.GetValueOrDefault(below) == 0 && Walk(below) is { } found)
                {
                    return found;
                }
            }

            state[net] = 2;
            path.RemoveAt(path.Count - 1);
            return null;
        }
    }

    /// <summary>The stub goes up only to a level of its own, and on from there where there is room.</summary>
    private void StepAside(Net net, Stub stub)
    {
        var taken = _nets.SelectMany(n => n.Stubs).Select(s => s.X).ToList();
        var x = stub.X;
        for (var step = 1; taken.Exists(t => Math.Abs(t - x) < Clear + 1); step++)
        {
            x = stub.X + ((step % 2 == 0 ? -1 : 1) * ((step + 1) / 2) * 4);
        }

        var aside = new Net();
        net.Bottoms.Remove(stub);
        net.Bottoms.Add(new Stub(x, null, aside));
        aside.Tops.Add(new Stub(x, null, net));
        aside.Bottoms.Add(stub);
        aside.Links.AddRange(net.Links.Where(l => l.Lower == stub.Port));
        _nets.Add(aside);
        _trunks.Add(aside);
    }

    private int AssignTracks()
    {
        var count = _trunks.Count;
        var score = new int[count];
        var waiting = new int[count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                if (i != j)
                {
                    score[i] += Cost(_trunks[i], _trunks[j]) - Cost(_trunks[j], _trunks[i]);
                    waiting[i] += MustLieAbove(_trunks[j], _trunks[i]) ? 1 : 0;
                }
            }
        }

        var placed = new List<Net>();
        var done = new bool[count];
        while (placed.Count < count)
        {
            var next = -1;
            for (var i = 0; i < count; i++)
            {
                if (!done[i] && (next < 0 || (waiting[i], score[i]).CompareTo((waiting[next], score[next])) < 0))
                {
                    next = i;
                }
            }

            done[next] = true;
            Place(_trunks[next], placed);
            for (var i = 0; i < count; i++)
            {
                if (!done[i])
                {
                    score[i] -= Cost(_trunks[i], _trunks[next]) - Cost(_trunks[next], _trunks[i]);
                    waiting[i] -= MustLieAbove(_trunks[next], _trunks[i]) ? 1 : 0;
                }
            }
        }

        return placed.Count == 0 ? 0 : placed.Max(n => n.Track) + 1;
    }

    private static void Place(Net net, List<Net> placed)
    {
        net.Track = 0;
        foreach (var other in placed)
        {
            if (MustLieAbove(other, net) || (other.From < net.To + Clear && net.From < other.To + Clear))
            {
                net.Track = Math.Max(net.Track, other.Track + 1);
            }
        }

        placed.Add(net);
    }

    /// <summary>Crossings between two trunks and their stubs if the first lies above the second.</summary>
    private static int Cost(Net above, Net below) =>
        above.Bottoms.Count(s => s.X > below.From && s.X < below.To) + below.Tops.Count(s => s.X > above.From && s.X < above.To);
}
