using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Simulation.Instruments;
using Observation = Halfsplit.Jobs.Events.Observation;

namespace Halfsplit.Jobs.Sessions;

public sealed partial class JobSession
{
    /// <summary>Records an answer as the person types it.</summary>
    /// <param name="typed">The reading.</param>
    /// <param name="check">The check it answers; null for the one that is asked now.</param>
    /// <param name="confirmed">The person stands by a doubtful reading.</param>
    /// <param name="words">In which language a refusal names what could be typed; null for English. Words of every language are understood.</param>
    public SessionOutcome Record(string typed, Check? check = null, bool confirmed = false, AnswerWords? words = null)
    {
        ArgumentNullException.ThrowIfNull(typed);
        if (Closed() is { } closed)
        {
            return closed;
        }

        check ??= Next.Check;
        if (check is null)
        {
            return new SessionOutcome.Misplaced(new Message("session.nothing-asked"));
        }

        switch (ReadingText.Parse(typed, Investigation.Expect(check), words ?? AnswerWords.English))
        {
            case ReadingValue value:
                return Keep(check, typed, value, false);
            case ReadingParse.Question question when IsOneMeaning(check, question):
                return Keep(check, typed, question.Meant, false);
            case ReadingParse.Question question:
                return confirmed ? Keep(check, typed, question.Meant, true) : new SessionOutcome.Asked(question);
            case ReadingParse.Rejected rejected:
                return new SessionOutcome.Refused(rejected.Message);
            default:
                throw new InvalidOperationException("A reading is a value, a question or a refusal.");
        }
    }

    /// <summary>Gives a check up; with a place, everything that needs it.</summary>
    /// <param name="check">The check; null for the one that is asked now.</param>
    /// <param name="place">A place or part; null to give up only the check.</param>
    public SessionOutcome Skip(Check? check = null, string? place = null, SkipReason reason = SkipReason.CannotReach)
    {
        if (Closed() is { } closed)
        {
            return closed;
        }

        check ??= Next.Check;
        if (check is null)
        {
            return new SessionOutcome.Misplaced(new Message("session.nothing-asked"));
        }

        if (check.Kind is CheckKind.Repair or CheckKind.PutBack)
        {
            return new SessionOutcome.Misplaced(new Message(
                check.Kind == CheckKind.Repair ? "session.repair-not-skipped" : "session.put-back-not-skipped"));
        }

        var (id, at) = _stamps.Next(Document.LastId);
        return Keep(new CheckSkipped(id, at, reason) { Check = check.Id, Place = place });
    }

    /// <summary>The place that is hardest to reach among those a check needs; null where it needs none.</summary>
    public string? HardestPlace(Check check) => Access.PlacesOf(Circuit, check)
        .Select(Circuit.FindPlace)
        .MaxBy(p => p!.OpenMinutes)?.Name;

    /// <summary>Takes back the last reading, proof, repair or skip, or the closing or handing over of a job.</summary>
    /// <param name="entry">Another entry to take back; null for the last.</param>
    public SessionOutcome Withdraw(SessionEntry? entry = null, string? reason = null)
    {
        var targets = new List<JobEvent>();
        targets.AddRange(State.InForce.Where(e => e is JobClosed or HandedOver).Reverse());
        // A job that was handed over or given up goes on where it stood; a proven one takes back its last proof.
        if (entry is not null)
        {
            targets.Add(entry.Event);
        }
        else if (State.Closed is not { Outcome: not JobOutcome.Proven } && State.HandedOver is null
            && State.LastToWithdraw is { } last)
        {
            targets.Add(last);
        }

        if (targets.Count == 0)
        {
            return new SessionOutcome.Misplaced(new Message("session.nothing-to-withdraw"));
        }

        return WithdrawAll(targets, reason);
    }

    private SessionOutcome WithdrawAll(IEnumerable<JobEvent> targets, string? reason)
    {
        var kept = ImmutableArray.CreateBuilder<JobEvent>();
        foreach (var target in targets)
        {
            var (id, at) = _stamps.Next(Document.LastId);
            var outcome = Keep(new ReadingWithdrawn(id, at, target.Id) { Reason = reason });
            if (outcome is not SessionOutcome.Kept done)
            {
                return outcome;
            }

            kept.AddRange(done.Events);
        }

        return new SessionOutcome.Kept(kept.ToImmutable());
    }

    /// <summary>Keeps a note; it does not move the odds.</summary>
    public SessionOutcome Note(string text)
    {
        var (id, at) = _stamps.Next(Document.LastId);
        return Keep(new NoteWritten(id, at, text));
    }

    /// <summary>Keeps what a report says of the car and the people, at any time; what is null stays as it was.</summary>
    public SessionOutcome Describe(string? vehicle, string? owner, string? worker)
    {
        var (id, at) = _stamps.Next(Document.LastId);
        return Keep(new JobDescribed(id, at) { Vehicle = vehicle, Owner = owner, Worker = worker });
    }

    /// <summary>Hands the job over to somebody else, and closes it.</summary>
    public SessionOutcome HandOver(string? to, string? text)
    {
        if (Closed() is { } closed)
        {
            return closed;
        }

        var (id, at) = _stamps.Next(Document.LastId);
        var handed = Keep(new HandedOver(id, at) { To = to, Text = text });
        return handed is SessionOutcome.Kept kept ? And(kept, Close(JobOutcome.HandedOver)) : handed;
    }

    /// <summary>"No" may be silent, dark or dead: where that is all the same to the check, nothing is in doubt.</summary>
    private static bool IsOneMeaning(Check check, ReadingParse.Question question) =>
        question is { Meant: ReadingParse.Word meant, Alternatives.Length: > 0 }
        && check.GroupOf(meant.Answer) is >= 0 and var group
        && question.Alternatives.All(a => a is ReadingParse.Word other && check.GroupOf(other.Answer) == group);

    private SessionOutcome.Misplaced? Closed() =>
        IsDone ? new SessionOutcome.Misplaced(new Message("session.done")) : null;

    private SessionOutcome Keep(Check check, string typed, ReadingValue value, bool confirmed)
    {
        if (value is ReadingParse.Word word && check.Subject.IsOfALoad())
        {
            // Of words that mean the same the one that suits the load: a lamp is dark, not silent. What was typed is kept as it was.
            value = new ReadingParse.Word(OfferedWords.For(Circuit, check, word.Answer));
        }

        var (id, at) = _stamps.Next(Document.LastId);
        if (check.Kind == CheckKind.Repair)
        {
            if (IsNotSure(value))
            {
                return new SessionOutcome.Misplaced(new Message("session.repair-not-skipped"));
            }

            var blamed = Investigation.PresentFinding();
            var suspect = blamed is not null && blamed.Repair.Id == check.RepairId ? blamed.Blamed[0].Suspect.Id : "";
            return Keep(new RepairDone(id, at, suspect, check.RepairId!));
        }

        if (check.Kind == CheckKind.PutBack)
        {
            if (IsNotSure(value))
            {
                return new SessionOutcome.Misplaced(new Message("session.put-back-not-skipped"));
            }

            var list = Investigation.PutBackList;
            var back = Keep(new PutBackDone(id, at)
            {
                Items = [.. list.Select(i => i.Id)],
                Minutes = Math.Round(list.Sum(i => i.Minutes), 2),
            });
            return back is SessionOutcome.Kept done && IsProven ? And(done, Close(JobOutcome.Proven)) : back;
        }

        var seen = Describe(check, typed, value, confirmed);
        if (check.Kind != CheckKind.Proof)
        {
            return Keep(new ReadingTaken(id, at, seen));
        }

        return Keep(new ProofTaken(id, at, seen) { Proves = State.Repairs.LastOrDefault()?.Id });
    }

    private SessionOutcome Close(JobOutcome outcome)
    {
        var (id, at) = _stamps.Next(Document.LastId);
        return Keep(new JobClosed(id, at, outcome));
    }

    private static SessionOutcome And(SessionOutcome.Kept first, SessionOutcome second) =>
        second is SessionOutcome.Kept kept ? new SessionOutcome.Kept(first.Events.AddRange(kept.Events)) : second;

    /// <summary>First the store, then what the session knows.</summary>
    private SessionOutcome Keep(JobEvent happened)
    {
        if (_store.Append(happened, Document.LastId) is { } trouble)
        {
            return new SessionOutcome.NotKept(trouble);
        }

        Document = Document.With(happened);
        State = JobReplay.Replay(Document);
        if (happened is ReadingWithdrawn)
        {
            // From the start, but with what was simulated so far: taking back must not take longer than doing.
            Investigation = Investigation.Anew();
            Replay();
        }
        else
        {
            Take(happened);
        }

        return new SessionOutcome.Kept([happened]);
    }

    private Observation Describe(Check check, string typed, ReadingValue value, bool confirmed)
    {
        var arrangement = check.Arrangement;
        return new Observation(
            check.Id, KindName(check.Kind),
            new ArrangementUsed(arrangement.Condition)
            {
                Unplugged = [.. arrangement.Unplugged],
                Removed = [.. arrangement.Removed],
                Jumpers = [.. arrangement.Jumpers.Select(j => new Jumper(j.From.ToString(), j.To.ToString()))],
                Opened = [.. _position.After(Circuit, check).Arrangement.Opened],
            },
            check.Probe.Instrument.Name(), typed, value)
        {
            Red = check.Probe.Red?.ToString(),
            Black = check.Probe.Black?.ToString(),
            About = check.Probe.About,
            LampWatts = check.Probe.LampWatts,
            Meter = MeterFor(check)?.ToKeep(),
            Confirmed = confirmed,
        };
    }

    /// <summary>The kind as files and scripts write it.</summary>
    public static string KindName(CheckKind kind) => kind switch
    {
        CheckKind.Look => "look",
        CheckKind.Listen => "listen",
        CheckKind.Bench => "bench",
        CheckKind.Swap => "swap",
        CheckKind.Repair => "repair",
        CheckKind.Proof => "proof",
        CheckKind.PutBack => "put-back",
        _ => "reading",
    };
}
