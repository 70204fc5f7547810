using CsCheck;
using Halfsplit.Simulation.Networks;
using Xunit;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>What the solver refuses, and what it reports instead of numbers.</summary>
public sealed class ContractTests
{
    private static readonly double[] NoLeak = [0, 0, 0];

    [Theory]
    [InlineData(-2, 0)]
    [InlineData(0, 3)]
    [InlineData(int.MaxValue, 1)]
    public void A_branch_to_a_node_that_is_not_there_is_refused_by_its_index(int from, int to)
    {
        var refused = Assert.Throws<ArgumentException>(() => NetworkShape.Create(3, [new(0, 1), new(from, to)]));
        Assert.Contains("branch 1", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-1e-9)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e31)]
    public void A_conductance_that_cannot_be_is_refused_by_its_index(double siemens)
    {
        var solver = Triangle();
        Names("branch 2", () => solver.Factor([1, 1, siemens], NoLeak));
        Names("node 1", () => solver.Factor([1, 1, 1], [0, siemens, 0]));
        Names("branch 2", () => solver.FactorAndSolve([1, 1, siemens], NoLeak, new double[3], new double[3]));
        solver.Factor([1, 1, 1], [1, 1, 1]);
        Names("branch 2", () => solver.Refactor([2], [1, 1, siemens]));
        Names("added branch 0", () => solver.SolveWithAdded([new(0, 1, siemens)], new double[3], new double[3]));
    }

    [Theory]
    [InlineData(1e-31)]
    [InlineData(double.Epsilon)]
    [InlineData(-0.0)]
    public void A_conductance_too_small_to_count_is_an_open(double siemens)
    {
        var solver = Triangle();
        Assert.Equal([2], solver.Factor([1, siemens, siemens], [1, 0, siemens]).FloatingNodes);
        Assert.True(solver.Refactor([1], [1, 1, siemens]).IsSolved);
        Assert.Equal([2], solver.Refactor([1], [1, siemens, siemens]).FloatingNodes);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-1e31)]
    public void A_current_that_cannot_be_is_refused_by_its_index(double ampere)
    {
        var solver = Triangle();
        solver.Factor([1, 1, 1], [1, 1, 1]);
        Names("node 2", () => solver.Solve([0, 0, ampere], new double[3]));
    }

    [Fact]
    public void Wrong_lengths_and_missing_branches_are_refused()
    {
        var solver = Triangle();
        Assert.Throws<InvalidOperationException>(() => solver.Solve(new double[3], new double[3]));
        Assert.Throws<InvalidOperationException>(() => solver.Refactor([0], new double[3]));
        Assert.Throws<ArgumentException>(() => solver.Factor([1, 1], [1, 1, 1]));
        Assert.Throws<ArgumentException>(() => solver.Factor([1, 1, 1], [1, 1]));
        solver.Factor([1, 1, 1], [1, 1, 1]);
        Assert.Throws<ArgumentException>(() => solver.Solve(new double[2], new double[3]));
        Assert.Throws<ArgumentException>(() => solver.Solve(new double[3], new double[4]));
        Assert.Throws<ArgumentException>(() => solver.Refactor([3], [1, 1, 1]));
        Assert.Throws<ArgumentException>(() => solver.Refactor([-1], [1, 1, 1]));
        Assert.Throws<ArgumentException>(() => solver.ResistanceBetween(0, 3));
        Assert.Throws<ArgumentException>(() => solver.SolveWithAdded([new(-2, 0, 1)], new double[3], new double[3]));
        Assert.Throws<ArgumentException>(() => NetworkShape.Create(-1, []));
    }

    [Fact]
    public void A_refused_factorisation_leaves_no_factor_behind()
    {
        var solver = Triangle();
        solver.Factor([1, 1, 1], [1, 1, 1]);
        Assert.Throws<ArgumentException>(() => solver.Factor([1, 1, double.NaN], [1, 1, 1]));
        Assert.Throws<InvalidOperationException>(() => solver.Solve(new double[3], new double[3]));
    }

    [Fact]
    public void Nodes_with_no_way_to_the_reference_are_reported_and_a_leak_cures_them() =>
        TestNetworks.PartlyLeakless(40).Sample(network =>
        {
            var expected = Floating(network);
            var solver = new NetworkSolver(NetworkShape.Create(network.NodeCount, network.Branches));
            var volts = new double[network.NodeCount];
            var outcome = solver.FactorAndSolve(network.Conductance, network.Leak, network.Injected, volts);
            Assert.Equal(expected, outcome.FloatingNodes);
            Assert.Equal(expected.Length == 0, outcome.IsSolved);
            Assert.All(volts, volt => Assert.True(double.IsFinite(volt)));
            if (expected.Length > 0)
                Assert.Throws<InvalidOperationException>(() => solver.Solve(network.Injected, volts));

            var leak = network.Leak.Select((siemens, node) => expected.Contains(node) ? 1e-9 : siemens).ToArray();
            Assert.True(solver.Factor(network.Conductance, leak).IsSolved);
        });

    [Fact]
    public void A_part_that_floats_after_a_change_is_reported_and_comes_back_with_the_next()
    {
        var solver = new NetworkSolver(NetworkShape.Create(4, [new(-1, 0), new(0, 1), new(1, 2), new(2, 3)]));
        Assert.True(solver.Factor([1, 1, 1, 1], [0, 0, 0, 0]).IsSolved);
        Assert.Equal([2, 3], solver.Refactor([2], [1, 1, 0, 1]).FloatingNodes);
        Assert.Equal([3], solver.Refactor([2, 3], [1, 1, 1, 0]).FloatingNodes);
        Assert.True(solver.Refactor([3], [1, 1, 1, 1]).IsSolved);
        var volts = new double[4];
        solver.Solve([0, 0, 0, 1], volts);
        Assert.Equal([1, 2, 3, 4], volts);
    }

    [Fact]
    public void Values_from_one_end_of_the_range_to_the_other_give_finite_volts() =>
        Gen.Select(TestNetworks.Fed(40), Gen.Int[-30, 30].Array[100]).Sample((network, powers) =>
        {
            var extreme = network with
            {
                Conductance = [.. network.Conductance.Select((_, index) => Math.Pow(10, powers[index % 100]))],
                Leak = [.. network.Leak.Select((_, index) => Math.Pow(10, powers[99 - index]))],
                Injected = [.. network.Injected.Select((_, index) => 1e30 * (index - 3) / 40)],
            };
            var solver = extreme.Factored();
            var volts = new double[network.NodeCount];
            solver.Solve(extreme.Injected, volts);
            Assert.All(volts, volt => Assert.True(double.IsFinite(volt)));
            Assert.True(double.IsFinite(solver.SolveBetween(0, network.NodeCount - 1, volts)));
            Assert.All(volts, volt => Assert.True(double.IsFinite(volt)));
            solver.SolveWithAdded([new(0, network.NodeCount - 1, 1e30), new(0, -1, 1e-30)], extreme.Injected, volts);
            Assert.All(volts, volt => Assert.True(double.IsFinite(volt)));
        });

    [Fact]
    public void Networks_without_nodes_or_branches_are_networks()
    {
        var none = new NetworkSolver(NetworkShape.Create(0, [new(-1, -1)]));
        Assert.True(none.FactorAndSolve([1], [], [], []).IsSolved);
        var one = new NetworkSolver(NetworkShape.Create(1, [new(0, 0)]));
        var volts = new double[1];
        Assert.True(one.FactorAndSolve([1e30], [0.5], [1], volts).IsSolved);
        Assert.Equal(2, volts[0]);
        Assert.Equal(0, one.ResistanceBetween(0, 0));
    }

    [Fact]
    public void A_changed_branch_reaches_few_nodes_of_a_long_chain()
    {
        var branches = Enumerable.Range(1, 5999).Select(node => new Branch(node - 1, node)).ToArray();
        var shape = NetworkShape.Create(6000, branches);
        Assert.InRange(shape.Height, 1, 30);
        Assert.InRange(shape.EntryCount, 5999, 2 * 6000);
    }

    private static NetworkSolver Triangle() => new(NetworkShape.Create(3, [new(0, 1), new(1, 2), new(2, 0)]));

    private static void Names(string what, Action action) =>
        Assert.Contains(what, Assert.Throws<ArgumentException>(action).Message, StringComparison.Ordinal);

    /// <summary>The nodes that a flood from the reference doesn't reach.</summary>
    private static int[] Floating(TestNetwork network)
    {
        var reached = network.Leak.Select(siemens => siemens > 0).ToArray();
        for (var changed = true; changed;)
        {
            changed = false;
            for (var index = 0; index < network.Branches.Length; index++)
            {
                var (from, to) = network.Branches[index];
                var (fromReached, toReached) = (from < 0 || reached[from], to < 0 || reached[to]);
                if (network.Conductance[index] > 0 && fromReached != toReached)
                    reached[fromReached ? to : from] = changed = true;
            }
        }

        return [.. Enumerable.Range(0, network.NodeCount).Where(node => !reached[node])];
    }
}
