using CsCheck;
using Halfsplit.Simulation.Networks;
using Xunit;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>The solver against exact fractions: 1 mΩ links, 1 GΩ leaks, 10 GΩ and ideal opens, floating islands.</summary>
public sealed class ExactnessTests
{
    // The worst seen in many thousand networks is 1.4e-15.
    private const double FewLastPlaces = 5e-15;

    [Fact]
    public void Every_node_volt_is_right_to_its_own_last_places_when_currents_only_flow_in() =>
        TestNetworks.Fed(30).Sample(
            network =>
            {
                var exact = ExactSolution.Of(network, network.Injected);
                var volts = network.Volts();
                for (var node = 0; node < network.NodeCount; node++)
                    Assert.InRange(exact.RelativeError(node, volts[node]), 0, FewLastPlaces);
            });

    [Fact]
    public void A_chain_of_milliohms_behind_one_ten_gigaohm_open_keeps_every_digit()
    {
        foreach (var network in OpenChains())
        {
            var exact = ExactSolution.Of(network, network.Injected);
            var volts = network.Volts();
            for (var node = 0; node < network.NodeCount; node++)
                Assert.InRange(exact.RelativeError(node, volts[node]), 0, FewLastPlaces);
        }
    }

    [Fact]
    public void Ordinary_elimination_loses_half_the_digits_of_the_same_chains()
    {
        // Why the leaks are kept apart: summed into a diagonal beside a thousand siemens, a nanosiemens is mostly rounded away.
        var worst = OpenChains().Max(network =>
        {
            var exact = ExactSolution.Of(network, network.Injected);
            return DenseElimination.Volts(network).Select((volts, node) => exact.RelativeError(node, volts)).Max();
        });
        Assert.InRange(worst, 1e-6, 1e-4);
    }

    [Fact]
    public void With_currents_of_both_signs_the_error_is_a_share_of_what_they_would_make_all_flowing_in() =>
        TestNetworks.AnySign(25).Sample(
            network =>
            {
                var exact = ExactSolution.Of(network, network.Injected);
                var whole = ExactSolution.Of(network, Unsigned(network.Injected));
                var volts = network.Volts();
                for (var node = 0; node < network.NodeCount; node++)
                    Assert.InRange(exact.AbsoluteError(node, volts[node]), 0, FewLastPlaces * whole.Volts(node));
            });

    [Fact]
    public void The_resistance_between_two_points_is_right_even_inside_a_floating_island() =>
        Gen.Select(TestNetworks.Fed(25), Gen.Int[0, 1000], Gen.Int[0, 1000]).Sample(
            (network, first, second) =>
            {
                var (from, to) = (first % network.NodeCount, second % network.NodeCount);
                var injected = new double[network.NodeCount];
                injected[from]++;
                injected[to]--;
                var exact = ExactSolution.Of(network, injected);
                var solver = network.Factored();
                var response = new double[network.NodeCount];
                var resistance = solver.SolveBetween(from, to, response);
                Assert.Equal(resistance, solver.ResistanceBetween(from, to));
                Assert.InRange(exact.DifferenceError(from, to, resistance), 0, FewLastPlaces);
                for (var node = 0; node < network.NodeCount; node++)
                    Assert.InRange(exact.AbsoluteError(node, response[node]), 0, FewLastPlaces * resistance);
            });

    [Fact]
    public void Added_meters_jumpers_and_shorts_are_as_exact_as_a_network_that_has_them() =>
        Gen.Select(TestNetworks.Fed(25), AddedBranches.Any.Array[1, 4]).Sample(
            (network, drawn) =>
            {
                var added = AddedBranches.Within(network, drawn);
                var exact = ExactSolution.Of(network.With(added), network.Injected);
                var volts = new double[network.NodeCount];
                network.Factored().SolveWithAdded(added, network.Injected, volts);
                for (var node = 0; node < network.NodeCount; node++)
                    Assert.InRange(exact.RelativeError(node, volts[node]), 0, FewLastPlaces);
            });

    [Fact]
    public void One_added_conductance_by_its_response_errs_by_last_places_of_the_volts_without_it() =>
        Gen.Select(TestNetworks.Fed(25), AddedBranches.Any).Sample(
            (network, drawn) =>
            {
                var added = AddedBranches.Within(network, [drawn]);
                var exact = ExactSolution.Of(network.With(added), network.Injected);
                var volts = network.Volts();
                var response = new double[network.NodeCount];
                var across = network.Factored().Across(added[0].From, added[0].To, volts, response);
                for (var node = 0; node < network.NodeCount; node++)
                {
                    var updated = across.Volts(volts[node], response[node], added[0].Conductance);
                    Assert.InRange(exact.AbsoluteError(node, updated), 0, 1e-13 * volts.Max());
                }
            });

    [Fact]
    public void The_exact_judge_finds_the_fractions_that_a_hand_finds()
    {
        // Two 1 S branches in series, 1 A into the first node: 2 V and 1 V; then a third of a volt.
        var chain = new TestNetwork(2, [new(0, 1), new(1, -1)], [1, 1], [0, 0], [1, 0]);
        Assert.Equal(2, ExactSolution.Of(chain, chain.Injected).Volts(0));
        Assert.Equal(1, ExactSolution.Of(chain, chain.Injected).Volts(1));
        var third = new TestNetwork(1, [new(0, -1)], [3], [0], [1]);
        Assert.Equal(1.0 / 3, ExactSolution.Of(third, third.Injected).Volts(0));
        Assert.Equal(0.5, ExactSolution.Of(third, third.Injected).RelativeError(0, 0.5), 1e-15);
    }

    /// <summary>Chains of 8 to 30 nodes with 1 mΩ links, 1 GΩ leaks and one 10 GΩ open, in each place in turn.</summary>
    private static IEnumerable<TestNetwork> OpenChains() =>
        from count in Enumerable.Range(8, 23)
        from open in Enumerable.Range(1, count - 1)
        select new TestNetwork(
            count,
            [.. Enumerable.Range(0, count).Select(node => new Branch(node - 1, node))],
            [.. Enumerable.Range(0, count).Select(node => node == open ? 1e-10 : 1e3)],
            [.. Enumerable.Repeat(ConductanceRange.DefaultLeak, count)],
            [.. Enumerable.Range(0, count).Select(node => node == 0 ? 12.6e3 : 0)]);

    private static double[] Unsigned(double[] values) => [.. values.Select(Math.Abs)];
}
