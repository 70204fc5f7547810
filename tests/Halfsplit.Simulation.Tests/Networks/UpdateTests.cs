using CsCheck;
using Halfsplit.Simulation.Networks;
using Xunit;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>Short cuts must come to what the long way comes to.</summary>
public sealed class UpdateTests
{
    [Fact]
    public void Changing_some_branches_gives_the_same_bits_as_starting_anew() =>
        Gen.Select(TestNetworks.AnySign(60), Gen.Select(Gen.Int[0, 10_000], Gen.OneOf(0, 1e-10, 1e-3, 1.0, 1e4)).Array[0, 5].Array[1, 4])
            .Sample((network, rounds) =>
            {
                var solver = network.Factored();
                var conductance = (double[])network.Conductance.Clone();
                foreach (var round in rounds)
                {
                    foreach (var (branch, siemens) in round)
                        conductance[branch % conductance.Length] = siemens;
                    Assert.True(solver.Refactor([.. round.Select(change => change.Item1 % conductance.Length)], conductance).IsSolved);
                }

                AssertSameBits(solver, network with { Conductance = conductance });
            });

    [Fact]
    public void Factoring_again_after_any_changes_gives_the_same_bits_as_starting_anew() =>
        Gen.Select(TestNetworks.AnySign(60), Gen.Select(Gen.Int[0, 10_000], Gen.OneOf(0, 1e-10, 1e-3, 1.0, 1e4)).Array[0, 5].Array[1, 4])
            .Sample((network, rounds) =>
            {
                var solver = network.Factored();
                var conductance = (double[])network.Conductance.Clone();
                var again = new double[network.NodeCount];
                foreach (var (branch, siemens) in rounds.SelectMany(round => round))
                {
                    conductance[branch % conductance.Length] = siemens;
                    Assert.True(solver.FactorAgainAndSolve(conductance, network.Leak, network.Injected, again).IsSolved);
                    var anew = new double[network.NodeCount];
                    Assert.True(network.Factored().FactorAndSolve(conductance, network.Leak, network.Injected, anew).IsSolved);
                    Assert.Equal(anew, again);
                }
            });

    [Fact]
    public void Large_meshes_take_changes_with_the_same_bits_too() =>
        Gen.Select(TestNetworks.Meshed(300), Gen.Int[0, 10_000], Gen.Int[0, 10_000]).Sample(
            (network, first, second) =>
            {
                Assert.InRange(NetworkShape.Create(network.NodeCount, network.Branches).Height, 33, 600);
                var solver = network.Factored();
                var conductance = (double[])network.Conductance.Clone();
                var changed = new[] { first % conductance.Length, second % conductance.Length };
                conductance[changed[0]] = 0;
                conductance[changed[1]] = 17;
                Assert.True(solver.Refactor(changed, conductance).IsSolved);
                AssertSameBits(solver, network with { Conductance = conductance });
            },
            iter: 20);

    [Fact]
    public void Conductances_added_to_large_meshes_are_a_full_solution_to_thirteen_digits() =>
        Gen.Select(TestNetworks.Meshed(300), AddedBranches.Any.Array[1, 4]).Sample(
            (network, drawn) =>
            {
                var added = AddedBranches.Within(network, drawn);
                var full = network.With(added).Volts();
                var volts = new double[network.NodeCount];
                network.Factored().SolveWithAdded(added, network.Injected, volts);
                var most = full.Max();
                for (var node = 0; node < volts.Length; node++)
                    Assert.InRange(Math.Abs(full[node] - volts[node]), 0, 1e-13 * most);
            },
            iter: 30);

    [Fact]
    public void A_long_chain_solved_with_a_jumper_over_half_of_it_is_a_full_solution()
    {
        var count = 5000;
        var branches = Enumerable.Range(0, count).Select(node => new Branch(node - 1, node)).ToArray();
        var network = new TestNetwork(
            count,
            branches,
            [.. branches.Select(_ => 200.0)],
            [.. branches.Select(_ => ConductanceRange.DefaultLeak)],
            [.. branches.Select((_, node) => node == 0 ? 2520.0 : node == count - 1 ? -3 : 0)]);
        AddedBranch[] added = [new(100, 2600, 10), new(count - 1, -1, 2)];
        var full = network.With(added).Volts();
        var volts = new double[count];
        network.Factored().SolveWithAdded(added, network.Injected, volts);
        for (var node = 0; node < count; node++)
            Assert.InRange(Math.Abs(full[node] - volts[node]), 0, 1e-12);
    }

    [Fact]
    public void The_resistance_inside_large_meshes_is_the_same_however_weakly_they_are_tied_to_the_reference() =>
        Gen.Select(TestNetworks.Meshed(300), Gen.Int[0, 599], Gen.Int[0, 599], Gen.OneOf(1e-10, 1e-20)).Sample(
            (network, from, to, weak) =>
            {
                // Without leaks, the only tie is the battery's branch, and no current between two points returns by it.
                var leakless = network with { Leak = new double[network.NodeCount] };
                var loose = leakless with { Conductance = [weak, .. network.Conductance[1..]] };
                var (tied, untied) = (new double[network.NodeCount], new double[network.NodeCount]);
                var resistance = leakless.Factored().SolveBetween(from, to, tied);
                Assert.InRange(Math.Abs(loose.Factored().SolveBetween(from, to, untied) - resistance), 0, 1e-12 * resistance);
                for (var node = 0; node < network.NodeCount; node++)
                    Assert.InRange(Math.Abs(untied[node] - untied[0] - (tied[node] - tied[0])), 0, 1e-12 * resistance);
            },
            iter: 30);

    [Fact]
    public void One_factor_serves_many_currents() =>
        Gen.Select(TestNetworks.AnySign(40), Gen.Double[-10, 10]).Sample((network, factor) =>
        {
            var solver = network.Factored();
            var other = network with { Injected = [.. network.Injected.Select((ampere, node) => (ampere * factor) + node)] };
            var volts = new double[network.NodeCount];
            solver.Solve(network.Injected, volts);
            Assert.Equal(network.Volts(), volts);
            solver.Solve(other.Injected, volts);
            Assert.Equal(other.Volts(), volts);
            // In place as well.
            other.Injected.CopyTo(volts, 0);
            solver.Solve(volts, volts);
            Assert.Equal(other.Volts(), volts);
        });

    [Fact]
    public void Solving_allocates_nothing_once_warm()
    {
        var network = TestNetworks.Meshed(60).Single();
        var solver = network.Factored();
        var volts = new double[network.NodeCount];
        int[] changed = [3, 1, 2];
        AddedBranch[] added = [new(1, 5, 10), new(7, -1, 1e-7)];
        Round();
        var before = GC.GetAllocatedBytesForCurrentThread();
        Round();
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());

        void Round()
        {
            solver.FactorAndSolve(network.Conductance, network.Leak, network.Injected, volts);
            solver.Refactor(changed, network.Conductance);
            solver.Solve(network.Injected, volts);
            solver.SolveBetween(4, 9, volts);
            solver.ResistanceBetween(4, -1);
            solver.SolveWithAdded(added, network.Injected, volts);
        }
    }

    private static void AssertSameBits(NetworkSolver solver, TestNetwork network)
    {
        var volts = new double[network.NodeCount];
        solver.Solve(network.Injected, volts);
        var anew = network.Volts();
        Assert.Equal(anew.Select(BitConverter.DoubleToInt64Bits), volts.Select(BitConverter.DoubleToInt64Bits));
    }
}
