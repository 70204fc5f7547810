using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Learning;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Learning;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Jobs.Storage;
using Halfsplit.Jobs.Tests.Sessions;
using Halfsplit.Jobs.Tests.Storage;
using Xunit;

namespace Halfsplit.Jobs.Tests.Learning;

public sealed class JobHistoryTests
{
    private static readonly EventStamps Stamps = EventStamps.OfThisMachine;
    private static readonly string Title = ShippedSheets.Load("headlamps").Title;

    /// <summary>A finished job: repairs in order, the last one cured.</summary>
    private static JobDocument Finished(string suspect, params string[] repairs)
    {
        var document = SessionJob.Opened();
        foreach (var repair in repairs)
        {
            document = document.With(new RepairDone(Next(document).Id, DateTimeOffset.UnixEpoch, suspect, repair));
        }

        return document.With(new JobClosed(Next(document).Id, DateTimeOffset.UnixEpoch, JobOutcome.Proven));
    }

    private static (EventId Id, DateTimeOffset At) Next(JobDocument document) => Stamps.Next(document.LastId);

    private static FailureHistory Learn(params JobDocument[] jobs) => FailureHistory.Of(
        JobHistory.Of(jobs.Select((j, i) => ($"{i}", j))).Select(e => e.Case).OfType<ProvenCase>(), Title);

    [Fact]
    public void A_job_played_to_its_proof_teaches_its_fault()
    {
        var session = SessionJob.Open(SessionJob.Opened());
        var car = Halfsplit.Jobs.Practice.PracticeCar.Draw(
            session.Circuit, session.Complaint(), Halfsplit.Simulation.Instruments.Meter.Default, 3)!;
        for (var i = 0; i < 60 && !session.IsDone && session.Next.Check is { } check; i++)
        {
            if (session.RepairOf(check) is { } repair)
            {
                car.Repair(repair);
            }

            session.Record(Halfsplit.Jobs.Practice.EnginePlay.AsTyped(car.Answer(check)), check, confirmed: true);
        }

        Assert.True(session.IsProven);
        var entry = Assert.Single(JobHistory.Of([("played", session.Document)]));
        Assert.Null(entry.Problem);
        Assert.Equal(session.State.Repairs.Last().Suspect, entry.Case!.Fault.Suspect);
        Assert.Equal(session.Opened.Id.ToString(), entry.Case.Job);
    }

    [Fact]
    public void Only_what_is_closed_as_proven_counts_and_the_last_repair_is_the_cure()
    {
        var open = SessionJob.Opened();
        var handed = open.With(new JobClosed(Next(open).Id, DateTimeOffset.UnixEpoch, JobOutcome.HandedOver));
        var history = Learn(open, handed, Finished("G5 resistive", "replace LH", "clean-ground G5"));

        Assert.Equal(1, history.Jobs);
        Assert.Equal("G5 resistive", history.Suspects.Single(s => s.Jobs > 0).Name);
    }

    [Fact]
    public void Withdrawn_events_do_not_count()
    {
        var job = Finished("G5 resistive", "clean-ground G5");
        var reopened = job.With(new ReadingWithdrawn(Next(job).Id, DateTimeOffset.UnixEpoch, job.LastId!.Value));

        Assert.Equal(1, Learn(job).Jobs);
        Assert.Equal(0, Learn(reopened).Jobs);
        // A copy that knows less does not bring it back.
        Assert.Equal(0, Learn(job, reopened).Jobs);
    }

    [Fact]
    public void A_repair_withdrawn_is_not_the_cure()
    {
        var open = SessionJob.Opened();
        var first = open.With(new RepairDone(Next(open).Id, DateTimeOffset.UnixEpoch, "G5 resistive", "clean-ground G5"));
        var wrong = first.With(new RepairDone(Next(first).Id, DateTimeOffset.UnixEpoch, "", "replace LH"));
        var back = wrong.With(new ReadingWithdrawn(Next(wrong).Id, DateTimeOffset.UnixEpoch, wrong.LastId!.Value));
        var closed = back.With(new JobClosed(Next(back).Id, DateTimeOffset.UnixEpoch, JobOutcome.Proven));

        Assert.Equal("G5 resistive", Learn(closed).Suspects.Single(s => s.Jobs > 0).Name);
    }

    [Fact]
    public void The_history_stays_with_the_job_it_was_opened_with()
    {
        var history = Learn([.. Enumerable.Range(0, 5).Select(_ => Finished("C10.1 resistive", "mend-contact C10.1"))]);
        var circuit = ShippedSheets.Load("headlamps");
        var opened = JobOpening.Create(
            Stamps, "headlamps", ShippedSheets.Text("headlamps")!, circuit.Complaints[0], DiagnosisOptions.Default, [], "", history);
        var session = SessionJob.Open(JobDocument.Empty.With(opened));
        var again = SessionJob.Open(JobDocument.Read(session.Document.ToJsonLines()).Document);
        var plain = SessionJob.Open(SessionJob.Opened());

        Assert.Equal(session.Odds(), again.Odds());
        Assert.True(Odds(again) > 2 * Odds(plain), $"{Odds(plain)} -> {Odds(again)}");
        // And through a withdrawal, which replays the job.
        var before = again.Odds();
        again.Record("dim");
        again.Withdraw();
        Assert.Equal(before, again.Odds());

        static double Odds(JobSession job) => job.Investigation.Suspects.First(s => s.Suspect.Id == "C10.1 resistive").Odds;
    }

    [Fact]
    public void A_folder_gives_its_jobs_once_and_tells_what_it_can_not_read()
    {
        using var folder = new TemporaryFolder();
        var job = Finished("G5 resistive", "clean-ground G5");
        File.WriteAllBytes(folder.File("one.job.jsonl"), job.ToJsonLines());
        File.WriteAllBytes(folder.File("copy.job.jsonl"), job.ToJsonLines());
        File.WriteAllText(folder.File("broken.job.jsonl"), "no job at all");
        File.WriteAllBytes(folder.File("other.txt"), Finished("G5 resistive", "clean-ground G5").ToJsonLines());
        File.WriteAllBytes(folder.File("odd.job.jsonl"), Finished("", "replace the cat").ToJsonLines());

        var read = HistoryFolder.Read(Path.GetDirectoryName(folder.File("one.job.jsonl"))!);

        Assert.True(read.IsDone, read.Problem?.ToString());
        Assert.Equal("copy.job.jsonl", read.Value.Entries.Single(e => e.Case is not null).Name);
        Assert.Equal(["history.unknown-repair", "job.file-not-a-job"], read.Value.Problems.Select(p => p.Code).Order());
        Assert.False(HistoryFolder.Read(folder.File("nowhere")).IsDone);
    }
}
