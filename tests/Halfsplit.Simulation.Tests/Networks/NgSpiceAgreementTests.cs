using CsCheck;
using Halfsplit.Simulation.Networks;
using Halfsplit.Simulation.Tests.Judges;
using Xunit;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>The solver against ngspice, within 1e-6 of the value plus 10 µV.</summary>
public sealed class NgSpiceAgreementTests
{
    [Fact]
    public void Two_hundred_and_forty_random_circuits_agree() =>
        TestNetworks.Easy(40).Array[240].Sample(AssertAgree, iter: 1);

    [Theory]
    [InlineData("series")]
    [InlineData("parallel")]
    [InlineData("ladder")]
    public void Circuits_of_one_plain_kind_agree(string kind) =>
        Gen.Select(Gen.Int[2, 50], Gen.Double[-1, 4].Array[100]).Select((count, powers) => Plain(kind, count, powers)).Array[40]
            .Sample(AssertAgree, iter: 1);

    [Fact]
    public void The_judge_finds_a_divider_that_anyone_can_check()
    {
        var volts = NgSpice.Volts(
        [
            new("divider\nV1 top 0 12\nR1 top Mid.a 1k\nR2 mid.a 0 3k\n", ["mid.a", "0", "TOP"]),
            new("another\nI1 0 x 2m\nR1 x 0 1k\n.end\n", ["x"]),
        ]);
        Assert.Equal(9, volts[0][0], 1e-9);
        Assert.Equal([0, 12], volts[0][1..]);
        Assert.Equal(2, volts[1][0], 1e-9);
    }

    [Fact]
    public void The_judge_says_so_when_it_has_no_answer()
    {
        var failed = Assert.Throws<InvalidOperationException>(() => NgSpice.Volts([new("one\nV1 a 0 1\nR1 a 0 1\n", ["b"])]));
        Assert.Contains("node b", failed.Message, StringComparison.Ordinal);
    }

    private static void AssertAgree(TestNetwork[] networks)
    {
        var judged = NgSpice.Volts(
            [.. networks.Select(network => new SpiceQuestion(network.Netlist(), [.. Enumerable.Range(0, network.NodeCount).Select(TestNetwork.Name)]))]);
        for (var index = 0; index < networks.Length; index++)
        {
            var volts = networks[index].Volts();
            for (var node = 0; node < volts.Length; node++)
                Assert.InRange(Math.Abs(judged[index][node] - volts[node]), 0, (1e-6 * Math.Abs(volts[node])) + 10e-6);
        }
    }

    private static TestNetwork Plain(string kind, int count, double[] powers)
    {
        var branches = new List<Branch> { new(0, Branch.Reference) };
        for (var node = 1; node < count; node++)
        {
            branches.Add(kind == "parallel" ? new Branch(0, node) : new Branch(node - 1, node));
            if (kind != "series" || node == count - 1)
                branches.Add(new Branch(node, Branch.Reference));
        }

        return new TestNetwork(
            count,
            [.. branches],
            [.. branches.Select((_, index) => index == 0 ? 200 : Math.Pow(10, -powers[index % 100]))],
            [.. Enumerable.Repeat(ConductanceRange.DefaultLeak, count)],
            [.. Enumerable.Range(0, count).Select(node => node == 0 ? 2520.0 : 0)]);
    }
}
