using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Sessions;

/// <summary>A session, or why the job can't be worked on.</summary>
public sealed record OpenedSession(JobSession? Session, Message? Problem)
{
    [MemberNotNullWhen(true, nameof(Session))]
    [MemberNotNullWhen(false, nameof(Problem))]
    public bool IsOpen => Session is not null;
}

/// <summary>
/// A job being worked on: its events replayed into an <see cref="Investigation"/>. What the person does becomes an
/// event, is kept by the store, and only then counts. Not thread-safe.
/// </summary>
public sealed partial class JobSession
{
    private readonly IJobStore _store;
    private readonly EventStamps _stamps;
    private readonly List<SessionEntry> _entries = [];
    private readonly List<Message> _problems = [];
    private Position _position;
    private NextStep? _next, _sight;

    private JobSession(
        JobDocument document, JobState state, Circuit circuit, Complaint complaint, IJobStore store, EventStamps stamps, JobSession? alike)
    {
        _store = store;
        _stamps = stamps;
        Document = document;
        State = state;
        // Another job with the same beginning has simulated much of what this one asks for.
        Investigation = alike is not null && alike.BeginsAs(state) ? alike.Investigation.Anew() : Begin(circuit, complaint);
        _position = Position.Start(circuit);
        Replay();
    }

    /// <summary>All events, withdrawn ones included.</summary>
    public JobDocument Document { get; private set; }

    public JobState State { get; private set; }

    public Investigation Investigation { get; private set; }

    public Circuit Circuit => Investigation.Circuit;

    public JobOpened Opened => State.Opened!;

    /// <summary>What counts, in order.</summary>
    public IReadOnlyList<SessionEntry> Entries => _entries;

    /// <summary>What is odd about the job, or could not be weighed.</summary>
    public IEnumerable<Message> Problems => State.Problems.Concat(_problems);

    /// <summary>How the car and the meter stand.</summary>
    public Position Position => _position;

    /// <summary>Minutes of all that was done, by the engine's table.</summary>
    public double MinutesSpent => _entries.Sum(e => e.Minutes)
        // Whoever hands a car over puts it back together first.
        + (State.HandedOver is null ? 0 : Investigation.PutBackList.Sum(i => i.Minutes));

    /// <summary>The finding that the last repair was done upon; null before any repair.</summary>
    public Finding? FindingBeforeRepair { get; private set; }

    /// <summary>What to do now.</summary>
    public NextStep Next => _next ??= Investigation.Next();

    /// <summary>What to do now as a first sight gives it; see <see cref="Investigation.NextAtFirstSight"/>.</summary>
    public NextStep FirstSight => _next ?? (_sight ??= Investigation.NextAtFirstSight());

    /// <summary>Following the plan beside buying the most blamed part now; null once a repair is being proven.</summary>
    public Comparison? Compared => Investigation.Compare(Next);

    /// <summary>The finding: the present one, or the one that was acted upon and is being proven.</summary>
    public Finding? Finding => Next.Finding is { } present && !Next.IsProven && Next.Check?.Kind != CheckKind.PutBack ? present : FindingBeforeRepair;

    /// <summary>Proven, handed over or closed: nothing more is to be done.</summary>
    public bool IsDone => State.IsClosed || State.HandedOver is not null || IsProven;

    /// <summary>The last repair is proven and the car is put back; or the job was closed as proven, as older programs did without.</summary>
    public bool IsProven => State.Closed is { Outcome: JobOutcome.Proven }
        || (_entries.Exists(e => e.Event is RepairDone) && Investigation.IsProven);

    /// <summary>Replays a job.</summary>
    /// <param name="store">Where what is done from now on is kept.</param>
    /// <param name="alike">
    /// A session whose simulations are taken over where its job began as this one: the same answers, sooner. Null for none.
    /// </param>
    public static OpenedSession Open(JobDocument document, IJobStore store, EventStamps? stamps = null, JobSession? alike = null)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(store);
        var state = JobReplay.Replay(document);
        if (state.Opened is not { } opened)
        {
            return new OpenedSession(null, new Message("job.not-opened"));
        }

        if (SheetReader.Read(opened.SheetText).Circuit is not { } circuit)
        {
            return new OpenedSession(null, new Message("session.sheet-broken", opened.SheetName));
        }

        if (ComplaintChoice.Of(circuit, opened) is not { } complaint
            || circuit.Find(complaint.Load) is not Load
            || circuit.FindCondition(complaint.Condition) is not { } condition)
        {
            return new OpenedSession(null, new Message("session.no-complaint", opened.Complaint));
        }

        return new OpenedSession(
            new JobSession(
                document, state, circuit, complaint with { Condition = condition.Name }, store,
                stamps ?? EventStamps.OfThisMachine, alike),
            null);
    }

    /// <summary>
    /// Whether another job begins as this one does: sheet, complaint and what is at hand are the same. Jobs with a history
    /// are never taken for alike.
    /// </summary>
    public bool BeginsAs(JobDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return BeginsAs(JobReplay.Replay(document));
    }

    private bool BeginsAs(JobState other) => other.Opened is { Learned: null } opened && Opened.Learned is null
        && opened.SheetText == Opened.SheetText && opened.Complaint == Opened.Complaint && opened.Meant == Opened.Meant
        // Places that are given up are taken out afterwards.
        && opened.Options with { UnreachablePlaces = [] } == Opened.Options with { UnreachablePlaces = [] };

    /// <summary>The check of this id; null where there is none.</summary>
    public Check? FindCheck(string id) => Investigation.FindCheck(id);

    /// <summary>The repair a repair check stands for.</summary>
    public Repair? RepairOf(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return check.RepairId is not { } id ? null : Investigation.Suspects
            .SelectMany(s => s.Suspect.Modes)
            .Select(m => RepairCatalog.For(Circuit, m, []))
            .FirstOrDefault(r => r.Id == id);
    }

    /// <summary>The meter as this check uses it.</summary>
    public MeterReport? MeterFor(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        var near = check.TakesNumber
            ? Investigation.Expected(check, 3).FirstOrDefault(e => e.Mean is not null)?.Mean ?? 0
            : 0;
        return MeterReport.Of(Investigation.Options.MeterInUse, check.Probe, Circuit.Battery.NominalVolts, near);
    }

    /// <summary>The investigation before anything was read: with the history the job was opened with, and no other.</summary>
    private Investigation Begin(Circuit circuit, Complaint complaint) => Investigation.Open(
        circuit, complaint, OptionsOfJob.ToUse(Opened.Options), null, HistoryOfJob.ToUse(Opened.Learned));

    private void Replay()
    {
        _entries.Clear();
        _problems.Clear();
        (_next, _sight) = (null, null);
        _position = Position.Start(Circuit);
        FindingBeforeRepair = null;
        var number = 0;
        foreach (var place in Opened.Options.UnreachablePlaces)
        {
            if (StoredChecks.Needing(Investigation, place) is { } check)
            {
                Investigation.Skip($"unreachable {++number}", check, place);
            }
        }

        foreach (var happened in State.InForce)
        {
            Take(happened);
        }
    }

    /// <summary>Lets an event count.</summary>
    private void Take(JobEvent happened)
    {
        (_next, _sight) = (null, null);
        switch (happened)
        {
            case ReadingTaken reading:
                TakeReading(reading, reading.Observation);
                break;
            case ProofTaken proof:
                TakeReading(proof, proof.Observation);
                break;
            case RepairDone done:
                TakeRepair(done);
                break;
            case CheckSkipped skipped:
                TakeSkip(skipped);
                break;
            case ThingNoticed noticed:
                TakeNoticed(noticed);
                break;
            case PartFound found:
                TakeFound(found);
                break;
            case PutBackDone done:
                TakePutBack(done);
                break;
            default:
                break;
        }
    }

    private void TakeReading(JobEvent happened, Observation seen)
    {
        if (StoredChecks.Find(Investigation, seen) is not { } check)
        {
            _problems.Add(new Message("session.unknown-check", seen.Check));
            return;
        }

        Investigation.Record(happened.Id.ToString(), check, seen.Value);
        Enter(happened, check, seen.Value, Effort.MinutesOf(Circuit, Investigation.Options, _position, check));
    }

    private void TakeRepair(RepairDone done)
    {
        if (StoredChecks.FindRepair(Investigation, done.Repair) is not { } check)
        {
            _problems.Add(new Message("session.unknown-repair", done.Repair));
            return;
        }

        FindingBeforeRepair = Investigation.PresentFinding();
        Investigation.Record(done.Id.ToString(), check, new ReadingParse.Word(AnswerWord.Done));
        var access = Effort.MinutesOf(Circuit, Investigation.Options, _position, check);
        Enter(done, check, new ReadingParse.Word(AnswerWord.Done), access + (RepairOf(check)?.Minutes ?? 0));
    }

    private void TakePutBack(PutBackDone done)
    {
        var check = Investigation.PutBackCheck;
        var minutes = Investigation.PutBackList.Sum(i => i.Minutes);
        var word = new ReadingParse.Word(AnswerWord.Done);
        Investigation.Record(done.Id.ToString(), check, word);
        Enter(done, check, word, minutes);
    }

    private void TakeSkip(CheckSkipped skipped)
    {
        var check = skipped.Check is { } id ? Investigation.FindCheck(id)
            : skipped.Place is { } place ? StoredChecks.Needing(Investigation, place)
            : null;
        if (check is not null)
        {
            Investigation.Skip(skipped.Id.ToString(), check, skipped.Place);
        }

        _entries.Add(new SessionEntry(
            _entries.Count + 1, skipped, skipped.Check is null ? null : check, null, _position, 0));
    }

    private void Enter(JobEvent happened, Check check, ReadingValue value, double minutes)
    {
        _entries.Add(new SessionEntry(_entries.Count + 1, happened, check, value, _position, Math.Round(minutes, 2)));
        _position = _position.After(Circuit, check);
    }

    private static bool IsNotSure(ReadingValue value) =>
        value is ReadingParse.Word { Answer: var answer } && answer == AnswerWord.NotSure;
}
