namespace Halfsplit.Diagnosis.Planning;

/// <summary>What the way to the end is expected to take.</summary>
/// <param name="Cost">Everything in one currency: minutes at their worth, prices, wrong repairs, handing over.</param>
/// <param name="Minutes">Work.</param>
/// <param name="Price">What is bought.</param>
/// <param name="Estimated">The part of the cost that was not looked into but estimated.</param>
public readonly record struct PlanValue(double Cost, double Minutes, double Price, double Estimated = 0)
{
    /// <summary>One action from a position.</summary>
    internal static PlanValue Of(Sequencing.IChangeCosts costs, int position, int action) =>
        new(costs.Cost(position, action), costs.Minutes(position, action), costs.Price(action));

    public static PlanValue operator +(PlanValue a, PlanValue b) =>
        new(a.Cost + b.Cost, a.Minutes + b.Minutes, a.Price + b.Price, a.Estimated + b.Estimated);

    public static PlanValue operator *(PlanValue a, double weight) =>
        new(a.Cost * weight, a.Minutes * weight, a.Price * weight, a.Estimated * weight);
}
