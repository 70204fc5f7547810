using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Jobs.Tests.Sessions;

public sealed class OpeningTests
{
    [Fact]
    public void Everything_at_hand_survives_the_file()
    {
        var options = new DiagnosisOptions(
            true, 2.5, ["screwdriver"], false, false, true, true, true,
            new Meter(1e6, 4e3, 0.3, 2000, 0.01, 3, 20, 5), RemoteStarter: true);
        var document = SessionJob.Opened("pump-feed", options, "column", "tank");
        var session = SessionJob.Open(JobDocument.Read(document.ToJsonLines()).Document);
        var kept = session.Investigation.Options;

        Assert.Equal(options with { Tools = default }, kept with { Tools = default });
        Assert.Equal(options.Tools, kept.Tools);
        Assert.Equal(["column", "tank"], session.Opened.Options.UnreachablePlaces);
    }

    [Fact]
    public void A_file_of_an_older_program_opens_with_the_usual_at_hand()
    {
        var opened = new JobOpened(EventIdSource.Shared.Next(), DateTimeOffset.UnixEpoch, "headlamps", ShippedSheets.Text("headlamps")!, "1", "0.1.0")
        {
            Complaint = "right headlamp dark",
            Options = new JobOptions { HelperPresent = true, Meter = new MeterUsed(1e6, 0.01, "0.5 % + 2", 0.4) },
        };
        var session = SessionJob.Open(JobDocument.Empty.With(opened));

        Assert.Equal("RH", session.Complaint().Load);
        Assert.True(session.Investigation.Options.Helper);
        Assert.False(session.Investigation.Options.RemoteStarter);
        Assert.True(session.Investigation.Options.HasTestLamp);
        Assert.Equal((1e6, 0.4), (session.Investigation.Options.MeterInUse.InputOhms, session.Investigation.Options.MeterInUse.LeadOhms));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_remote_starter_switch_is_told_in_the_file_only_where_it_is_there(bool isThere)
    {
        var document = SessionJob.Opened("headlamps", DiagnosisOptions.Default with { RemoteStarter = isThere });
        var lines = System.Text.Encoding.UTF8.GetString(document.ToJsonLines());

        Assert.Equal(isThere, lines.Contains("\"remoteStarterPresent\":true", StringComparison.Ordinal));
        Assert.Equal(isThere, lines.Contains("remoteStarterPresent", StringComparison.Ordinal));
        Assert.Equal(isThere, SessionJob.Open(JobDocument.Read(document.ToJsonLines()).Document).Investigation.Options.RemoteStarter);
    }

    [Fact]
    public void Places_given_up_from_the_start_are_not_asked_for()
    {
        var session = SessionJob.Open(SessionJob.Opened("headlamps", null, "engine bay", "engine bay box", "left headlamp"));
        session.Record("dim");
        session.Skip();

        Assert.All(session.Investigation.RankedNow(), r => Assert.DoesNotContain(
            session.Position.After(session.Circuit, r.Check).Arrangement.Opened, p => p is "engine bay" or "engine bay box" or "left headlamp"));
    }

    [Fact]
    public void Without_complaints_the_first_load_that_works_is_dead()
    {
        var text = """
            sheet: 1
            title: One lamp
            conditions:
              key off: {}
              light: { SW: on }
            parts:
              BAT: { kind: battery }
              F1:  { kind: fuse, rating: 10 A }
              SW:  { kind: switch }
              L1:  { kind: lamp, watts: 21 W }
            wiring:
              - BAT.pos -> F1 -> wire 1.5mm2 1m RD -> SW -> wire 1.5mm2 1m RD -> L1
              - L1.2 -> wire 1.5mm2 1m BN -> BAT.neg
            """;
        var reading = SheetReader.Read(text);
        Assert.NotNull(reading.Circuit);

        Assert.Equal(new Complaint("L1 dead", "L1", LoadCondition.Dead, "light"), ComplaintChoice.Usual(reading.Circuit));
    }

    [Fact]
    public void A_job_without_its_opening_or_with_a_broken_sheet_is_not_worked_on()
    {
        Assert.Equal("job.not-opened", JobSession.Open(JobDocument.Empty, NothingKept.Instance).Problem!.Code);
        var broken = new JobOpened(EventIdSource.Shared.Next(), DateTimeOffset.UnixEpoch, "x", "sheet: 1\n", "1", "0.1.0");
        Assert.Equal("session.sheet-broken", JobSession.Open(JobDocument.Empty.With(broken), NothingKept.Instance).Problem!.Code);
    }
}
