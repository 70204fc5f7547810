using System.Text;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Jobs.Tests.Sessions;

/// <summary>A result from the bench becomes evidence in a job: once, kept, taken back.</summary>
public sealed class BenchResultTests
{
    private static Noticed Found(JobSession session, string text) =>
        PartFindings.Read(session.Circuit, session.Complaint(), text).What!;

    private static JobSession Pump() => SessionJob.Open(SessionJob.Opened("pump-feed"));

    private static string Refusal(SessionOutcome outcome) => Assert.IsType<SessionOutcome.Misplaced>(outcome).Message.Code;

    [Fact]
    public void It_survives_the_file_and_moves_the_odds_again()
    {
        var session = Pump();
        session.Record("silent");
        var before = session.Odds();
        Assert.IsType<SessionOutcome.Kept>(session.Attach("contact", Found(session, "relay-contact-bad:K2"), ["--millivolts", "900", "--amps", "6"]));
        var lines = session.Document.ToJsonLines();
        var again = SessionJob.Open(JobDocument.Read(lines).Document);

        Assert.NotEqual(before, session.Odds());
        Assert.Equal(session.Odds(), again.Odds());
        Assert.Equal("relay-contact-bad:K2", Assert.Single(again.BenchResults).What.ToString());
        Assert.Empty(again.Noticed);
        Assert.Empty(again.Problems);
        Assert.Equal(["--millivolts", "900", "--amps", "6"], again.State.Found.Single().Typed);
        Assert.Contains("\"event\":\"part-found\"", Encoding.UTF8.GetString(lines), StringComparison.Ordinal);
    }

    [Fact]
    public void The_order_of_results_and_readings_does_not_matter()
    {
        var first = Pump();
        first.Attach("contact", Found(first, "relay-contact-bad:K2"), []);
        first.Record("silent");
        var last = Pump();
        last.Record("silent", first.Entries[0].Check);
        last.Attach("contact", Found(last, "relay-contact-bad:K2"), []);

        Assert.Equal(first.Odds(), last.Odds());
    }

    [Fact]
    public void It_is_attached_once_and_a_contradiction_is_refused()
    {
        var session = Pump();
        session.Attach("winding", Found(session, "relay-coil-open:K2"), []);
        var odds = session.Odds();

        Assert.Equal("found.already", Refusal(session.Attach("relay", Found(session, "relay-coil-open:K2"), [])));
        Assert.Equal("found.contradicts", Refusal(session.Attach("relay", Found(session, "relay-coil-good:K2"), [])));
        Assert.Equal(odds, session.Odds());
        Assert.IsType<SessionOutcome.Kept>(session.Attach("relay", Found(session, "relay-coil-good:K1"), []));
    }

    [Fact]
    public void A_copy_that_a_merge_brings_counts_no_more_and_goes_with_the_first()
    {
        var session = Pump();
        var before = session.Odds();
        session.Attach("winding", Found(session, "relay-coil-open:K2"), []);
        var (id, at) = EventStamps.OfThisMachine.Next(session.Document.LastId);
        var merged = SessionJob.Open(session.Document.With(new PartFound(id, at, "relay", "relay-coil-open", "K2")));

        Assert.Equal(session.Odds(), merged.Odds());
        Assert.IsType<SessionOutcome.Kept>(merged.WithdrawBench(Found(merged, "relay-coil-open:K2")));
        Assert.Equal(before, merged.Odds());
    }

    [Fact]
    public void It_can_be_taken_back_and_the_readings_stay()
    {
        var session = Pump();
        session.Record("silent");
        var before = session.Odds();
        session.Attach("fuse", Found(session, "fuse-whole:F19"), []);

        Assert.IsType<SessionOutcome.Kept>(session.WithdrawBench(Found(session, "fuse-whole:F19"), "wrong fuse"));
        Assert.Equal(before, session.Odds());
        Assert.Empty(session.BenchResults);
        Assert.Single(session.Entries);
        Assert.Equal("found.not-attached", Refusal(session.WithdrawBench(Found(session, "fuse-whole:F19"))));
        Assert.Equal(SessionJob.Open(session.Document).Odds(), session.Odds());
    }

    [Fact]
    public void The_same_measurement_does_not_count_as_a_check_and_as_a_result()
    {
        var session = Pump();
        var bench = session.FindCheck(Check.Create(
            CheckKind.Bench, CheckSubject.BenchRelay, new Arrangement(CheckCatalog.RestCondition(session.Circuit)).Remove("K2"),
            new Probe(Instrument.Eye, null, null, "K2")).Id)!;
        var recorded = session.Record("bad", bench);
        Assert.True(recorded is SessionOutcome.Kept, recorded.ToString());

        Assert.Equal("found.measured-before", Refusal(session.Attach("contact", Found(session, "relay-contact-bad:K2"), [])));
        Assert.IsType<SessionOutcome.Kept>(session.Attach("contact", Found(session, "relay-contact-bad:K1"), []));
    }

    [Fact]
    public void A_result_of_a_newer_program_is_kept_and_told()
    {
        var document = SessionJob.Opened("pump-feed");
        var (id, at) = EventStamps.OfThisMachine.Next(document.LastId);
        var session = SessionJob.Open(document.With(new PartFound(id, at, "scope", "relay-coil-purple", "K2")));

        Assert.Equal("session.unknown-found", Assert.Single(session.Problems).Code);
        Assert.Equal(SessionJob.Open(document).Odds(), session.Odds());
    }
}
