namespace Halfsplit.Diagnosis.Planning;

/// <summary>What following the plan is expected to take, beside buying the most blamed part now.</summary>
/// <param name="Follow">From here to the end, the step that is asked included.</param>
/// <param name="BuyNow">Buying it and going on from there; null where nothing that costs money is blamed, or where that is what is asked.</param>
public sealed record Comparison(PlanValue Follow, PlannedStep? BuyNow);
