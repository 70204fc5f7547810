using Halfsplit.Diagnosis.Planning.Sequencing;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>
/// Five faults, no fault, and five tests of cost 1. Source: Pattipati and Alexandridis, "Application of heuristic search
/// and information theory to sequential fault diagnosis", 1990. The table is from memory.
/// </summary>
internal static class PublishedTestSequence
{
    public static double[] Priors { get; } = [0.70, 0.01, 0.02, 0.10, 0.05, 0.12];

    /// <summary>Tests by row, states by column; 1 where the test fails.</summary>
    private static readonly int[][] Fails =
    [
        [0, 0, 0, 1, 1, 1],
        [0, 1, 0, 0, 1, 1],
        [0, 0, 1, 0, 0, 1],
        [0, 0, 1, 1, 0, 1],
        [0, 1, 0, 1, 0, 0],
    ];

    public static IdentificationGraph Graph { get; } = new(
        Priors, [1, 1, 1, 1, 1],
        [.. Fails.Select(row => row.Select((f, s) => f == 1 ? 1U << s : 0).Aggregate((a, b) => a | b))]);

    /// <summary>
    /// The same as repairs: each state has its own, at a cost of 1, and a wrong one costs so much that the state must be
    /// found first. So it costs 1 more. "No fault" is mended by saying so.
    /// </summary>
    public static RepairProblem AsRepairs { get; } = new(
        Priors,
        [.. Fails.Select(row => new ProblemCheck(2, [.. row.SelectMany(f => new double[] { 1 - f, f })]))],
        [.. Priors.Select((_, s) => new ProblemRepair([.. Priors.Select((_, t) => s == t ? 1.0 : 0.0)], 1e6))],
        new ConstantCosts([.. Enumerable.Repeat(1.0, 11)]),
        double.PositiveInfinity);
}
