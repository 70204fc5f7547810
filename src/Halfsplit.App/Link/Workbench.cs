using Halfsplit.App.Desk;
using Halfsplit.App.Views;

namespace Halfsplit.App.Link;

/// <summary>
/// The job on the screen: what the engine last said of it, what is being waited for, and the reading that is being typed.
/// What is shown as saved has been kept by the store before.
/// </summary>
public sealed partial class Workbench(IEngine engine, IJobShelf shelf)
{
    private int _change;

    /// <summary>Something to be shown has changed.</summary>
    public event Action? Changed;

    public JobView? Job { get; private set; }

    public StepView? Step { get; private set; }

    /// <summary>The step was thought of before the reading came; the engine is still making sure.</summary>
    public bool IsProvisional { get; private set; }

    /// <summary>The engine's surer choice, waiting while the person is in the middle of the provisional one.</summary>
    public StepView? Better { get; private set; }

    /// <summary>What the last reading did; null after it was looked at.</summary>
    public SavedView? Saved { get; private set; }

    public DoubtView? Doubt { get; private set; }

    public string? Problem { get; private set; }

    /// <summary>An answer is on its way into the store.</summary>
    public bool IsSaving { get; private set; }

    /// <summary>The next step is being worked out.</summary>
    public bool IsThinking { get; private set; }

    public Draft Draft { get; private set; } = Draft.Empty;

    /// <summary>Opens a new job; true when it is kept.</summary>
    /// <param name="whenKept">Called with the job's id as soon as it is, while its first step is still being worked out.</param>
    public async Task<bool> BeginAsync(JobWish wish, Func<string, Task> whenKept)
    {
        ArgumentNullException.ThrowIfNull(whenKept);
        await LeaveAsync();
        IsSaving = true;
        Tell();
        var reply = await engine.AskAsync(new DeskRequest("begin") { Wish = wish });
        IsSaving = false;
        if (!Take(reply))
        {
            return false;
        }

        HandOverLayout();
        Tell();
        OpenAhead();
        await whenKept(Job!.Id);
        Expect(null, goesOn: false);
        await NextAsync(null);
        return true;
    }

    /// <summary>Goes on with a job of the shelf; true when it could be opened.</summary>
    public async Task<bool> OpenAsync(string job)
    {
        if (Job?.Id == job)
        {
            return true;
        }

        await LeaveAsync();
        await StopLayingOutAsync();
        var lines = await shelf.LinesAsync(job);
        if (lines.Length == 0)
        {
            Problem = AppTexts.Say("app.desk.no-such-job");
            Tell();
            return false;
        }

        var draft = await shelf.DraftAsync(job);
        if (!Take(await engine.AskAsync(new DeskRequest("open") { Lines = lines })))
        {
            return false;
        }

        Draft = draft;
        OpenAhead();
        Expect(null, goesOn: true);
        await NextAsync(null, goesOn: true);
        return true;
    }

    /// <summary>Saves an answer.</summary>
    /// <param name="typed">As typed, or the text of a word.</param>
    /// <param name="confirmed">The person stands by a doubtful reading.</param>
    public Task RecordAsync(string typed, bool confirmed = false) => DoAsync(
        new DeskRequest("record") { Typed = typed, Check = Step?.Check, Confirmed = confirmed });

    /// <param name="place">A place to give up with everything in it; <c>hardest</c> for the one that is hardest to reach.</param>
    public Task SkipAsync(string reason, string? place = null) => DoAsync(
        new DeskRequest("skip") { Check = Step?.Check, Reason = reason, Place = place });

    /// <param name="entry">The number of the entry; null for the last.</param>
    public Task WithdrawAsync(int? entry = null) => DoAsync(new DeskRequest("withdraw") { Entry = entry });

    public Task NoticeAsync(string said) => DoAsync(new DeskRequest("notice") { Name = said });

    /// <summary>Attaches a result of the bench to the open job.</summary>
    /// <param name="confirmed">It was measured again, and the person stands by it.</param>
    /// <returns>Whether it was kept, and which reading of the job it does not fit; a problem is shown by the page.</returns>
    public async Task<(bool IsKept, string? Misfit)> AttachAsync(AttachWish wish, bool confirmed)
    {
        string? misfit = null;
        var isKept = false;
        await DoAsync(new DeskRequest("attach") { Attach = wish, Confirmed = confirmed }, reply => (isKept, misfit) = (reply.Keep is not null, reply.Misfit));
        return (isKept, misfit);
    }

    public Task NoteAsync(string text) => DoAsync(new DeskRequest("note") { Text = text });

    /// <summary>Says what a report says of the car and the people.</summary>
    public Task DescribeAsync(string vehicle, string owner, string worker) =>
        DoAsync(new DeskRequest("describe") { Text = vehicle, Name = owner, Worker = worker });

    public Task HandOverAsync(string to, string why) => DoAsync(new DeskRequest("hand-over")
    {
        Name = to.Length > 0 ? to : null,
        Text = why.Length > 0 ? why : null,
    });

    /// <summary>Does another check; without one, goes back to the one that is asked.</summary>
    public async Task ChooseAsync(string? check, PointsWish? points = null)
    {
        var reply = await engine.AskAsync(new DeskRequest("choose") { Check = check, Points = points });
        Problem = reply.Problem;
        if (reply.Step is { } step)
        {
            _change++;
            Show(step, isProvisional: false);
            await KeepDraftAsync(Draft.Empty with { Check = step.Check, Points = points, Read = Draft.Read });
            StartAhead();
        }

        Tell();
    }

    /// <summary>Asks for something that changes nothing; a problem is shown.</summary>
    public async Task<DeskReply> LookAsync(DeskRequest request)
    {
        var reply = await engine.AskAsync(request);
        Problem = reply.Problem;
        Tell();
        return reply;
    }

    /// <summary>Asks for something that takes long and changes nothing: of a desk that thinks, where there is one.</summary>
    public async Task<DeskReply> ThinkOfAsync(DeskRequest request) =>
        _thinkers.Length > 0 && await engine.ThinkAsync(0, request) is { IsLost: false } reply ? reply : await LookAsync(request);

    /// <summary>Keeps what is being typed, and which lines are ticked.</summary>
    public async Task KeepDraftAsync(Draft draft)
    {
        Draft = draft;
        if (Job is { } job)
        {
            await shelf.KeepDraftAsync(job.Id, draft);
        }
    }

    public void DropDoubt()
    {
        Doubt = null;
        Tell();
    }

    public void DropProblem()
    {
        Problem = null;
        Tell();
    }

    public void LookedAtSaved()
    {
        Saved = null;
        Tell();
    }

    /// <summary>Shows the surer choice in place of the provisional one.</summary>
    public async Task TakeBetterAsync()
    {
        if (Better is { } better)
        {
            Show(better, isProvisional: false);
            await KeepDraftAsync(Draft.Empty with { Check = better.Check, Read = Draft.Read });
            Tell();
        }
    }

    /// <summary>Leaves the job; it stays on the shelf.</summary>
    public async Task LeaveAsync()
    {
        _change++;
        (Job, Step, Better, Saved, Doubt, Problem) = (null, null, null, null, null, null);
        (IsSaving, IsThinking, IsProvisional) = (false, false, false);
        Draft = Draft.Empty;
        await ForgetAheadAsync();
        Tell();
    }

    /// <summary>Has the open job said once more, after another language was chosen; what is being typed stays.</summary>
    public async Task SpeakAnewAsync()
    {
        if (Job is not null && Take(await engine.AskAsync(new DeskRequest("job"))))
        {
            Expect(null, goesOn: true);
            await NextAsync(null, goesOn: true);
        }
    }

    /// <param name="told">Called with what came of it, before the next step is worked out.</param>
    private async Task DoAsync(DeskRequest request, Action<DeskReply>? told = null)
    {
        if (IsSaving)
        {
            return;
        }

        // Whoever was tapped shows by itself that it is busy; a phone has no time for more before the answer is on its way.
        IsSaving = true;
        (Doubt, Problem, Saved) = (null, null, null);
        var reply = await engine.AskAsync(request);
        IsSaving = false;
        told?.Invoke(reply);
        if (!Take(reply))
        {
            return;
        }

        var foreseen = Foreseen(request, reply.Saved);
        var points = Draft.Points;
        Expect(foreseen, goesOn: false);

        // The page is seen before the other desks are told.
        await Task.Yield();
        Mirror(request, points);
        var next = NextAsync(foreseen);
        var whole = reply.Job is null ? TellWholeAsync(_change) : Task.CompletedTask;
        await next;
        await whole;
    }

    /// <summary>What the answer that was just kept did.</summary>
    private async Task TellWholeAsync(int change)
    {
        var reply = await engine.AskAsync(new DeskRequest("told"));
        if (change == _change && reply.Job is { } job)
        {
            // Whoever has gone on to the next step is not called back.
            (Job, Saved) = (job, Saved is null ? null : reply.Saved);
            Tell();
        }
    }

    /// <summary>Shows what came of something; false where nothing was done.</summary>
    private bool Take(DeskReply reply)
    {
        if (reply.IsLost)
        {
            _ = ReopenAsync(reply.Problem);
            return false;
        }

        (Problem, Doubt) = (reply.Problem, reply.Doubt);
        if (reply.Job is null && reply.Saved is null)
        {
            Tell();
            return false;
        }

        _change++;
        // The step that was asked has been answered; the next is not known yet.
        (Job, Saved, Step) = (reply.Job ?? Job, reply.Saved, null);
        return true;
    }

    /// <summary>After a store that did not keep: from what it did keep.</summary>
    private async Task ReopenAsync(string? problem)
    {
        var job = Job?.Id;
        var draft = Draft;
        await LeaveAsync();
        if (job is not null && await OpenAsync(job))
        {
            await KeepDraftAsync(draft);
        }

        Problem = problem;
        Tell();
    }

    /// <summary>
    /// Shows what comes next: what was foreseen, else a first sight, and then the engine's own choice, from a desk that
    /// thinks where there is one.
    /// </summary>
    /// <param name="goesOn">A reading that was being typed belongs to what comes, and stays.</param>
    private async Task NextAsync(StepView? foreseen, bool goesOn = false)
    {
        var change = _change;
        var kept = goesOn ? Task.CompletedTask : KeepDraftAsync(Draft);
        var sure = SureAsync();
        var isSure = false;
        var isTyping = goesOn && IsInTheMiddle;
        if (foreseen is null)
        {
            var sight = await engine.AskAsync(isTyping ? Typing() : new DeskRequest("sight"));
            if (change != _change)
            {
                return;
            }

            Problem = sight.Problem ?? Problem;
            isSure = sight.IsSure && sight.Step is not null && !isTyping;
            if (sight.Step is { } step)
            {
                Show(step, isProvisional: !isSure);
            }

            Tell();
        }

        if (!isSure && (await sure ?? await engine.AskAsync(new DeskRequest("next"))) is { } reply && change == _change)
        {
            Problem = reply.Problem ?? Problem;
            if (reply.Step is { } step && (!isTyping || step.Check == Step?.Check))
            {
                Settle(step);
            }

            IsProvisional = false;
        }

        await kept;
        if (change == _change)
        {
            IsThinking = false;
            Tell();
            StartAhead();
        }
    }

    /// <summary>Shows what was foreseen, or that the next step is being thought of.</summary>
    private void Expect(StepView? foreseen, bool goesOn)
    {
        Step = foreseen;
        (Better, IsProvisional, IsThinking) = (null, foreseen is not null, true);
        if (!goesOn)
        {
            Draft = Draft.Empty with { Check = foreseen?.Check, Read = Draft.Read };
        }

        Tell();
    }

    private bool IsInTheMiddle => Draft is { Check: not null } && (Draft.Typed.Length > 0 || Draft.Points is not null);

    /// <summary>Back to the check that a reading was being typed for.</summary>
    private DeskRequest Typing() => Draft.Points is { } points
        ? new DeskRequest("choose") { Points = points }
        : new DeskRequest("choose") { Check = Draft.Check };

    private void Settle(StepView step)
    {
        var isBusy = Draft.Typed.Length > 0 || Draft.Ticked > 0;
        if (IsProvisional && Step is { } shown && shown.Check != step.Check && isBusy)
        {
            Better = step;
            IsProvisional = false;
            return;
        }

        Show(step, isProvisional: false);
    }

    private void Show(StepView step, bool isProvisional)
    {
        Step = step;
        IsProvisional = isProvisional;
        Better = null;
        if (Draft.Check != step.Check)
        {
            Draft = Draft.Empty with { Check = step.Check, Read = Draft.Read };
        }
    }

    private void Tell() => Changed?.Invoke();
}
