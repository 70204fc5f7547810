using Halfsplit.Benchmarks.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

public sealed class PublishedRepairTests
{
    // Heckerman, Breese and Rommelse, "Decision-theoretic troubleshooting", Communications of the ACM 1995, figure 1;
    // read in full and computed again. Its odds are not jointly coherent, so it is a tree written out.
    [Fact]
    public void Observing_first_costs_192_against_20_and_295()
    {
        var tree = new ExplicitTree(new()
        {
            ["start"] = [(5, [(0.8, "seen"), (0.2, "not seen")]), (10, [(0.5, "c2")]), (20, [(0.95, "c1")])],
            ["seen"] = [(10, [(0.1, "c2")]), (20, [(0.99, "c1")])],
            ["not seen"] = [(10, [(0.75, "c2")]), (20, [(0.3, "c1")])],
            ["c1"] = [(10, [])],
            ["c2"] = [(20, [])],
        });
        var values = new DecisionGraphValue<string>(tree);

        Assert.Equal(19.2, values.Of("start"), 12);
        Assert.Equal([19.2, 20, 29.5], values.OfChoices("start").Select(v => Math.Round(v.Value, 12)));
    }

    // Jensen et al., "The SACSO methodology for troubleshooting complex systems", 2001, figure 1; read in full and
    // computed again. Greedy is: the most probability per cost, recalculated after each failure.
    [Fact]
    public void Overlapping_repairs_cost_145_and_greedily_150()
    {
        var problem = new RepairProblem(
            [0.20, 0.25, 0.40, 0.15], [],
            [new([1, 1, 0, 0], 0), new([0, 1, 1, 0], 0), new([0, 0, 1, 1], 0)],
            new ConstantCosts(1, 1, 1), double.PositiveInfinity);
        var exact = ExactPolicy.Solve(problem)!;

        Assert.Equal(1.45, exact.Value, 12);
        // The published sequence starts with A3; A1 then A3 costs 1 + 0.55.
        Assert.Equal([2], exact.BestActions());
        Assert.Equal(1.45, PolicyValue.Of(problem, InOrder(2, 0)), 12);
        Assert.Equal(1.50, PolicyValue.Of(problem, InOrder(1, 0, 2)), 12);
        Assert.Equal(1.50, PolicyValue.Of(problem, RepairOrder.Choose), 12);
    }

    // "Light print", a textbook example of troubleshooting; inputs from memory, the value computed. Each order ends after
    // its last repair, cured or not.
    [Fact]
    public void The_best_of_six_orders_costs_12()
    {
        int[][] orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
        var values = orders.Select(order => PolicyValue.Of(LightPrint(0), InOrder(order))).ToList();

        Assert.Equal(12.0, values[4], 12);
        Assert.Equal(4, values.IndexOf(values.Min()));
    }

    // The same with a dear last resort that always ends it: whatever the order, it is needed where all three fail.
    [Fact]
    public void The_exact_policy_takes_the_best_order_where_the_last_resort_is_dear()
    {
        var stillUncured = (0.4 * 0.1 * 0.1) + (0.3 * 0.1) + (0.2 * 0.1) + 0.1;
        var exact = ExactPolicy.Solve(LightPrint(1000))!;

        Assert.Equal(12.0 + (1000 * stillUncured), exact.Value, 9);
        Assert.Equal([2], exact.BestActions());
    }

    private static RepairProblem LightPrint(double lastResort) => new(
        [0.4, 0.3, 0.2, 0.1], [],
        [new([0.9, 0, 0, 0], 0), new([0.9, 0.9, 0, 0], 0), new([0, 0, 0.9, 0], 0)],
        new ConstantCosts(5, 15, 1), lastResort);

    private static RepairPolicy InOrder(params int[] order) =>
        (_, standing) => order.FirstOrDefault(repair => !standing.Failed[repair], RepairStanding.HandOver);
}
