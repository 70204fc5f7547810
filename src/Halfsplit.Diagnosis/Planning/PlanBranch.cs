using System.Collections.Immutable;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>A step of the whole plan with what may come of it.</summary>
/// <param name="Step">What is done here.</param>
/// <param name="MinutesSoFar">Minutes on this way, this step included.</param>
/// <param name="Ahead">Expected cost, minutes and prices from here to the end, this step included; null at an end.</param>
/// <param name="Compared">Following the plan beside buying now; null once a repair is being proven.</param>
/// <param name="Outcomes">Its outcomes, likeliest first, with what follows; null where the plan was not followed further. Empty for a repair or an end.</param>
public sealed record PlanBranch(
    NextStep Step, double MinutesSoFar, PlanValue? Ahead, Comparison? Compared,
    ImmutableArray<(ForeseenOutcome Outcome, PlanBranch? Next)> Outcomes);
