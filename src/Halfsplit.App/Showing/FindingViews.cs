using Halfsplit.App.Views;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>A finding, what it costs, and who else is alive.</summary>
internal static class FindingViews
{
    private const int MostNamed = 5;
    private const double WorthNaming = 0.0005;

    /// <param name="isAdvice">The engine advises to act upon it; false where it is only how things stand.</param>
    public static FindingView Of(JobSession session, Finding finding, bool isAdvice)
    {
        var alive = finding.NotCleared.Where(s => s.Odds >= WorthNaming).ToList();
        var named = alive.Take(MostNamed).Select(s => SuspectViews.Line(session, s)).ToList();
        if (alive.Count > MostNamed)
        {
            named.Add(AppTexts.Say("app.finding.and-more", alive.Count - MostNamed));
        }

        return new FindingView(
            OddsWords.Of(finding.Odds),
            [.. finding.Blamed.Select(s => SuspectViews.Line(session, s))],
            AppTexts.Sentence(AppTexts.Catalog.Say(CheckTitle.Repair(session.Circuit, finding.Repair.Id))),
            finding.Repair.Renews.Length == 0 ? null : AppTexts.Say("app.finding.renews", string.Join(", ", finding.Repair.Renews)),
            finding.Repair.Minutes,
            AppTexts.Say("app.finding.price", finding.Repair.Price.Low, finding.Repair.Price.High),
            EntryViews.Lines(session, finding.RestsOn),
            [.. named],
            isAdvice ? [.. session.Investigation.NotProven().Select(o => Open(session, o))] : [],
            isAdvice && !finding.IsSettled ? AppTexts.Say("app.finding.not-settled") : null);
    }

    /// <summary>What following the plan is expected to take, beside buying the most blamed part now; null once a repair is being proven.</summary>
    public static MoneyView? Money(JobSession session, Comparison? compared) => compared is null ? null : new MoneyView(
        AppTexts.Say("app.money.way", Minutes(compared.Follow.Minutes), Amount(compared.Follow.Price), Amount(compared.Follow.Cost)),
        compared.BuyNow is { } buy ? AppTexts.Say("app.money.buy-now", Step(session, buy), OddsWords.Of(buy.Odds), Amount(buy.Way.Cost)) : null);

    /// <summary>A check, a repair or handing over, in words.</summary>
    public static string Step(JobSession session, PlannedStep step) => step switch
    {
        { Check: { } check } => AppTexts.Catalog.Say(CheckTitle.Of(session.Circuit, check)),
        { IsHandOver: true } => AppTexts.Say("app.money.hand-over"),
        _ => string.Join(" + ", step.Repairs.Select(r => AppTexts.Catalog.Say(CheckTitle.Repair(session.Circuit, r.Id)))),
    };

    public static string Minutes(double minutes) => minutes.ToString("0.#", AppTexts.Formats);

    public static string Amount(double money) => money.ToString(money < 10 ? "0.#" : "0", AppTexts.Formats);

    private static OpenSuspectView Open(JobSession session, OpenSuspect open)
    {
        string how;
        if (open is { PartedBy: { } check, Effort: { } effort })
        {
            var title = AppTexts.Catalog.Say(CheckTitle.Of(session.Circuit, check));
            how = open.IsOutOfReach
                ? AppTexts.Say("app.still-open.lacking", title, string.Join(", ", open.Lacks.Select(AppTexts.Catalog.Say)))
                : AppTexts.Say("app.still-open.by", title, Minutes(effort.Minutes));
        }
        else
        {
            how = AppTexts.Say("app.still-open.by-nothing");
        }

        return new OpenSuspectView(OddsWords.Of(open.Rival.Odds), SuspectViews.Name(session, open.Rival), how);
    }
}
