using Halfsplit.Benchmarks.Sequencing;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

public sealed class PublishedTestSequenceTests
{
    // The table of Pattipati and Alexandridis 1990 is from memory; its optimum of 2.18 is the published one (from memory)
    // and was computed again from the table.
    [Fact]
    public void The_optimum_is_the_published_one()
    {
        Assert.Equal(2.18, new DecisionGraphValue<uint>(PublishedTestSequence.Graph).Of(PublishedTestSequence.Graph.Start), 12);
        Assert.Equal(1 + 2.18, ExactPolicy.Solve(PublishedTestSequence.AsRepairs)!.Value, 12);
    }

    // Computed from the table by exact enumeration.
    [Fact]
    public void Each_first_test_costs_what_enumeration_gave()
    {
        double[] expected = [2.86, 2.18, 2.82, 2.18, 2.89];
        var values = new DecisionGraphValue<uint>(PublishedTestSequence.Graph).OfChoices(PublishedTestSequence.Graph.Start);
        var asRepairs = ExactPolicy.Solve(PublishedTestSequence.AsRepairs)!.ActionValues();

        Assert.Equal([0, 1, 2, 3, 4], values.Select(v => v.Action));
        for (var test = 0; test < expected.Length; test++)
        {
            Assert.Equal(expected[test], values[test].Value, 12);
            Assert.Equal(test, asRepairs[test].Action);
            Assert.Equal(1 + expected[test], asRepairs[test].Value, 12);
        }
    }

    [Fact]
    public void Both_of_the_best_first_tests_are_named() =>
        Assert.Equal([1, 3], ExactPolicy.Solve(PublishedTestSequence.AsRepairs)!.BestActions());

    // Computed from the table: plain information takes t1 first and loses 31 %.
    [Fact]
    public void One_step_information_costs_286()
    {
        var value = PolicyValue.Of(PublishedTestSequence.AsRepairs, new OneStepInformation(1).Choose);

        Assert.Equal(1 + 2.86, value, 12);
    }

    // Computed from the table; the strategy is that of Tu and Pattipati 2003 (read in its abstract).
    [Fact]
    public void One_step_of_roll_out_over_information_reaches_the_optimum()
    {
        var value = PolicyValue.Of(PublishedTestSequence.AsRepairs, new RollOut(new OneStepInformation(1).Choose).Choose);

        Assert.Equal(1 + 2.18, value, 12);
    }

    // Computed from the priors.
    [Fact]
    public void Entropy_and_Huffman_bounds_lie_below()
    {
        Assert.Equal(1.455, Partition.EntropyOf(PublishedTestSequence.Priors), 3);
        Assert.Equal(1.59, Huffman.MeanLength(PublishedTestSequence.Priors), 12);
    }
}
