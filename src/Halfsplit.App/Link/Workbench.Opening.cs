using Halfsplit.App.Desk;

namespace Halfsplit.App.Link;

/// <summary>
/// Before a job is opened: while the person reads the safety page, all desks lay out what its first check needs, so that the
/// tap that opens it finds most of the work done.
/// </summary>
public sealed partial class Workbench
{
    private Task _layingOut = Task.CompletedTask;
    private (JobWish Wish, string Language, DeskReply Reply)? _opening;

    /// <summary>What is to be known before a job is opened; said once, so that nothing waits for what is being laid out.</summary>
    public async Task<DeskReply> OpeningAsync(string sheet, string complaint)
    {
        var language = AppTexts.Language.Code;
        if (_opening is { } known && (known.Wish.Sheet, known.Wish.Complaint, known.Language) == (sheet, complaint, language))
        {
            return known.Reply;
        }

        await StopLayingOutAsync();
        var reply = await engine.AskAsync(new DeskRequest("opening") { Text = sheet, Name = complaint });
        // The desk has room for one job: one that goes on is not put aside for a page that is only looked at.
        if (reply.Opening is not null && Job is null or { IsDone: true })
        {
            await LeaveAsync();
            var wish = new JobWish(sheet, complaint);
            _opening = (wish, language, reply);
            _layingOut = LayOutAsync(new DeskRequest("lay-out") { Wish = wish });
        }

        return reply;
    }

    private async Task LayOutAsync(DeskRequest request)
    {
        var desk = engine.AskAsync(request);
        var thinkers = await engine.ThinkersAsync();
        await Task.WhenAll([desk, .. Enumerable.Range(0, thinkers).Select(t => engine.ThinkAsync(t, request))]);
    }

    /// <summary>What was laid out is the open job's: whatever desk is still at it works for that job, and is not stopped.</summary>
    private void HandOverLayout()
    {
        _opening = null;
        _layingOut = Task.CompletedTask;
    }

    /// <summary>
    /// Something else is wanted of the desks: they begin anew, which takes less than what they are at. Not while a job is open
    /// or being opened: its desk would end with them.
    /// </summary>
    private async Task StopLayingOutAsync()
    {
        _opening = null;
        if (!_layingOut.IsCompleted && Job is null && !IsSaving)
        {
            _layingOut = Task.CompletedTask;
            await engine.StopAsync();
        }
    }
}
