using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Jobs.Storage;
using Halfsplit.Jobs.Tests.Storage;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Xunit;
using Observation = Halfsplit.Jobs.Events.Observation;

namespace Halfsplit.Jobs.Tests.Sessions;

public sealed class JobSessionTests
{
    [Fact]
    public void A_replay_stands_where_the_session_stood()
    {
        var session = SessionJob.Began("dim", "12.6 V");
        session.Skip();
        var again = SessionJob.Open(session.Document);

        Assert.Equal(session.Odds(), again.Odds());
        Assert.Equal(session.Next.Check, again.Next.Check);
        Assert.Equal(session.MinutesSpent, again.MinutesSpent);
        Assert.Equal(session.Position, again.Position);
    }

    [Fact]
    public void A_reading_survives_the_file_as_it_was_typed_and_understood()
    {
        var session = SessionJob.Began("dim", "12,60V");
        var read = JobDocument.Read(session.Document.ToJsonLines()).Document;
        var seen = SessionJob.Open(read).State.Readings.Last().Observation;

        Assert.Equal("12,60V", seen.Typed);
        Assert.Equal(new ReadingParse.Number(12.6, Quantity.Volts, 0.01), seen.Value);
        Assert.Equal("volts", seen.Instrument);
        Assert.Equal(("BAT.pos", "BAT.neg"), (seen.Red, seen.Black));
        Assert.Contains("engine bay", seen.Arrangement.Opened);
        Assert.Equal(1e7, seen.Meter!.InputOhms);
    }

    [Fact]
    public void What_the_store_does_not_keep_does_not_count()
    {
        var session = SessionJob.Open(SessionJob.Opened(), new FullStore());

        Assert.IsType<SessionOutcome.NotKept>(session.Record("dim"));
        Assert.Empty(session.Entries);
        Assert.Single(session.Document.Events);
    }

    [Fact]
    public void What_another_program_added_meanwhile_is_noticed()
    {
        using var folder = new TemporaryFolder();
        var path = folder.File("car.job.jsonl");
        var opened = SessionJob.Opened();
        JobFile.Create(path, (JobOpened)opened.Events[0].Event).Value!.Dispose();
        var first = SessionJob.Open(opened, new JobFileStore(path));
        var second = SessionJob.Open(opened, new JobFileStore(path));

        Assert.IsType<SessionOutcome.Kept>(first.Record("dim"));
        var late = Assert.IsType<SessionOutcome.NotKept>(second.Record("dark"));
        Assert.Equal("job.file-changed", late.Message.Code);
        Assert.Equal(2, JobFile.Read(path).Value!.Document.Events.Length);
    }

    [Fact]
    public void A_word_with_one_meaning_is_not_asked_back()
    {
        // "no" may be silent, dark or dead; for a lamp that is looked at it is all the same.
        var session = SessionJob.Began();

        Assert.IsType<SessionOutcome.Kept>(session.Record("no"));
        Assert.IsType<SessionOutcome.Asked>(session.Record("120 V"));
        Assert.IsType<SessionOutcome.Kept>(session.Record("120 V", confirmed: true));
    }

    [Fact]
    public void A_lamp_that_is_called_silent_is_dark_and_what_was_typed_stays()
    {
        var session = SessionJob.Began();
        session.Record("silent");

        var kept = Assert.IsType<ReadingTaken>(session.Document.Events[^1].Event);
        Assert.Equal("silent", kept.Observation.Typed);
        Assert.Equal(new ReadingParse.Word(AnswerWord.Dark), kept.Observation.Value);
    }

    [Fact]
    public void Withdrawing_is_as_if_it_had_never_been()
    {
        var session = SessionJob.Began("dim");
        var (odds, check) = (session.Odds(), session.Next.Check);
        session.Record("3.1 V", confirmed: true);
        session.Skip(null, "engine bay box");
        session.Withdraw();
        session.Withdraw();

        Assert.Equal(odds, session.Odds());
        Assert.Equal(check, session.Next.Check);
        // Nothing is erased: the job's opening, three things done, two taken back.
        Assert.Equal(6, session.Document.Events.Length);
    }

    [Fact]
    public void A_proven_job_closes_when_the_car_is_put_back_and_opens_again_when_that_is_withdrawn()
    {
        var session = Proven();
        Assert.False(session.IsDone);
        Assert.Equal(CheckKind.PutBack, session.Next.Check!.Kind);
        Assert.NotEmpty(session.Next.PutBack);
        Assert.IsType<SessionOutcome.Misplaced>(session.Skip());
        Assert.IsType<SessionOutcome.Misplaced>(session.Record("not sure"));
        var before = session.MinutesSpent;
        var minutes = session.Next.PutBack.Sum(i => i.Minutes);

        var kept = Assert.IsType<SessionOutcome.Kept>(session.Record("done"));

        Assert.Equal(minutes, Assert.IsType<PutBackDone>(kept.Events[0]).Minutes!.Value, 2);
        Assert.Equal(before + minutes, session.MinutesSpent, 2);
        Assert.True(session.IsDone);
        Assert.Equal(JobOutcome.Proven, session.State.Closed!.Outcome);
        Assert.NotNull(session.Finding);
        Assert.IsType<SessionOutcome.Misplaced>(session.Record("bright"));

        session.Withdraw();
        Assert.False(session.IsDone);
        Assert.Equal(CheckKind.PutBack, session.Next.Check!.Kind);
        session.Withdraw();
        Assert.Equal(CheckKind.Proof, session.Next.Check!.Kind);
    }

    [Fact]
    public void A_job_that_an_older_program_closed_without_putting_back_stays_closed_and_proven()
    {
        var proven = Proven();
        var document = proven.Document;
        var old = JobDocument.Empty;
        foreach (var stored in document.Events)
        {
            old = old.With(stored.Event);
        }

        var (id, at) = EventStamps.OfThisMachine.Next(old.LastId);
        var session = SessionJob.Open(old.With(new JobClosed(id, at, JobOutcome.Proven)));

        Assert.True(session.IsDone);
        Assert.True(session.IsProven);
        Assert.NotNull(session.Finding);
    }

    [Fact]
    public void Who_hands_a_car_over_puts_it_together_first_and_that_counts()
    {
        var session = SessionJob.Began("dim", "12.6 V");
        var before = session.MinutesSpent;
        var list = session.Investigation.PutBackList;

        session.HandOver("a workshop", null);

        Assert.Contains(list, i => i.Id == "close engine bay");
        Assert.Equal(before + list.Sum(i => i.Minutes), session.MinutesSpent, 2);
        Assert.True(session.IsDone);
    }

    /// <summary>The bad ground is cleaned, and every proof shows a good car.</summary>
    private static JobSession Proven()
    {
        var session = SessionJob.Began("dim", "12.6 V");
        var check = session.FindCheck(StoredRepair("clean-ground G5"))!;
        Assert.IsType<SessionOutcome.Kept>(session.Record("done", check));
        for (var i = 0; i < 12 && session.Next.Check is { Kind: CheckKind.Proof } proof; i++)
        {
            var healthy = session.Investigation.ExpectedHealthy(proof);
            var answer = healthy.Word ?? FormattableString.Invariant($"{healthy.Mean:0.000} V");
            Assert.IsType<SessionOutcome.Kept>(session.Record(answer, confirmed: true));
        }

        return session;
    }

    [Fact]
    public void Skipped_proofs_prove_nothing()
    {
        var session = SessionJob.Began("dim", "12.6 V");
        session.Record("done", session.FindCheck(StoredRepair("clean-ground G5")));
        while (session.Next.Check is { Kind: CheckKind.Proof })
        {
            session.Skip();
        }

        Assert.False(session.IsDone);
        Assert.Equal("reason.unproven", session.Next.Reason.Code);
    }

    [Fact]
    public void A_repair_is_not_skipped()
    {
        var session = SessionJob.Began("dim");
        var check = session.FindCheck(StoredRepair("clean-ground G5"));

        Assert.IsType<SessionOutcome.Misplaced>(session.Skip(check));
        Assert.IsType<SessionOutcome.Misplaced>(session.Record("not sure", check));
    }

    [Fact]
    public void A_reading_of_the_persons_own_choice_counts()
    {
        var document = SessionJob.Began("dim").Document;
        var seen = new Observation(
            "my own", "reading", new ArrangementUsed("dipped beam"), "volts", "3.2 V", new ReadingParse.Number(3.2, Quantity.Volts, 0.1))
        {
            Red = "K8.86p",
            Black = "F21.2p",
        };
        var (id, at) = EventStamps.OfThisMachine.Next(document.LastId);
        var session = SessionJob.Open(document.With(new ReadingTaken(id, at, seen)));

        Assert.Empty(session.Problems);
        Assert.Equal(new TerminalName("K8", "86p"), session.Entries[^1].Check!.Probe.Red);
        Assert.Equal(2, session.Investigation.Observations.Count());
    }

    [Fact]
    public void A_reading_that_nobody_understands_is_told_and_left_out()
    {
        var document = SessionJob.Began("dim").Document;
        var seen = new Observation(
            "smell of M1", "look", new ArrangementUsed("dipped beam"), "eye", "odd", new ReadingParse.Word(AnswerWord.Hot));
        var (id, at) = EventStamps.OfThisMachine.Next(document.LastId);
        var session = SessionJob.Open(document.With(new ReadingTaken(id, at, seen)));

        Assert.Equal("session.unknown-check", Assert.Single(session.Problems).Code);
        Assert.Single(session.Entries);
    }

    [Fact]
    public void A_substitute_load_is_found_again_by_its_watts()
    {
        var session = SessionJob.Began("dim");
        var lamp = CheckCatalog
            .Generate(session.Investigation.Network, session.Complaint(), session.Investigation.Options, [])
            .First(c => c is { Subject: CheckSubject.LampGlow, Probe.LampWatts: not null });
        session.Record("dark", lamp);

        Assert.Equal(lamp.Probe.LampWatts, session.State.Readings.Last().Observation.LampWatts);
        Assert.Equal(lamp, SessionJob.Open(session.Document).Entries[^1].Check);
    }

    /// <summary>The id that the check of a repair has.</summary>
    private static string StoredRepair(string repair) => Check.Create(
        CheckKind.Repair, CheckSubject.Repair, new Arrangement("key off"),
        new Probe(Instrument.Eye, null, null, repair[(repair.IndexOf(' ', StringComparison.Ordinal) + 1)..]), repair).Id;

    private sealed class FullStore : IJobStore
    {
        public Message? Append(JobEvent happened, EventId? after) => new("job.file-trouble", "x", "disk full");
    }
}
