using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Checks;

public sealed partial class CheckCatalog
{
    /// <summary>Watts of lamps that are at hand as substitute loads, at 12 V; vehicle bulbs, common practice, no published source.</summary>
    private static readonly double[] StandardLamps = [5, 10, 21, 55, 110];

    /// <summary>Volts at and between the points that can be touched.</summary>
    /// <param name="everywhere">All points; else only those of the named part.</param>
    private void AddReadings(Arrangement arrangement, bool everywhere, string? part = null)
    {
        var points = TestPoints.Touchable(_network, arrangement, CanReach);
        var battery = _network.Circuit.Battery.Id;
        var negative = points.FirstOrDefault(p => p.Node < 0);
        var positive = points.FirstOrDefault(p => p.Terminal == new TerminalName(battery, "pos"));
        var body = points.FirstOrDefault(p => p.Terminal.Part == Metal.Body);
        foreach (var point in points.Where(p => everywhere || p.Terminal.Part == part))
        {
            if (point.Node < 0)
            {
                continue;
            }

            // Against the near body always; against the posts only where current flows and a drop says more than volts.
            if (everywhere && arrangement.Condition != _keyOff && point.Reach <= _options.LeadMetres)
            {
                if (negative is not null)
                {
                    AddVolts(arrangement, point.Terminal, negative.Terminal);
                }

                if (positive is not null && point.Node != positive.Node)
                {
                    AddVolts(arrangement, positive.Terminal, point.Terminal);
                }
            }

            if (body is not null && point.Node != body.Node)
            {
                AddVolts(arrangement, point.Terminal, body.Terminal);
                if (!everywhere && _options.HasTestLamp && arrangement.Condition != _keyOff)
                {
                    Add(CheckKind.Reading, CheckSubject.LampGlow, arrangement, Instrument.TestLamp, null, point.Terminal, body.Terminal);
                }
            }
        }

        if (everywhere)
        {
            AddDrops(arrangement, points);
        }
    }

    /// <summary>Drops across each segment between touchable points, across each load, and amps round the load's wires.</summary>
    private void AddDrops(Arrangement arrangement, ImmutableArray<TestPoint> points)
    {
        if (arrangement.Condition == _keyOff)
        {
            return;
        }

        var byNode = points.ToDictionary(p => p.Node);
        foreach (var branch in _network.Branches)
        {
            if (branch.From != branch.To && branch.Target is not null
                && byNode.TryGetValue(branch.From, out var from) && byNode.TryGetValue(branch.To, out var to))
            {
                AddDrop(arrangement, from, to);
            }
        }

        foreach (var (from, to) in Segments(byNode))
        {
            AddDrop(arrangement, from, to);
        }

        if (_options.HasClamp)
        {
            foreach (var wire in _network.Circuit.Wires)
            {
                if (TestPoints.ClampEnds(_network.Circuit, wire).Any(end => byNode.ContainsKey(_network.NodeOf(end))))
                {
                    Add(Check.Create(
                        CheckKind.Reading, CheckSubject.Number, arrangement,
                        new Probe(Instrument.AmpsClamp, null, null, wire.Id)));
                }
            }
        }
    }

    /// <summary>Pairs of touchable points with only untouchable ones between them.</summary>
    private IEnumerable<(TestPoint From, TestPoint To)> Segments(Dictionary<int, TestPoint> byNode)
    {
        var next = _network.Branches
            .Where(b => b.From >= 0 && b.To >= 0 && b.From != b.To)
            .SelectMany(b => new[] { (b.From, b.To), (From: b.To, To: b.From) })
            .ToLookup(p => p.Item1, p => p.Item2);
        foreach (var start in byNode.Values.Where(p => p.Node >= 0))
        {
            var seen = new HashSet<int> { start.Node };
            var queue = new Queue<int>(next[start.Node].Where(n => !byNode.ContainsKey(n)));
            while (queue.TryDequeue(out var node))
            {
                if (!seen.Add(node))
                {
                    continue;
                }

                foreach (var other in next[node])
                {
                    if (byNode.TryGetValue(other, out var end))
                    {
                        if (end.Node > start.Node && seen.Add(end.Node))
                        {
                            yield return (start, end);
                        }
                    }
                    else
                    {
                        queue.Enqueue(other);
                    }
                }
            }
        }
    }

    private void AddDrop(Arrangement arrangement, TestPoint from, TestPoint to)
    {
        if (Math.Abs(from.Reach - to.Reach) <= _options.LeadMetres)
        {
            AddVolts(arrangement, from.Terminal, to.Terminal);
        }
    }

    private void AddVolts(Arrangement arrangement, TerminalName red, TerminalName black) =>
        Add(CheckKind.Reading, CheckSubject.Number, arrangement, Instrument.Volts, null, red, black);

    /// <summary>Ohms and continuity at an unplugged connector, feed off.</summary>
    private void AddOhms(Arrangement rest, string connector)
    {
        var points = TestPoints.Touchable(_network, rest, CanReach).Where(p => p.Terminal.Part == connector).ToList();
        foreach (var point in points.Where(p => p.Node >= 0))
        {
            Add(CheckKind.Reading, CheckSubject.Number, rest, Instrument.Ohms, null, point.Terminal, new(Metal.Body));
            Add(CheckKind.Reading, CheckSubject.Buzzer, rest, Instrument.Continuity, null, point.Terminal, new(Metal.Body));
        }

        foreach (var half in "ab")
        {
            var side = points.Where(p => p.Terminal.Name.EndsWith(half)).ToList();
            for (var i = 0; i < side.Count; i++)
            {
                for (var j = i + 1; j < side.Count && j <= i + 4; j++)
                {
                    Add(CheckKind.Reading, CheckSubject.Number, rest, Instrument.Ohms, null, side[i].Terminal, side[j].Terminal);
                }
            }
        }
    }

    /// <summary>The harness-side cavities that feed a load through this connector, if it is the load's own plug: a pair for each filament.</summary>
    private IEnumerable<(TerminalName Feed, TerminalName Return)> HarnessSide(Part connector, Load load)
    {
        TerminalName? Opposite(string terminal)
        {
            var node = _network.NodeOf(new(load.Id, terminal));
            foreach (var cavity in _network.Circuit.Cavities(connector.Id))
            {
                foreach (var (near, far) in ((char, char)[])[('a', 'b'), ('b', 'a')])
                {
                    if (_network.NodeOf(new(connector.Id, $"{cavity}{near}")) == node)
                    {
                        return new TerminalName(connector.Id, $"{cavity}{far}");
                    }
                }
            }

            return null;
        }

        IEnumerable<string> feeds = load is Lamp lamp ? lamp.Filaments.Select(f => f.Terminal) : [load.Across.Pos];
        foreach (var terminal in feeds)
        {
            if (Opposite(terminal) is { } feed && Opposite(load.Across.Neg) is { } back)
            {
                yield return (feed, back);
            }
        }
    }

    private double StandardLamp(double watts) =>
        StandardLamps.Select(w => w * Scale).MinBy(w => Math.Abs(Math.Log(w / watts)));

    /// <summary>A part can be reached if its place is not given up, its tools are at hand and it may be probed.</summary>
    private bool CanReach(Part part)
    {
        if (_unreachable.Contains(part.Id))
        {
            return false;
        }

        var place = _network.Circuit.FindPlace(part.Notes.Place);
        return place is null
            || (!_unreachable.Contains(place.Name)
                && (_options.Tools.IsDefaultOrEmpty || place.Tools.All(t => _options.Tools.Contains(t))));
    }

    private void Add(
        CheckKind kind, CheckSubject subject, Arrangement arrangement, Instrument instrument, string? about,
        TerminalName? red = null, TerminalName? black = null, double? watts = null) =>
        Add(Check.Create(kind, subject, arrangement, new Probe(instrument, red, black, about, watts)));

    private void Add(Check check) => _checks.TryAdd(check.Id, check);
}
