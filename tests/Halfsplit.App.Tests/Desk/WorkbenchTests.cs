using Halfsplit.App.Desk;
using Halfsplit.App.Link;
using Halfsplit.Bench.Motors;
using Halfsplit.Jobs.Sessions;
using Xunit;

namespace Halfsplit.App.Tests.Desk;

/// <summary>The job on the screen, over the real engine.</summary>
public sealed class WorkbenchTests
{
    private readonly MemoryShelf _shelf = new();
    private readonly DeskEngine _engine;
    private readonly Workbench _bench;

    public WorkbenchTests()
    {
        _engine = new DeskEngine(_shelf);
        _bench = new Workbench(_engine, _shelf);
    }

    [Fact]
    public async Task A_job_is_kept_before_its_first_step_is_shown()
    {
        string? kept = null;
        await _bench.BeginAsync(new JobWish("headlamps", "left headlamp dark"), job => { kept = job; return Task.CompletedTask; });

        Assert.Equal(_bench.Job!.Id, kept);
        Assert.NotEmpty(await _shelf.LinesAsync(kept!));
        Assert.Equal("check", _bench.Step!.Kind);
        Assert.Contains("left headlamp", _bench.Step.Title, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_reading_is_kept_as_an_event_that_the_terminal_reads()
    {
        await Begin();
        await _bench.RecordAsync("dark");
        await _bench.RecordAsync("12.6");

        var lines = await _shelf.LinesAsync(_bench.Job!.Id);
        var opened = JobSession.Open(ShelvedJob.Document(lines), NothingKept.Instance);
        Assert.True(opened.IsOpen);
        Assert.Equal(2, opened.Session.Entries.Count);
        Assert.Equal(_bench.Step!.Check, opened.Session.Next.Check!.Id);
        Assert.NotNull(_bench.Saved);
    }

    [Fact]
    public async Task What_could_not_be_kept_is_not_shown_and_does_not_count()
    {
        await Begin();
        await _bench.RecordAsync("dark");
        var before = await _shelf.LinesAsync(_bench.Job!.Id);
        _engine.IsFull = true;

        await _bench.RecordAsync("12.6");

        Assert.Equal(AppTexts.Say("app.store.full"), _bench.Problem);
        Assert.Null(_bench.Saved);
        Assert.Single(_bench.Job!.Entries);
        Assert.Equal(before, await _shelf.LinesAsync(_bench.Job.Id));
    }

    [Fact]
    public async Task A_second_window_that_added_meanwhile_is_noticed_and_nothing_is_lost()
    {
        await Begin();
        var other = new Workbench(new DeskEngine(_shelf), _shelf);
        await other.OpenAsync(_bench.Job!.Id);
        await other.RecordAsync("dark");

        await _bench.RecordAsync("dark");

        Assert.Equal(AppTexts.Say("app.store.changed"), _bench.Problem);
        Assert.Single(_bench.Job!.Entries);
        Assert.NotNull(_bench.Step);
    }

    [Fact]
    public async Task A_doubtful_reading_is_questioned_before_it_is_kept()
    {
        await Begin();
        await _bench.RecordAsync("dark");
        var before = (await _shelf.LinesAsync(_bench.Job!.Id)).Length;

        await _bench.RecordAsync("126 V");
        Assert.NotNull(_bench.Doubt);
        Assert.Equal(before, (await _shelf.LinesAsync(_bench.Job.Id)).Length);

        await _bench.RecordAsync("126 V", confirmed: true);
        Assert.Null(_bench.Doubt);
        Assert.Equal(before + 1, (await _shelf.LinesAsync(_bench.Job.Id)).Length);
    }

    [Fact]
    public async Task Taking_back_adds_an_event_and_asks_again()
    {
        await Begin();
        var first = _bench.Step!.Check;
        await _bench.RecordAsync("dark");
        var lines = (await _shelf.LinesAsync(_bench.Job!.Id)).Length;

        await _bench.WithdrawAsync();

        Assert.Equal(first, _bench.Step!.Check);
        Assert.Empty(_bench.Job!.Entries);
        Assert.Equal(lines + 1, (await _shelf.LinesAsync(_bench.Job.Id)).Length);
    }

    [Fact]
    public async Task A_reading_that_was_being_typed_comes_back_with_the_job()
    {
        await Begin();
        await _bench.RecordAsync("dark");
        var job = _bench.Job!.Id;
        await _bench.KeepDraftAsync(_bench.Draft with { Check = _bench.Step!.Check, Typed = "12.4 V", Ticked = 2 });

        var later = new Workbench(new DeskEngine(_shelf), _shelf);
        await later.OpenAsync(job);

        Assert.Equal("12.4 V", later.Draft.Typed);
        Assert.Equal(2, later.Draft.Ticked);
        Assert.Equal(_bench.Step.Check, later.Step!.Check);
    }

    [Fact]
    public async Task Any_two_points_can_be_measured_and_are_there_again_after_a_reload()
    {
        await Begin();
        await _bench.RecordAsync("dark");
        await _bench.ChooseAsync(null, new PointsWish("F21.2p", "BAT.neg", "volts", "dipped beam"));
        Assert.True(_bench.Step!.IsChosen);
        var job = _bench.Job!.Id;

        var later = new Workbench(new DeskEngine(_shelf), _shelf);
        await later.OpenAsync(job);
        Assert.Equal(_bench.Step.Check, later.Step!.Check);
        await later.RecordAsync("12.2 V");

        Assert.Equal(2, later.Job!.Entries.Length);
        Assert.False(later.Step!.IsChosen);
    }

    [Fact]
    public async Task Where_volts_may_stand_ohms_are_refused()
    {
        await Begin();
        var reply = await _bench.LookAsync(new DeskRequest("between")
        {
            Points = new PointsWish("BAT.pos", "F21.2p", "ohms", "dipped beam"),
        });

        Assert.Equal(AppTexts.Say("app.between.live"), reply.Between!.Refusal);
    }

    [Fact]
    public async Task A_result_of_the_bench_is_attached_by_the_call_of_the_terminal()
    {
        await _bench.BeginAsync(new JobWish("pump-feed", "pump does not run"), _ => Task.CompletedTask);
        var parts = (await _bench.LookAsync(new DeskRequest("bench-parts") { Attach = new AttachWish("contact", "relay-contact-bad", "") })).Parts!;
        Assert.Equal(["K1", "K2"], parts.Select(p => p.Id));
        Assert.Equal(new SheetRating("M1", 5.5), (await _bench.LookAsync(new DeskRequest("bench-rated"))).Rated);

        var (kept, misfit) = await _bench.AttachAsync(
            new AttachWish("contact", "relay-contact-bad", "K2") { Typed = ["contact-drop=900", "load-current=6"], Measured = [new("ContactOhms", 0.15)] }, false);

        Assert.True(kept);
        Assert.Null(misfit);
        Assert.Contains("K2", Assert.Single(_bench.Job!.Bench), StringComparison.Ordinal);
        var found = Assert.Single(JobSession.Open(ShelvedJob.Document(await _shelf.LinesAsync(_bench.Job!.Id)), NothingKept.Instance).Session!.State.Found);
        Assert.Equal(("contact", "relay-contact-bad", "K2", 0.15), (found.Aid, found.Found, found.Part, found.Ohms));
    }

    [Fact]
    public async Task A_result_that_does_not_fit_is_asked_about_and_nothing_is_lost()
    {
        await _bench.BeginAsync(new JobWish("pump-feed", "pump does not run"), _ => Task.CompletedTask);
        await _bench.ChooseAsync("volts BAT.pos BAT.neg | key off");
        await _bench.RecordAsync("12.6", confirmed: true);
        var wish = new AttachWish("battery", "battery-low", "BAT") { Measured = [new("RestVolts", 9)] };
        var lines = await _shelf.LinesAsync(_bench.Job!.Id);

        var (kept, misfit) = await _bench.AttachAsync(wish, false);
        Assert.False(kept);
        Assert.Contains("12.6 V", misfit, StringComparison.Ordinal);
        Assert.Equal(lines, await _shelf.LinesAsync(_bench.Job!.Id));
        Assert.NotNull(_bench.Step);

        Assert.True((await _bench.AttachAsync(wish, true)).IsKept);
        Assert.Single(_bench.Job!.Bench);
    }

    [Fact]
    public async Task A_windings_result_is_offered_to_and_taken_for_parts_of_its_kind_alone()
    {
        await _bench.BeginAsync(new JobWish("pump-feed", "pump does not run"), _ => Task.CompletedTask);
        var wish = new AttachWish("winding", "winding-good", "") { PartKinds = ["motor"] };

        var parts = (await _bench.LookAsync(new DeskRequest("bench-parts") { Attach = wish })).Parts!;
        var (isKept, _) = await _bench.AttachAsync(wish with { Part = "INJ1" }, false);

        Assert.Equal("M1", Assert.Single(parts).Id);
        Assert.False(isKept);
        Assert.NotNull(_bench.Problem);
        Assert.Empty(_bench.Job!.Entries);
    }

    [Fact]
    public async Task Going_back_to_the_safety_page_while_it_is_still_laid_out_leaves_the_open_job_its_desk()
    {
        var engine = new DeskEngine(_shelf) { StillLaysOut = new TaskCompletionSource<DeskReply>() };
        var bench = new Workbench(engine, _shelf);
        await bench.OpeningAsync("horn", "horns are silent");
        await bench.BeginAsync(new JobWish("horn", "horns are silent"), _ => Task.CompletedTask);
        var job = bench.Job!.Id;
        var lines = (await _shelf.LinesAsync(job)).Length;

        // Back, and forward again.
        Assert.NotNull((await bench.OpeningAsync("horn", "horns are silent")).Opening);
        Assert.True(await bench.OpenAsync(job));
        await bench.RecordAsync("dead", confirmed: true);

        Assert.Null(bench.Problem);
        Assert.Equal(0, engine.Stops);
        Assert.Single(bench.Job!.Entries);
        Assert.True((await _shelf.LinesAsync(job)).Length > lines);
    }

    [Fact]
    public async Task What_is_laid_out_for_another_complaint_or_another_job_is_let_go()
    {
        await Begin();
        var job = _bench.Job!.Id;
        var engine = new DeskEngine(_shelf) { StillLaysOut = new TaskCompletionSource<DeskReply>() };
        var bench = new Workbench(engine, _shelf);
        await bench.OpeningAsync("horn", "horns are silent");

        await bench.OpeningAsync("headlamps", "left headlamp dark");
        Assert.Equal(1, engine.Stops);
        Assert.True(await bench.OpenAsync(job));
        Assert.Equal(2, engine.Stops);

        await bench.RecordAsync("dark");
        Assert.Null(bench.Problem);
        Assert.Single(bench.Job!.Entries);
    }

    private Task<bool> Begin() => _bench.BeginAsync(new JobWish("headlamps", "left headlamp dark"), _ => Task.CompletedTask);
}
