using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Evaluation.Play;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Evaluation.Players;

/// <summary>
/// As a good electrician works: reproduce, other loads on the same feed, the fuse on both tabs, volts across the commanded
/// load, drops under load toward the half that lost the volts, a lamp in place of the load before it is bought. Common
/// practice, no published source.
/// </summary>
public sealed class SkilledPlayer : IPlayer
{
    private const double FlatVolts = 11.7;
    private const double GoodShare = 0.9;
    private const int MostSiblings = 2;

    public string Name => "skilled-order";

    public IEnumerable<Move> Play(Attempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        var trace = new Tracing(attempt);
        var relays = new RelayTracing(attempt, trace);
        var good = new HashSet<int>();
        return new[]
        {
            Begin(attempt, trace), Siblings(attempt, trace, good), Fuses(attempt, trace, relays),
            AcrossLoad(attempt, trace, relays, good), Openings.BuyTheRest(attempt),
        }.SelectMany(step => step);
    }

    private static IEnumerable<Move> Begin(Attempt attempt, Tracing trace)
    {
        foreach (var check in Openings.Of(attempt.Place))
        {
            yield return new Move.Look(check);
        }

        if (attempt.Number < FlatVolts * trace.Nominal / 12)
        {
            foreach (var move in trace.Replace(attempt.Place.Circuit.Battery.Id))
            {
                yield return move;
            }
        }
    }

    /// <summary>A load that works on the same feed clears what they share; only a dead complaint is cleared so.</summary>
    private static IEnumerable<Move> Siblings(Attempt attempt, Tracing trace, HashSet<int> good)
    {
        var wiring = trace.Wiring;
        var feed = wiring.Feed.Nodes.ToHashSet();
        // Where the complaint's condition can be held, in that; else in one that can.
        var siblings = attempt.Place.Offered.Values
            .Where(c => c.Subject == CheckSubject.LoadWork && c.Probe.About != wiring.Load.Id
                && new Simulation.Arrangements.Arrangement(c.Arrangement.Condition).Key == c.Arrangement.Key
                && attempt.Place.Circuit.FindCondition(c.Arrangement.Condition) is { NeedsHelper: false, AlternatorVolts: null })
            .Select(c => (Check: c, Shared: wiring.FeedOf((Load)attempt.Place.Circuit[c.Probe.About!], c.Arrangement.Condition)?
                .Nodes.Where(feed.Contains).ToList() ?? []))
            .Where(s => s.Shared.Count > 1)
            .OrderByDescending(s => s.Shared.Count)
            .ThenBy(s => s.Check.Arrangement.Key == trace.Commanded.Key ? 0 : 1)
            .ThenBy(s => s.Check.Id, StringComparer.Ordinal)
            .DistinctBy(s => s.Check.Probe.About)
            .Take(MostSiblings);
        foreach (var (check, shared) in siblings)
        {
            yield return new Move.Look(check);
            if (attempt.Place.Complaint.Is == LoadCondition.Dead
                && attempt.Answer is ReadingParse.Word { Answer: var word } && check.GroupOf(word) == 0)
            {
                good.UnionWith(shared);
                yield break;
            }
        }
    }

    private static IEnumerable<Move> Fuses(Attempt attempt, Tracing trace, RelayTracing relays)
    {
        foreach (var fuse in trace.Wiring.Fuses.Where(f => f.IsPluggable))
        {
            foreach (var move in trace.HeldVolts(trace.Commanded, new(fuse.Id, "2p")))
            {
                yield return move;
            }

            if (trace.IsLive)
            {
                // A live fuse has a live feed.
                yield break;
            }

            foreach (var move in trace.HeldVolts(trace.Commanded, new(fuse.Id, "1p")))
            {
                yield return move;
            }

            if (trace.IsLive)
            {
                foreach (var move in Blown(attempt, trace, fuse))
                {
                    yield return move;
                }

                yield break;
            }

            if (trace.Read is null)
            {
                continue;
            }

            // Dead on both tabs: what is wrong stands before this fuse.
            var feed = trace.Wiring.Feed.From(trace.Wiring.Network.NodeOf(new(fuse.Id, "1p")));
            foreach (var move in trace.WalkUp(feed, trace.Commanded))
            {
                yield return move;
            }

            foreach (var move in Before(trace, relays, trace.Piece))
            {
                yield return move;
            }

            yield break;
        }
    }

    /// <summary>What lies on a piece of the feed: its relays first, then the rest.</summary>
    private static IEnumerable<Move> Before(Tracing trace, RelayTracing relays, ImmutableArray<int> piece)
    {
        foreach (var relay in trace.Wiring.Relays.Where(r => piece.Any(b => trace.Wiring.Network.Branches[b].Owner == r.Id)))
        {
            foreach (var move in relays.Trace(relay, 0))
            {
                yield return move;
            }
        }

        foreach (var move in trace.MendPiece(piece, looks: true))
        {
            yield return move;
        }
    }

    /// <summary>A fuse has a cause: a lamp in its place, the load unplugged, then the relay pulled, shows where.</summary>
    private static IEnumerable<Move> Blown(Attempt attempt, Tracing trace, Fuse fuse)
    {
        var network = trace.Wiring.Network;
        var pulled = trace.Commanded.Remove(fuse.Id);
        var after = trace.Wiring.Feed.Branches.TakeWhile(b => network.Branches[b].Owner != fuse.Id).ToImmutableArray();
        var plug = LoadPlug.Of(trace.Wiring);
        foreach (var move in trace.Look(LampFor(fuse, plug is null ? pulled : pulled.Unplug(plug.Connector), trace.Nominal)))
        {
            yield return move;
        }

        if (trace.WasDone && attempt.Number > 0.5 * trace.Nominal)
        {
            foreach (var relay in trace.Wiring.Relays)
            {
                var at = after.ToList().FindIndex(b => network.Branches[b].Owner == relay.Id);
                if (at < 0)
                {
                    continue;
                }

                foreach (var move in trace.Look(LampFor(fuse, pulled.Remove(relay.Id), trace.Nominal)))
                {
                    yield return move;
                }

                after = trace.WasDone && attempt.Number > 0.5 * trace.Nominal ? after[at..] : after[..at];
            }

            foreach (var move in trace.MendPiece([.. after.Where(b => network.Branches[b].Use == Simulation.Compiled.BranchUse.Wire)], looks: false))
            {
                yield return move;
            }
        }

        foreach (var move in trace.Replace(fuse.Id).Concat(trace.Look(Tracing.LookAt(CheckSubject.FuseLook, trace.Rest, fuse.Id))))
        {
            yield return move;
        }

        if (trace.WasDone && attempt.Says(AnswerWord.Blown))
        {
            foreach (var move in trace.Replace(trace.Wiring.Load.Id))
            {
                yield return move;
            }
        }
    }

    private static Check LampFor(Fuse fuse, Simulation.Arrangements.Arrangement arrangement, double nominal) => Check.Create(
        CheckKind.Reading, CheckSubject.LampGlow, arrangement,
        new Probe(Instrument.TestLamp, new(fuse.Id, "1"), new(fuse.Id, "2"), null, 21 * nominal * nominal / 144));

    private static IEnumerable<Move> AcrossLoad(Attempt attempt, Tracing trace, RelayTracing relays, HashSet<int> good)
    {
        var wiring = trace.Wiring;
        var plus = trace.Points(wiring.Feed, trace.Commanded)[0].Terminal;
        var minus = trace.Points(wiring.Return, trace.Commanded)[0].Terminal;
        foreach (var move in trace.Volts(trace.Commanded, plus, minus))
        {
            yield return move;
        }

        var across = trace.Read;
        var healthy = attempt.Place.Volts(trace.Commanded, plus, minus) is { } check
            && attempt.Place.Healthy(check) is ReadingParse.Number number ? Math.Abs(number.Value) : trace.Nominal;
        if (across >= GoodShare * healthy)
        {
            foreach (var move in InPlaceOfLoad(attempt, trace))
            {
                yield return move;
            }

            yield break;
        }

        foreach (var move in trace.Volts(trace.Commanded, minus, new(attempt.Place.Circuit.Battery.Id, "neg")))
        {
            yield return move;
        }

        var lost = healthy - (across ?? 0);
        var below = trace.Read;
        var isReturn = below > 0.5 * lost;
        foreach (var move in isReturn ? [] : trace.Volts(trace.Commanded, new(attempt.Place.Circuit.Battery.Id, "pos"), plus))
        {
            yield return move;
        }

        if (!isReturn && trace.Read < 0.25 * lost && below < 0.25 * lost)
        {
            // Nothing lost on either side and nothing across: the load floats, its plug is off.
            foreach (var move in Plug(trace))
            {
                yield return move;
            }
        }

        foreach (var move in trace.Halve(
            isReturn ? wiring.Return : wiring.Feed, trace.Commanded, !isReturn, good, isReturn ? below : trace.Read))
        {
            yield return move;
        }

        foreach (var move in Before(trace, relays, trace.Piece).Concat(trace.Replace(wiring.Load.Id)))
        {
            yield return move;
        }
    }

    /// <summary>Volts on the harness side of the plug and none behind it.</summary>
    private static IEnumerable<Move> Plug(Tracing trace)
    {
        if (LoadPlug.Of(trace.Wiring) is not { } plug)
        {
            yield break;
        }

        foreach (var move in trace.Volts(trace.Commanded, plug.Feed))
        {
            yield return move;
        }

        if (trace.IsLive)
        {
            var network = trace.Wiring.Network;
            var cavities = trace.Wiring.Feed.Branches.Concat(trace.Wiring.Return.Branches)
                .Where(b => network.Branches[b].Owner == plug.Connector);
            foreach (var move in trace.Replace(plug.Connector).Concat(trace.MendPiece([.. cavities], looks: false)))
            {
                yield return move;
            }
        }
    }

    /// <summary>Before the load is bought, a lamp of its watts proves its feed and its ground.</summary>
    private static IEnumerable<Move> InPlaceOfLoad(Attempt attempt, Tracing trace)
    {
        var load = trace.Wiring.Load.Id;
        var lamp = attempt.Place.Complaint.Is != LoadCondition.Dead ? null : attempt.Place.Offered.Values
            .Where(c => c.Subject == CheckSubject.LampGlow && c.Probe.About == load)
            .OrderBy(c => c.Id, StringComparer.Ordinal).FirstOrDefault();
        if (lamp is not null)
        {
            yield return new Move.Look(lamp);
            if (attempt.Number < 0.75 * trace.Nominal)
            {
                // The wires stood at battery volts only because nothing flowed.
                var both = trace.Wiring.Feed.Branches.AddRange(trace.Wiring.Return.Branches);
                foreach (var move in trace.MendPiece(both, looks: true))
                {
                    yield return move;
                }
            }
        }

        foreach (var move in trace.Replace(load))
        {
            yield return move;
        }
    }
}
