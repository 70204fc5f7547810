using System.Globalization;
using Halfsplit.App.Showing;
using Halfsplit.App.Views;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Desk;

public sealed partial class EngineDesk
{
    /// <summary>
    /// Thinks ahead: takes one of the answers that may come as if it had come, and says what would then be asked. For a desk
    /// that nothing else is done at: its session is put back afterwards, and nothing of it is ever kept.
    /// </summary>
    private DeskReply Ahead(JobSession session, DeskRequest request)
    {
        var check = request.Points is { } points ? CircuitViews.CheckOf(session, points) : session.FindCheck(request.Check ?? "");
        var index = int.Parse(request.Text!, CultureInfo.InvariantCulture);
        var outcomes = check is null ? [] : session.Investigation.Foresee(check).OrderByDescending(o => o.Odds).ToList();
        // After every answer that may come, leaving the check out.
        if (check is null || index > outcomes.Count)
        {
            return new DeskReply();
        }

        var outcome = index < outcomes.Count ? outcomes[index] : null;
        var done = outcome is null ? session.Skip(check) : session.Record(outcome.Typical.ToString()!, check, confirmed: true);
        if (done is not SessionOutcome.Kept)
        {
            return new DeskReply();
        }

        var next = session.Next;
        var step = StepViews.Of(session, next) with { Why = WhyViews.Of(session, null, next) };
        session.Withdraw();
        _store.Take(session.Opened.Id);
        return new DeskReply
        {
            Ahead = new AheadView(index, outcomes.Count + 1, outcome?.Low, outcome?.High, outcome?.Typical switch
            {
                null => "skip",
                ReadingParse.Word word => word.Answer.Id,
                ReadingParse.OverLimit => "OL",
                _ => null,
            }, step),
        };
    }
}
