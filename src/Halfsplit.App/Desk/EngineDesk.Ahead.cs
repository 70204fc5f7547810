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
        if (index >= outcomes.Count)
        {
            return new DeskReply();
        }

        var outcome = outcomes[index];
        if (session.Record(outcome.Typical.ToString()!, check, confirmed: true) is not SessionOutcome.Kept)
        {
            return new DeskReply();
        }

        var step = StepViews.Of(session);
        session.Withdraw();
        _store.Take(session.Opened.Id);
        return new DeskReply
        {
            Ahead = new AheadView(index, outcomes.Count, outcome.Low, outcome.High, outcome.Typical switch
            {
                ReadingParse.Word word => word.Answer.Id,
                ReadingParse.OverLimit => "OL",
                _ => null,
            }, step),
        };
    }
}
