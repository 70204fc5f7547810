using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Evaluation.Play;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Evaluation.Players;

/// <summary>
/// The order of checks as common practice has it, its false clearances included: listen for the load, bench-test the
/// relay, look at the fuse, volts in the relay's socket, continuity to the body at the load's plug, volts there with
/// nothing connected; then the load is bought. No published source.
/// </summary>
public sealed class FixedOrderPlayer : IPlayer
{
    public string Name => "fixed-order";

    public IEnumerable<Move> Play(Attempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        var trace = new Tracing(attempt);
        var relay = trace.Wiring.Relays.FirstOrDefault();
        return new[]
        {
            Reproduce(attempt), Relay(attempt, trace, relay), Fuses(attempt, trace), Socket(attempt, trace, relay, 0),
            Continuity(attempt, trace), OpenVolts(attempt, trace, relay), trace.Replace(trace.Wiring.Load.Id),
            Openings.BuyTheRest(attempt),
        }.SelectMany(step => step);
    }

    private static IEnumerable<Move> Reproduce(Attempt attempt)
    {
        yield return new Move.Look(CheckCatalog.Reproduce(attempt.Place.Circuit, attempt.Place.Complaint));
    }

    private static IEnumerable<Move> Relay(Attempt attempt, Tracing trace, Relay? relay)
    {
        if (relay is null)
        {
            yield break;
        }

        foreach (var move in trace.Look(Tracing.LookAt(CheckSubject.BenchRelay, trace.Rest.Remove(relay.Id), relay.Id)))
        {
            yield return move;
        }

        if (trace.WasDone && attempt.Says(AnswerWord.Fails))
        {
            foreach (var move in trace.Replace(relay.Id))
            {
                yield return move;
            }
        }
    }

    private static IEnumerable<Move> Fuses(Attempt attempt, Tracing trace)
    {
        foreach (var fuse in trace.Wiring.Fuses)
        {
            var look = Tracing.LookAt(CheckSubject.FuseLook, trace.Rest, fuse.Id);
            foreach (var move in trace.Look(look))
            {
                yield return move;
            }

            if (!trace.WasDone || !attempt.Says(AnswerWord.Blown))
            {
                continue;
            }

            foreach (var move in trace.Replace(fuse.Id).Concat(trace.Look(look)))
            {
                yield return move;
            }

            // It has blown again: the load is taken for shorted, then a wire after the fuse.
            if (trace.WasDone && attempt.Says(AnswerWord.Blown))
            {
                var network = trace.Wiring.Network;
                var after = trace.Wiring.Feed.Branches.TakeWhile(b => network.Branches[b].Owner != fuse.Id)
                    .Where(b => network.Branches[b].Use == BranchUse.Wire);
                foreach (var move in trace.Replace(trace.Wiring.Load.Id).Concat(trace.MendPiece([.. after], looks: false)))
                {
                    yield return move;
                }
            }
        }
    }

    private static IEnumerable<Move> Socket(Attempt attempt, Tracing trace, Relay? relay, int depth)
    {
        if (relay is null)
        {
            yield break;
        }

        var pulled = trace.Commanded.Remove(relay.Id);
        var network = trace.Wiring.Network;
        foreach (var (terminal, path) in new[]
        {
            (new TerminalName(relay.Id, "30"), trace.Wiring.Feed.From(network.NodeOf(new(relay.Id, "30")))),
            (trace.Wiring.CoilFeed(relay), trace.Wiring.CoilOf(relay).Feed),
        })
        {
            foreach (var move in trace.HeldVolts(pulled, terminal))
            {
                yield return move;
            }

            if (trace.Read is not null && !trace.IsLive)
            {
                foreach (var move in trace.WalkUp(path, trace.Commanded))
                {
                    yield return move;
                }

                // Another relay stands before: the same with that one.
                var piece = trace.Piece;
                foreach (var other in trace.Wiring.RelaysOn(path).Where(r => depth < 2 && r.Id != relay.Id && piece.Any(b => network.Branches[b].Owner == r.Id)))
                {
                    foreach (var move in Relay(attempt, trace, other).Concat(Socket(attempt, trace, other, depth + 1)))
                    {
                        yield return move;
                    }
                }

                foreach (var move in trace.MendPiece(piece, looks: false))
                {
                    yield return move;
                }
            }
        }
    }

    private static IEnumerable<Move> Continuity(Attempt attempt, Tracing trace)
    {
        if (LoadPlug.Of(trace.Wiring) is not { Return: { } back } plug)
        {
            yield break;
        }

        foreach (var move in trace.Look(Check.Create(
            CheckKind.Reading, CheckSubject.Buzzer, trace.Rest.Unplug(plug.Connector),
            new Probe(Instrument.Continuity, back, new TerminalName(Metal.Body)))))
        {
            yield return move;
        }

        if (trace.WasDone && attempt.Says(AnswerWord.NoBeep))
        {
            foreach (var move in trace.MendPiece(trace.Wiring.Return.Branches, looks: false))
            {
                yield return move;
            }
        }
    }

    private static IEnumerable<Move> OpenVolts(Attempt attempt, Tracing trace, Relay? relay)
    {
        var wiring = trace.Wiring;
        var plug = LoadPlug.Of(wiring);
        foreach (var move in plug is null
            ? trace.Volts(trace.Commanded, wiring.Positive)
            : trace.Volts(trace.Commanded.Unplug(plug.Connector), plug.Feed))
        {
            yield return move;
        }

        if (trace.Read is null || trace.IsLive)
        {
            yield break;
        }

        foreach (var move in trace.WalkUp(wiring.Feed, trace.Commanded))
        {
            yield return move;
        }

        var piece = trace.Piece;
        if (relay is not null && piece.Any(b => wiring.Network.Branches[b].Owner == relay.Id))
        {
            // The relay was good on the bench and its socket has volts: is it switched at all.
            foreach (var move in trace.Look(Tracing.LookAt(CheckSubject.RelayClick, trace.Commanded, relay.Id)))
            {
                yield return move;
            }

            if (trace.WasDone && attempt.Says(AnswerWord.Silent))
            {
                foreach (var move in trace.MendPiece(wiring.CoilOf(relay).Return.Branches, looks: false))
                {
                    yield return move;
                }
            }
        }

        foreach (var move in trace.MendPiece(piece, looks: false))
        {
            yield return move;
        }
    }
}
