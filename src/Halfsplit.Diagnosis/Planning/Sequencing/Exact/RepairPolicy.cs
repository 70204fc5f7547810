namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>What someone does at each point of a <see cref="RepairProblem"/>; the same whenever the point is the same.</summary>
/// <returns>The number of the action, or <see cref="RepairStanding.HandOver"/>.</returns>
internal delegate int RepairPolicy(RepairProblem problem, RepairStanding standing);

/// <summary>Where the work on a <see cref="RepairProblem"/> stands.</summary>
/// <param name="Position">How things stand.</param>
/// <param name="Weights">Odds of each state after all that was seen; they add up to one.</param>
/// <param name="Shown">The outcome of each check done; −1 for the others.</param>
/// <param name="Failed">Which repairs were tried in vain.</param>
internal sealed record RepairStanding(int Position, double[] Weights, int[] Shown, bool[] Failed)
{
    /// <summary>In place of an action: end without a cure.</summary>
    public const int HandOver = -1;
}
