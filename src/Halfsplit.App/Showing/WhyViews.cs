using Halfsplit.App.Views;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>Why this step: what each answer would leave, and what else could be done.</summary>
internal static class WhyViews
{
    private const int MostOthers = 6;
    private const double WorthNaming = 0.01;

    /// <param name="chosen">The check the person chose; null for the one that is asked.</param>
    /// <param name="next">What is asked.</param>
    public static WhyView Of(JobSession session, Check? chosen, NextStep next)
    {
        var check = chosen ?? next.Check;
        var outcomes = check is { Kind: not (CheckKind.Repair or CheckKind.Proof or CheckKind.PutBack) }
            ? session.Investigation.Foresee(check).Select(o => Outcome(session, check, o)).ToArray()
            : [];
        var steps = next.Plan?.Steps ?? [];
        var runnerUp = steps.Length < 2 ? null : AppTexts.Say(
            "app.why.next-best", FindingViews.Amount(steps[0].Way.Cost), FindingViews.Step(session, steps[1]), FindingViews.Amount(steps[1].Way.Cost));
        if (next.Plan is { IsFirstByTelling: true })
        {
            runnerUp += " " + AppTexts.Say("reason.costs-alike");
        }

        var wouldBe = next.Finding is null && session.Entries.Count > 0 && session.Investigation.PresentFinding() is { } finding
            ? FindingViews.Of(session, finding, isAdvice: false)
            : null;
        return new WhyView(
            chosen is null ? AppTexts.Catalog.Say(next.Reason) : AppTexts.Say("app.reason.chosen"), outcomes,
            [.. steps.Take(MostOthers).Select(s => Other(session, s))], runnerUp, wouldBe, check is null ? null : Risks(session, check),
            next.Plan is null ? FindingViews.Money(session, session.Investigation.Compare(next)) : null);
    }

    private static string? Risks(JobSession session, Check check)
    {
        var risks = Risk.Of(session.Circuit, check);
        return risks.Length == 0 ? null : AppTexts.Say(
            "app.why.risk", FindingViews.Minutes(risks.Sum(r => r.Minutes)), string.Join(", ", risks.Select(r => AppTexts.Catalog.Say(r.Name))));
    }

    public static RankedView[] Ranked(JobSession session, IEnumerable<RankedCheck> checks) => [.. checks.Select(r => new RankedView(
        r.Check.Id, AppTexts.Sentence(AppTexts.Catalog.Say(CheckTitle.Of(session.Circuit, r.Check))),
        AppTexts.Say("app.ranked.cost", FindingViews.Minutes(r.Effort.Minutes), Bits(r.Bits))))];

    private static OutcomeView Other(JobSession session, PlannedStep step) => new(
        FindingViews.Amount(step.Way.Cost),
        AppTexts.Say(
            step.Check is null ? "app.why.way" : "app.why.way-with-bits", AppTexts.Sentence(FindingViews.Step(session, step)),
            FindingViews.Minutes(step.Way.Minutes), FindingViews.Amount(step.Way.Price), Bits(step.Bits)));

    private static OutcomeView Outcome(JobSession session, Check check, ForeseenOutcome outcome) => new(
        Answer(session, check, outcome),
        AppTexts.Say("app.why.then", OddsWords.Of(outcome.Odds), string.Join(", ", outcome.Leaves
            .Where(l => l.Odds >= WorthNaming)
            .Select(l => $"{l.Suspect.Id} {OddsWords.Of(l.Odds)}"))));

    private static string Answer(JobSession session, Check check, ForeseenOutcome outcome)
    {
        if (outcome.Typical is ReadingParse.Word { Answer: var word })
        {
            return AppTexts.Words.TextOf(OfferedWords.For(session.Circuit, check, word));
        }

        return outcome switch
        {
            { Low: { } low, High: { } high } => AppTexts.Say("app.scale.between", Digits(low), Digits(high), ScaleViews.Unit(check)),
            { Low: { } low } => AppTexts.Say("app.why.from", Digits(low), ScaleViews.Unit(check)),
            { High: { } high } => AppTexts.Say("app.why.up-to", Digits(high), ScaleViews.Unit(check)),
            _ => EntryViews.Value(outcome.Typical),
        };
    }

    private static string Digits(double value) => value.ToString("G3", AppTexts.Formats);

    private static string Bits(double bits) => bits.ToString("0.00", AppTexts.Formats);
}
