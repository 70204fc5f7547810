using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Repairs;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>One thing that could be done now, and what the whole way from here would then take.</summary>
/// <param name="Check">The check; null for a repair or for handing over.</param>
/// <param name="Repairs">What is tried; usually one, two for a pair of faults; empty for a check or for handing over.</param>
/// <param name="Bits">Of a check: expected information about which repair is needed.</param>
/// <param name="Odds">Of a repair: odds that it cures.</param>
/// <param name="Way">Expected cost, minutes and prices from here to the end, this step, proof and putting back included.</param>
public sealed record PlannedStep(Check? Check, ImmutableArray<Repair> Repairs, double Bits, double Odds, PlanValue Way)
{
    /// <summary>Stop here: a workshop would do the rest for less.</summary>
    public bool IsHandOver => Check is null && Repairs.IsEmpty;
}

/// <summary>What to do now, weighed in money: checks, repairs and handing over beside each other.</summary>
/// <param name="Steps">
/// Cheapest way first, but of the checks that the estimates can't part from it the one that tells most per cost, and a check that costs next to
/// nothing more before handing over; never empty.
/// </param>
/// <param name="Nodes">Nodes that the planner looked into.</param>
public sealed record Plan(ImmutableArray<PlannedStep> Steps, int Nodes)
{
    public PlannedStep Best => Steps[0];

    /// <summary>True where the first check looks dearer than the next, and comes first because it tells more per cost.</summary>
    public bool IsFirstByTelling =>
        Steps is [{ Check: not null, Way.Cost: var first }, { Check: not null, Way.Cost: var second }, ..] && second < first;

    /// <summary>Buying the most blamed part now and going on from there; null where nothing that costs money is blamed.</summary>
    public PlannedStep? BuyNow => Steps
        .Where(s => s.Repairs.Any(r => r.Price.Middle > 0))
        .OrderByDescending(s => Math.Round(s.Odds, 9)).ThenBy(s => s.Repairs[0].Id, StringComparer.Ordinal)
        .FirstOrDefault();
}
