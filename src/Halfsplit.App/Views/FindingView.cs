namespace Halfsplit.App.Views;

/// <summary>The conclusion, never a certainty.</summary>
/// <param name="Price">The parts, from lowest to highest.</param>
/// <param name="Unsettled">Why the odds are not high; null where they are.</param>
public sealed record FindingView(
    string OddsText, string[] Blamed, string Repair, string? Renews, double Minutes, string Price, string[] RestsOn,
    string[] NotCleared, OpenSuspectView[] StillOpen, string? Unsettled);

/// <summary>A suspect that is still alive, and what would tell it from the blamed one.</summary>
public sealed record OpenSuspectView(string OddsText, string Name, string How);

/// <summary>What the way from here is expected to take, and what buying at once would take.</summary>
public sealed record MoneyView(string Way, string? BuyNow);

/// <summary>Where else to look.</summary>
public sealed record OutsideView(string Heading, string[] Causes, string[] Compare);

/// <summary>What has to be put back, in order.</summary>
public sealed record PutBackView(double Minutes, string[] Items);

/// <summary>Why this step.</summary>
/// <param name="Outcomes">What each answer would leave.</param>
/// <param name="Others">What else could be done, and what the way from there costs.</param>
public sealed record WhyView(string Reason, OutcomeView[] Outcomes, OutcomeView[] Others, string? RunnerUp, FindingView? WouldBe, string? Risk,
    MoneyView? Money);

/// <summary>Something that may come, and what of it.</summary>
public sealed record OutcomeView(string Left, string Right);

/// <summary>A check to choose.</summary>
public sealed record RankedView(string Check, string Title, string Cost);

/// <summary>A report as one page of HTML, with what it says of the people.</summary>
/// <param name="Reader"><c>owner</c> or <c>colleague</c>.</param>
public sealed record ReportView(string Reader, string Html, string Vehicle, string Owner, string Worker);
