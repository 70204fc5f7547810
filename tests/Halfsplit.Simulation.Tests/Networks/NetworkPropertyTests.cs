using CsCheck;
using Halfsplit.Simulation.Networks;
using Xunit;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>What must hold in every network, whatever its values.</summary>
public sealed class NetworkPropertyTests
{
    [Fact]
    public void The_currents_at_every_node_sum_to_zero() =>
        TestNetworks.AnySign(60).Sample(network =>
        {
            var volts = network.Volts();
            var sum = new double[network.NodeCount];
            var size = new double[network.NodeCount];
            for (var node = 0; node < network.NodeCount; node++)
                Flow(node, -network.Injected[node], Math.Abs(network.Injected[node]));
            for (var node = 0; node < network.NodeCount; node++)
                Flow(node, network.Leak[node] * volts[node], network.Leak[node] * Math.Abs(volts[node]));
            for (var index = 0; index < network.Branches.Length; index++)
            {
                var (from, to) = network.Branches[index];
                var (a, b) = (from < 0 ? 0 : volts[from], to < 0 ? 0 : volts[to]);
                var current = network.Conductance[index] * (a - b);
                // A volt is only known to its last place, and a strong conductance makes amperes of that.
                var bound = network.Conductance[index] * (Math.Abs(a) + Math.Abs(b));
                Flow(from, current, bound);
                Flow(to, -current, bound);
            }

            for (var node = 0; node < network.NodeCount; node++)
                Assert.InRange(Math.Abs(sum[node]), 0, 5e-15 * size[node]);

            void Flow(int node, double current, double bound)
            {
                if (node < 0)
                    return;
                sum[node] += current;
                size[node] += bound;
            }
        });

    [Fact]
    public void An_ampere_here_makes_the_same_volts_there_as_an_ampere_there_makes_here() =>
        Gen.Select(TestNetworks.Fed(60), Gen.Int[0, 1000], Gen.Int[0, 1000]).Sample((network, first, second) =>
        {
            var (here, there) = (first % network.NodeCount, second % network.NodeCount);
            AssertClose(Unit(network, here)[there], Unit(network, there)[here], 1e-13);
        });

    [Fact]
    public void Sources_together_make_the_sum_of_what_each_makes_alone() =>
        TestNetworks.AnySign(40).Sample(network =>
        {
            var solver = network.Factored();
            var sum = new double[network.NodeCount];
            var size = new double[network.NodeCount];
            var alone = new double[network.NodeCount];
            for (var source = 0; source < network.NodeCount; source++)
            {
                var injected = new double[network.NodeCount];
                injected[source] = network.Injected[source];
                solver.Solve(injected, alone);
                for (var node = 0; node < alone.Length; node++)
                {
                    sum[node] += alone[node];
                    size[node] += Math.Abs(alone[node]);
                }
            }

            var volts = network.Volts();
            for (var node = 0; node < volts.Length; node++)
                Assert.InRange(Math.Abs(volts[node] - sum[node]), 0, 1e-13 * size[node]);
        });

    [Fact]
    public void Twice_the_current_makes_twice_the_volts_and_twice_the_conductance_half_of_them() =>
        TestNetworks.AnySign(60).Sample(network =>
        {
            var volts = network.Volts();
            var doubled = (network with { Injected = [.. network.Injected.Select(ampere => 2 * ampere)] }).Volts();
            var halved = (network with
            {
                Conductance = [.. network.Conductance.Select(siemens => 2 * siemens)],
                Leak = [.. network.Leak.Select(siemens => 2 * siemens)],
            }).Volts();
            // Twos only move the exponent: the digits must be the same.
            Assert.Equal(volts.Select(volt => 2 * volt), doubled);
            Assert.Equal(volts.Select(volt => volt / 2), halved);
        });

    [Fact]
    public void Names_of_nodes_and_order_of_branches_change_nothing() =>
        Gen.Select(TestNetworks.Fed(60), Gen.Int).Sample((network, seed) =>
        {
            var random = new Random(seed);
            var name = Enumerable.Range(0, network.NodeCount).ToArray();
            random.Shuffle(name);
            var place = Enumerable.Range(0, network.Branches.Length).ToArray();
            random.Shuffle(place);
            var other = new TestNetwork(
                network.NodeCount,
                [.. place.Select(index => Rename(network.Branches[index]))],
                [.. place.Select(index => network.Conductance[index])],
                Renamed(network.Leak),
                Renamed(network.Injected));
            var volts = network.Volts();
            var renamed = other.Volts();
            for (var node = 0; node < network.NodeCount; node++)
                AssertClose(volts[node], renamed[name[node]], 1e-13);

            Branch Rename(Branch branch) => new(branch.To < 0 ? -1 : name[branch.To], branch.From < 0 ? -1 : name[branch.From]);

            double[] Renamed(double[] values)
            {
                var moved = new double[values.Length];
                for (var node = 0; node < values.Length; node++)
                    moved[name[node]] = values[node];
                return moved;
            }
        });

    [Fact]
    public void More_conductance_to_the_reference_never_raises_any_volts_that_currents_flowing_in_make() =>
        Gen.Select(TestNetworks.Fed(60), Gen.Int[0, 1000], Gen.Double[0, 100]).Sample((network, where, siemens) =>
        {
            var volts = network.Volts();
            var lower = new double[network.NodeCount];
            network.Factored().SolveWithAdded([new(where % network.NodeCount, -1, siemens)], network.Injected, lower);
            for (var node = 0; node < network.NodeCount; node++)
                Assert.InRange(lower[node], 0, volts[node] * (1 + 1e-14));
        });

    private static double[] Unit(TestNetwork network, int node)
    {
        var injected = new double[network.NodeCount];
        injected[node] = 1;
        return (network with { Injected = injected }).Volts();
    }

    private static void AssertClose(double expected, double actual, double share) =>
        Assert.InRange(Math.Abs(expected - actual), 0, share * Math.Abs(expected));
}
