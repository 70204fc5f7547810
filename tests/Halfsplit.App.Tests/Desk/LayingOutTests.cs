using Halfsplit.App.Desk;
using Halfsplit.App.Link;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Xunit;

namespace Halfsplit.App.Tests.Desk;

/// <summary>What is worked out while the safety page is read: it is used where it fits, and changes nothing.</summary>
public sealed class LayingOutTests
{
    private static readonly JobWish Wish = new("horn", Complaint);

    private const string Complaint = "horns are silent";

    private readonly EngineDesk _desk = new(new EventStamps(new EventIdSource(TimeProvider.System), TimeProvider.System));

    [Fact]
    public void Laying_out_keeps_nothing_and_opens_nothing()
    {
        var reply = _desk.Answer(new DeskRequest("lay-out") { Wish = Wish });

        Assert.Null(reply.Problem);
        Assert.Null(reply.Keep);
        Assert.Null(reply.Job);
        Assert.NotNull(_desk.Answer(new DeskRequest("sight")).Problem);
    }

    [Fact]
    public void A_job_that_was_laid_out_asks_and_says_what_it_would_have_otherwise()
    {
        _desk.Answer(new DeskRequest("lay-out") { Wish = Wish });
        var plain = new EngineDesk(new EventStamps(new EventIdSource(TimeProvider.System), TimeProvider.System));

        Assert.Equal(Says(plain), Says(_desk));
    }

    [Fact]
    public void Only_a_job_that_begins_alike_takes_over_what_was_worked_out()
    {
        var job = Opened(Wish);

        Assert.True(job.BeginsAs(Opened(Wish).Document));
        Assert.True(job.BeginsAs(Opened(Wish with { Vehicle = "blue", Unreachable = ["engine bay"] }).Document));
        Assert.False(job.BeginsAs(Opened(Wish with { Helper = true }).Document));
        Assert.False(job.BeginsAs(Opened(Wish with { RemoteStarter = true }).Document));
        Assert.False(job.BeginsAs(Opened(Wish with { MeterCounts = 2000 }).Document));
        Assert.False(job.BeginsAs(Opened(new JobWish("headlamps", "left headlamp dark")).Document));
    }

    /// <summary>Opened at a desk, and read back from the lines it had kept.</summary>
    private JobSession Opened(JobWish wish) => JobSession.Open(
        ShelvedJob.Document(_desk.Answer(new DeskRequest("begin") { Wish = wish }).Keep!.Lines.Select(l => l.Line)), NothingKept.Instance).Session!;

    private static string[] Says(EngineDesk desk)
    {
        var begun = desk.Answer(new DeskRequest("begin") { Wish = Wish });
        var first = desk.Answer(new DeskRequest("next"));
        desk.Answer(new DeskRequest("record") { Typed = "dead", Check = first.Step!.Check, Confirmed = true });
        var second = desk.Answer(new DeskRequest("next"));
        return
        [
            .. begun.Job!.Suspects.Select(s => $"{s.Name} {s.Odds}"), first.Step.Title, second.Step!.Title, .. (second.Step.Others ?? []).Select(o => o.ToString()),
            .. desk.Answer(new DeskRequest("told")).Job!.Suspects.Select(s => $"{s.Name} {s.Odds}"),
        ];
    }
}
