using CsCheck;
using Halfsplit.Benchmarks.Sequencing;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>Cases in which the optimum is known in closed form or by a simple rule.</summary>
public sealed class KnownTheoremTests
{
    private static readonly Gen<double[]> Odds = Gen.Double[0.01, 1].Array[3, 7].Select(Scaled);

    // Single fault, one action per fault, constant costs, no questions: the order by probability per cost is optimal
    // (published, read in full; first shown by Kalagnanam and Henrion 1988, a name from memory). With a cost of failing the
    // divisor is both costs together (computed).
    [Fact]
    public void The_order_by_probability_per_cost_is_optimal_for_single_faults() =>
        Gen.Select(Odds, Gen.Double[0.5, 50].Array[7], Gen.Double[0, 20].Array[7]).Sample((odds, costs, wrong) =>
        {
            var problem = new RepairProblem(
                odds, [], [.. odds.Select((_, s) => new ProblemRepair(Only(s, odds.Length), wrong[s]))], new ConstantCosts(costs), double.PositiveInfinity);
            var best = ExactPolicy.Solve(problem)!.Value;
            Assert.InRange(PolicyValue.Of(problem, RepairOrder.Choose), best * (1 - 1e-12), best * (1 + 1e-12));
        });

    // Pattipati and Alexandridis 1990: with binary tests that cost 1, no sequence finds the state in fewer than the mean
    // length of the Huffman code, which is at least the entropy.
    [Fact]
    public void Finding_the_state_costs_at_least_the_Huffman_length_and_the_entropy() =>
        Gen.Select(Odds, Gen.UInt.Array[1, 8]).Sample((odds, tests) =>
        {
            // The tests that single out each state make it possible at all.
            uint[] all = [.. tests, .. odds.Select((_, s) => 1U << s)];
            var graph = new IdentificationGraph(odds, [.. all.Select(_ => 1.0)], all);
            var optimum = new DecisionGraphValue<uint>(graph).Of(graph.Start);
            var huffman = Huffman.MeanLength(odds);
            Assert.True(optimum >= huffman * (1 - 1e-12), $"{optimum} {huffman}");
            Assert.True(huffman >= Partition.EntropyOf(odds) * (1 - 1e-12));
        });

    // The Huffman length is reached if every set of states has its test.
    [Fact]
    public void With_a_test_for_every_set_of_states_the_Huffman_length_is_the_optimum() =>
        Gen.Double[0.01, 1].Array[2, 6].Select(Scaled).Sample(
            odds =>
            {
                var all = Enumerable.Range(1, (1 << odds.Length) - 2).Select(set => (uint)set).ToArray();
                var graph = new IdentificationGraph(odds, [.. all.Select(_ => 1.0)], all);
                Assert.Equal(Huffman.MeanLength(odds), new DecisionGraphValue<uint>(graph).Of(graph.Start), 12);
            },
            iter: 40);

    // Cost clusters in a tree that stay open: bottom-up probability per cost is optimal (read in an abstract;
    // Ottosen and Jensen 2010, a name from memory).
    [Fact]
    public void Panels_in_a_tree_that_stay_open_are_taken_by_probability_per_cost_bottom_up() =>
        Gen.Int[0, 1_000_000].Sample(seed =>
        {
            var draws = new Draws((ulong)seed);
            // Panel 1 lies behind panel 0, panel 2 by itself; 3 stands for what needs no panel.
            double[] panels = [draws.Between(1, 30), draws.Between(1, 30), draws.Between(1, 30)];
            int[] needs = [0b001, 0b011, 0b100, 0];
            var odds = Scaled([.. Enumerable.Range(0, draws.Whole(3, 7)).Select(_ => draws.Between(0.01, 1))]);
            var at = odds.Select(_ => draws.Whole(0, 3)).ToArray();
            var costs = odds.Select(_ => draws.Between(0.5, 20)).ToArray();
            var problem = new RepairProblem(
                odds, [], [.. odds.Select((_, s) => new ProblemRepair(Only(s, odds.Length), 0))],
                new ArrangementCosts(panels, [], 0, [.. costs.Select((c, s) => new ActionNeeds(c, needs[at[s]], 0, 0, null))]),
                double.PositiveInfinity);

            var outer = new Panel(panels[0], Behind(0), [new Panel(panels[1], Behind(1), [])]);
            var order = new Panel(0, Behind(3), [outer, new Panel(panels[2], Behind(2), [])]).Order();
            var value = PolicyValue.Of(problem, (_, standing) => order.First(r => !standing.Failed[r]));
            var best = ExactPolicy.Solve(problem)!.Value;
            Assert.InRange(value, best * (1 - 1e-12), best * (1 + 1e-12));

            Step[] Behind(int panel) =>
                [.. Enumerable.Range(0, odds.Length).Where(s => at[s] == panel).Select(s => new Step(odds[s], costs[s], s))];
        });

    private static double[] Scaled(double[] weights)
    {
        var sum = weights.Sum();
        return [.. weights.Select(w => w / sum)];
    }

    private static double[] Only(int state, int states) => [.. Enumerable.Range(0, states).Select(s => s == state ? 1.0 : 0.0)];
}
