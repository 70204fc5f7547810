using System.Globalization;
using Halfsplit.App.Desk;
using Halfsplit.App.Views;

namespace Halfsplit.App.Link;

/// <summary>
/// While the person walks to the check, a second desk works out what would come after each answer, so that the next step is
/// there at once; the first desk then makes sure of it.
/// </summary>
public sealed partial class Workbench
{
    private readonly List<AheadView> _ahead = [];
    private Task<DeskReply?>? _aheadOpened;
    private bool _isThinkingAhead;

    /// <summary>How many of the answers that may come have been thought through.</summary>
    public int ThoughtThrough => _ahead.Count;

    private StepView? Foreseen(SavedView saved)
    {
        var match = _ahead.Find(a => saved.Number is { } number
            ? a.Word is null && number >= (a.Low ?? double.NegativeInfinity) && number < (a.High ?? double.PositiveInfinity)
            : saved.Word is not null && a.Word == saved.Word);
        _ahead.Clear();
        return match?.Step;
    }

    /// <summary>Does at the second desk what was done at the first.</summary>
    private void Mirror(DeskRequest request)
    {
        if (_aheadOpened is not null)
        {
            _ = engine.ThinkAsync(request with { Confirmed = true });
        }
    }

    private async Task ThinkAheadAsync(int change)
    {
        _ahead.Clear();
        if (_isThinkingAhead || Job is not { IsDone: false } job || Step is not { Kind: "check" or "proof" })
        {
            return;
        }

        _isThinkingAhead = true;
        try
        {
            _aheadOpened ??= engine.ThinkAsync(new DeskRequest("open") { Lines = await shelf.LinesAsync(job.Id) });
            if (await _aheadOpened is not { Problem: null })
            {
                return;
            }

            for (var index = 0; change == _change && Step is { } step; index++)
            {
                var reply = await engine.ThinkAsync(new DeskRequest("ahead")
                {
                    Check = step.Check,
                    Points = Draft.Points,
                    Text = index.ToString(CultureInfo.InvariantCulture),
                });
                if (change != _change || reply?.Ahead is not { } ahead)
                {
                    break;
                }

                _ahead.Add(ahead);
            }
        }
        finally
        {
            _isThinkingAhead = false;
        }

        if (change != _change && Job is not null)
        {
            _ = ThinkAheadAsync(_change);
        }
    }

    private async Task ForgetAheadAsync()
    {
        _ahead.Clear();
        if (_aheadOpened is not null)
        {
            _aheadOpened = null;
            await engine.StopThinkingAsync();
        }
    }
}
