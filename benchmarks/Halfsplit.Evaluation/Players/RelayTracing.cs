using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Evaluation.Play;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Evaluation.Players;

/// <summary>
/// Where the volts end at a relay: does it click; if not, its coil's volts in the socket, then the coil's feed or its
/// switched side; if so, a fused jumper in its place.
/// </summary>
internal sealed class RelayTracing(Attempt attempt, Tracing trace)
{
    /// <summary>How many relays behind one another are followed.</summary>
    private const int Deepest = 2;

    public IEnumerable<Move> Trace(Relay relay, int depth)
    {
        foreach (var move in trace.Look(Tracing.LookAt(CheckSubject.RelayClick, trace.Commanded, relay.Id)))
        {
            yield return move;
        }

        foreach (var move in trace.WasDone && attempt.Says(AnswerWord.Silent) ? Coil(relay, depth) : Contacts(relay))
        {
            yield return move;
        }
    }

    private IEnumerable<Move> Coil(Relay relay, int depth)
    {
        var wiring = trace.Wiring;
        var pulled = trace.Commanded.Remove(relay.Id);
        foreach (var move in trace.Volts(pulled, new(relay.Id, "86"), new TerminalName(relay.Id, "85")))
        {
            yield return move;
        }

        if (trace.IsLive)
        {
            foreach (var move in trace.Replace(relay.Id))
            {
                yield return move;
            }
        }

        var (feed, back) = wiring.CoilOf(relay);
        foreach (var move in trace.HeldVolts(pulled, wiring.CoilFeed(relay)))
        {
            yield return move;
        }

        var isFed = trace.IsLive;
        foreach (var move in isFed ? trace.WalkDown(back, trace.Commanded) : trace.WalkUp(feed, trace.Commanded))
        {
            yield return move;
        }

        var piece = trace.Piece;
        if (!isFed && depth < Deepest)
        {
            foreach (var other in wiring.RelaysOn(feed).Where(r => piece.Any(b => wiring.Network.Branches[b].Owner == r.Id)))
            {
                foreach (var move in Trace(other, depth + 1))
                {
                    yield return move;
                }
            }
        }

        // A module that drives nothing may be without feed or ground itself.
        foreach (var module in piece.Select(b => wiring.Network.Circuit.Find(wiring.Network.Branches[b].Owner)).OfType<Module>().Distinct())
        {
            foreach (var move in Supply(module))
            {
                yield return move;
            }
        }

        foreach (var move in trace.MendPiece(piece, looks: true).Concat(trace.Replace(relay.Id)))
        {
            yield return move;
        }
    }

    private IEnumerable<Move> Supply(Module module)
    {
        foreach (var feed in module.Feeds.Select(f => new TerminalName(module.Id, f)))
        {
            foreach (var move in trace.HeldVolts(trace.Commanded, feed))
            {
                yield return move;
            }

            if (trace.Read is not null && !trace.IsLive)
            {
                foreach (var move in trace.WalkUp(trace.Wiring.FeedOf(feed), trace.Commanded))
                {
                    yield return move;
                }

                foreach (var move in trace.MendPiece(trace.Piece, looks: true))
                {
                    yield return move;
                }
            }
        }

        foreach (var ground in module.Grounds.Select(g => new TerminalName(module.Id, g)))
        {
            foreach (var move in trace.Volts(trace.Commanded, ground, new TerminalName(attempt.Place.Circuit.Battery.Id, "neg")))
            {
                yield return move;
            }

            if (trace.Read > 0.05 * trace.Nominal)
            {
                foreach (var move in trace.WalkDown(trace.Wiring.ReturnOf(ground), trace.Commanded))
                {
                    yield return move;
                }

                foreach (var move in trace.MendPiece(trace.Piece, looks: true))
                {
                    yield return move;
                }
            }
        }
    }

    private IEnumerable<Move> Contacts(Relay relay)
    {
        if (relay.Contacts == RelayContacts.Break)
        {
            yield break;
        }

        // With the relay bridged the load can be held on wherever the relay's feed is live.
        var held = trace.Commanded.In(trace.Wiring.HeldFor(new(relay.Id, "30"), trace.Commanded.Condition));
        var bridged = held.Remove(relay.Id).WithJumper(new(relay.Id, "30"), new(relay.Id, "87"));
        var runs = Check.Create(
            CheckKind.Listen, CheckSubject.LoadWork, bridged, new Probe(Instrument.Ear, null, null, trace.Wiring.Load.Id));
        foreach (var move in trace.Look(runs))
        {
            yield return move;
        }

        if (trace.WasDone && attempt.Answer is ReadingParse.Word { Answer: var word } && runs.GroupOf(word) == 0)
        {
            foreach (var move in trace.Replace(relay.Id))
            {
                yield return move;
            }
        }
        else if (trace.WasDone)
        {
            foreach (var move in trace.Halve(trace.Wiring.Feed, bridged, isFeed: true, new HashSet<int>()))
            {
                yield return move;
            }

            foreach (var move in trace.MendPiece(trace.Piece, looks: true))
            {
                yield return move;
            }
        }
    }
}
