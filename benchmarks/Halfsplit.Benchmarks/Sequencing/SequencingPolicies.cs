using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>The policies that are compared with the optimum.</summary>
internal static class SequencingPolicies
{
    /// <summary>Name and maker of each; a policy is made anew for each problem, so it may remember what it has seen.</summary>
    public static IReadOnlyList<(string Name, Func<RepairPolicy> Create)> All { get; } =
    [
        ("probability per cost, no checks", () => RepairOrder.Choose),
        ("information per cost, to 95 %", () => new OneStepInformation(0.95).Choose),
        ("information per cost, isolating", () => new OneStepInformation(1).Choose),
        ("worth of a check, one step ahead", () => OneStepWorth.Choose),
        ("roll-out of information, to 95 %", () => new RollOut(new OneStepInformation(0.95).Choose).Choose),
        ("roll-out of the worth of a check", () => new RollOut(OneStepWorth.Choose).Choose),
        ("the planner, 300 nodes", () => new PlannerPolicy(300, PlanningProblem.Slack).Choose),
        ("the planner, 3000 nodes", () => new PlannerPolicy(3000, PlanningProblem.Slack).Choose),
        ("the planner, 3000 nodes, no slack", () => new PlannerPolicy(3000, 0).Choose),
    ];
}
