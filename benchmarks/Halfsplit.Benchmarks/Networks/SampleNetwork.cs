using Halfsplit.Simulation.Networks;

namespace Halfsplit.Benchmarks.Networks;

/// <summary>A network with a 12 V battery at node 0 (its inner resistance is the first branch), to be timed.</summary>
internal sealed record SampleNetwork(string Name, int NodeCount, Branch[] Branches, double[] Conductance)
{
    private const double BatteryVolts = 12.6;
    private const double BatteryOhms = 0.01;

    public double[] Leak { get; } = [.. Enumerable.Repeat(ConductanceRange.DefaultLeak, NodeCount)];

    public double[] Injected { get; } =
        [.. Enumerable.Range(0, NodeCount).Select(node => node == 0 ? BatteryVolts / BatteryOhms : 0)];

    /// <summary>A cascade: a small resistance from node to node, a load from each node to the reference.</summary>
    public static SampleNetwork Ladder(int nodeCount)
    {
        var random = new Random(1);
        var network = new Builder(nodeCount);
        for (var node = 1; node < nodeCount; node++)
        {
            network.Add(node - 1, node, Between(random, 0.001, 0.05));
            network.Add(node, Branch.Reference, Between(random, 100, 10_000));
        }

        return network.Finish("ladder");
    }

    /// <summary>
    /// Like a vehicle's wiring: feeds that run through several joints and split, loads between a feed's end and one of
    /// a few ground points, ground points tied to the reference by small resistances; one cross link in twenty nodes.
    /// </summary>
    public static SampleNetwork Circuit(int nodeCount)
    {
        var random = new Random(2);
        var network = new Builder(nodeCount);
        var grounds = Math.Max(2, nodeCount / 15);
        for (var ground = 1; ground <= grounds; ground++)
            network.Add(ground, Branch.Reference, Between(random, 0.001, 0.02));

        var ends = new List<int> { 0 };
        for (var node = grounds + 1; node < nodeCount; node++)
        {
            var place = random.Next(ends.Count);
            network.Add(ends[place], node, Between(random, 0.001, 0.1));
            if (random.Next(4) > 0)
                ends[place] = node;
            else
                ends.Add(node);
            if (random.Next(20) == 0)
                network.Add(node, grounds + 1 + random.Next(node - grounds), Between(random, 10, 1000));
        }

        foreach (var end in ends)
            network.Add(end, 1 + random.Next(grounds), Between(random, 0.5, 200));
        return network.Finish("circuit");
    }

    /// <summary>A random tree with as many further random branches as half its nodes, and some loads to the reference.</summary>
    public static SampleNetwork Sparse(int nodeCount, double extraPerNode)
    {
        var random = new Random(3);
        var network = new Builder(nodeCount);
        for (var node = 1; node < nodeCount; node++)
            network.Add(random.Next(node), node, LogBetween(random, 0.001, 100));
        for (var extra = 0; extra < (int)(nodeCount * extraPerNode); extra++)
            network.Add(random.Next(nodeCount), random.Next(nodeCount), LogBetween(random, 0.001, 100));
        for (var node = 1; node < nodeCount; node += 10)
            network.Add(node, Branch.Reference, LogBetween(random, 10, 10_000));
        return network.Finish("sparse");
    }

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    private static double LogBetween(Random random, double low, double high) =>
        Math.Exp(Between(random, Math.Log(low), Math.Log(high)));

    private sealed class Builder
    {
        private readonly int nodeCount;
        private readonly List<Branch> branches = [];
        private readonly List<double> conductance = [];

        public Builder(int nodeCount)
        {
            this.nodeCount = nodeCount;
            Add(0, Branch.Reference, BatteryOhms);
        }

        public void Add(int from, int to, double ohms)
        {
            if (from == to)
                return;
            branches.Add(new Branch(from, to));
            conductance.Add(1 / ohms);
        }

        public SampleNetwork Finish(string name) => new(name, nodeCount, [.. branches], [.. conductance]);
    }
}
