using System.Collections.Immutable;
using Halfsplit.App.Views;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>What to do now, as the screen shows it.</summary>
internal static class StepViews
{
    /// <summary>What the engine asks for.</summary>
    public static StepView Of(JobSession session, NextStep next)
    {
        if (session.IsDone)
        {
            return Empty(session, "done", session.IsProven ? "app.done.proven" : session.State.HandedOver is null ? "app.done.closed" : "app.done.handed-over");
        }

        var finding = next.Finding is { } found ? FindingViews.Of(session, found, isAdvice: true) : null;
        // Where a rule decided it has to be planned for: only who asks why waits for that.
        var money = next.Plan is null ? null : FindingViews.Money(session, session.Investigation.Compare(next));
        var outside = Outside(session, next.Outside ?? session.Investigation.OutsideTheSheet);
        var reason = AppTexts.Catalog.Say(next.Reason);
        var view = next is { Check: { } check, Effort: { } effort }
            ? Check(session, check, effort, reason, next.Cautions)
            : Empty(session, "stuck", "app.stuck.title") with { Reason = reason };
        return view with
        {
            Finding = finding,
            Money = money,
            Outside = outside,
            PutBack = next.PutBack.Length > 0 ? PutBack(next.PutBack) : null,
            Others = next.Plan is null ? null : WhyViews.Ranked(session, next.Alternatives),
        };
    }

    /// <summary>A check that the person chose.</summary>
    public static StepView Chosen(JobSession session, Check check) => Check(
        session, check, Effort.Of(session.Circuit, session.Investigation.Options, session.Position, check),
        AppTexts.Say("app.reason.chosen"), Cautions.For(session.Circuit, session.Investigation.Options, session.Position, check)) with { IsChosen = true };

    public static PutBackView PutBack(ImmutableArray<PutBackItem> items) => new(
        Math.Round(items.Sum(i => i.Minutes), 1), [.. items.Select(i => AppTexts.Sentence(AppTexts.Catalog.Say(i.Text)))]);

    private static StepView Check(
        JobSession session, Check check, Effort effort, string reason, ImmutableArray<Message> cautions)
    {
        var measures = check.Kind is not (CheckKind.Repair or CheckKind.PutBack);
        var (scale, words) = measures ? ScaleViews.Of(session.Investigation, check) : (null, []);
        var title = AppTexts.Sentence(AppTexts.Catalog.Say(CheckTitle.Of(session.Circuit, check)));
        string[] steps = [.. effort.Steps.Select(s => AppTexts.Sentence(AppTexts.Catalog.Say(s)))];
        var cautionViews = CautionViews.Of(cautions);
        return new StepView(
            check.Kind switch
            {
                CheckKind.Repair => "repair",
                CheckKind.Proof => "proof",
                CheckKind.PutBack => "put-back",
                _ => "check",
            },
            check.Id, session.Entries.Count + 1, title,
            AppTexts.Sentence(AppTexts.Catalog.Say(CheckTitle.What(session.Circuit, check))),
            AppTexts.Catalog.Say(CheckTitle.SetUp(check.Arrangement)), Math.Round(effort.Minutes, 1), reason,
            [.. Access.PlacesOf(session.Circuit, check).Distinct()], cautionViews, steps, LeadViews.Of(session, check), scale, words,
            AnswerPads.Of(session.Investigation, check), null, null, null, null, false,
            string.Join(" ", [.. cautionViews.Select(c => c.Text), title + ".", .. steps]))
        {
            Seat = LeadViews.Seat(session.Circuit, check),
        };
    }

    private static StepView Empty(JobSession session, string kind, string title) => new(
        kind, null, session.Entries.Count + 1, AppTexts.Say(title), "", "", 0, "", [], [], [], null, null, [], AnswerPads.Nothing,
        null, null, null, null, false, AppTexts.Say(title));

    private static OutsideView? Outside(JobSession session, OutsideAdvice? advice) => advice is null ? null : new OutsideView(
        AppTexts.Say("app.outside.title", OddsWords.Of(advice.Odds)),
        [.. advice.Causes.Select(AppTexts.Catalog.Say)],
        EntryViews.Lines(session, advice.Compare.Select(o => o.Id)));
}
