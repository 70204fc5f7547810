using System.Globalization;
using Halfsplit.App.Desk;
using Halfsplit.App.Views;

namespace Halfsplit.App.Link;

/// <summary>
/// While the person walks to the check, further desks work out what would come after each answer, so that the next step is
/// there at once; the first of them then makes sure of it. The desk that keeps is never given long work: it is there when
/// an answer comes.
/// </summary>
public sealed partial class Workbench
{
    private readonly List<AheadView> _ahead = [];
    private Task<DeskReply>[] _thinkers = [];
    private Task<int>? _thinkersReady;
    private string? _aheadOf;
    private int _aheadNext, _aheadAt;

    /// <summary>How many of the answers that may come have been thought through.</summary>
    public int ThoughtThrough => _ahead.Count;

    /// <summary>Nothing is left to be thought of before the answer comes.</summary>
    public bool IsAllForeseen { get; private set; }

    /// <summary>The step that was foreseen for this answer; null where none was.</summary>
    private StepView? Foreseen(DeskRequest request, SavedView? saved)
    {
        var match = _ahead.Find(a => (request.Verb, saved) switch
        {
            ("skip", _) => a.Word == "skip" && request.Place is null,
            (_, { Number: { } number }) => a.Word is null
                && number >= (a.Low ?? double.NegativeInfinity) && number < (a.High ?? double.PositiveInfinity),
            (_, { Word: { } word }) => a.Word == (word == "not-sure" ? "skip" : word),
            _ => false,
        });
        _ahead.Clear();
        IsAllForeseen = false;
        return match?.Step;
    }

    /// <summary>Has the job opened at the desks that think.</summary>
    private void OpenAhead() => _thinkersReady ??= OpenThinkersAsync(Job!.Id);

    private async Task<int> OpenThinkersAsync(string job)
    {
        var count = await engine.ThinkersAsync();
        if (count > 0)
        {
            var lines = await shelf.LinesAsync(job);
            _thinkers = [.. Enumerable.Range(0, count).Select(t => engine.ThinkAsync(t, new DeskRequest("open") { Lines = lines }))];
        }

        return count;
    }

    /// <summary>Does at the other desks what was done at the first; whoever can't follow any more is let go.</summary>
    /// <param name="points">The two points that were measured, where the person had chosen them.</param>
    private void Mirror(DeskRequest request, PointsWish? points)
    {
        for (var thinker = 0; thinker < _thinkers.Length; thinker++)
        {
            if (points is not null)
            {
                _ = engine.ThinkAsync(thinker, new DeskRequest("choose") { Points = points });
            }

            _ = MirrorAsync(thinker, request with { Confirmed = true });
        }
    }

    private async Task MirrorAsync(int thinker, DeskRequest request)
    {
        var of = _thinkers;
        var reply = await engine.ThinkAsync(thinker, request);
        if (reply.Problem is not null && ReferenceEquals(of, _thinkers))
        {
            await ForgetAheadAsync();
        }
    }

    /// <summary>The engine's own choice from a desk that thinks; null where there is none.</summary>
    private async Task<DeskReply?> SureAsync()
    {
        if (_thinkersReady is null || await _thinkersReady == 0 || _thinkers.Length == 0)
        {
            return null;
        }

        var reply = await engine.ThinkAsync(0, new DeskRequest("next"));
        return reply is { IsLost: false, Step: not null } ? reply : null;
    }

    /// <summary>Thinks of the answers to the check that is asked now, and forgets those to another.</summary>
    private void StartAhead()
    {
        if (Job is not { IsDone: false } || Step is not { Kind: "check" or "proof", Check: { } check })
        {
            return;
        }

        var at = ++_aheadAt;
        _ahead.Clear();
        (_aheadOf, _aheadNext, IsAllForeseen) = (check, 0, false);
        _ = PrepareAsync(check, at);
        _ = ThinkAheadAsync(check, at);
    }

    private async Task ThinkAheadAsync(string check, int at)
    {
        if (_thinkersReady is not null && await _thinkersReady > 0)
        {
            await Task.WhenAll(_thinkers.Select((_, thinker) => ThinkAheadAsync(thinker, check, at)));
            IsAllForeseen = IsStill(check, at);
            Tell();
        }
    }

    private async Task ThinkAheadAsync(int thinker, string check, int at)
    {
        if (await _thinkers[thinker] is not { Problem: null })
        {
            return;
        }

        while (IsStill(check, at))
        {
            var reply = await engine.ThinkAsync(thinker, new DeskRequest("ahead")
            {
                Check = check,
                Points = Draft.Points,
                Text = (_aheadNext++).ToString(CultureInfo.InvariantCulture),
            });
            if (!IsStill(check, at) || reply.Ahead is not { } ahead)
            {
                return;
            }

            _ahead.Add(ahead);
        }
    }

    /// <summary>Has the desk that keeps know what each car would answer, in pieces that let other requests pass.</summary>
    private async Task PrepareAsync(string check, int at)
    {
        for (var (from, more) = (0, true); more && IsStill(check, at);)
        {
            var reply = await engine.AskAsync(new DeskRequest("prepare") { Check = check, From = from });
            more = reply.HasMore;
            from += EngineDesk.Piece;
        }
    }

    private bool IsStill(string check, int at) => at == _aheadAt && check == _aheadOf && Step?.Check == check && Job is not null;

    private async Task ForgetAheadAsync()
    {
        _ahead.Clear();
        _aheadAt++;
        IsAllForeseen = false;
        if (_thinkersReady is not null)
        {
            (_thinkersReady, _thinkers) = (null, []);
            await engine.StopThinkingAsync();
        }
    }
}
