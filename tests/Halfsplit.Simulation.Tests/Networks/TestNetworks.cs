using CsCheck;
using Halfsplit.Simulation.Networks;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>Draws networks like those that a vehicle's wiring makes, and worse.</summary>
internal static class TestNetworks
{
    private static readonly Gen<double> Mantissa = Gen.Double[1, 10];

    /// <summary>Milliohm links, everyday loads, leaks, 10 GΩ opens and ideal opens.</summary>
    private static readonly Gen<double> AnyConductance = Gen.Select(
        Mantissa,
        Gen.Frequency(
            (6, Gen.Const(1e3)),
            (2, Gen.OneOf(1e-2, 1e-1, 1.0, 10.0)),
            (1, Gen.OneOf(1e4, 1e-4, 1e-7)),
            (2, Gen.Const(1e-10)),
            (1, Gen.Const(0.0))),
        (mantissa, decade) => decade == 1e-10 ? 1e-10 : mantissa * decade);

    /// <summary>Resistances that a circuit simulator of the usual kind solves to all its printed digits.</summary>
    private static readonly Gen<double> EasyConductance = Gen.Select(
        Mantissa, Gen.OneOf(1e-4, 1e-3, 1e-2, 1e-1, 1.0, 10.0), (mantissa, decade) => mantissa * decade);

    private static readonly Gen<double> Zero = Gen.Const(0.0);

    private static readonly Gen<double> GigaohmLeak = Gen.Const(ConductanceRange.DefaultLeak);

    /// <summary>Every kind of network, fed by a battery at node 0 and by other currents into the nodes.</summary>
    public static Gen<TestNetwork> Fed(int mostNodes) =>
        Draw(mostNodes, AnyConductance, GigaohmLeak, Gen.Frequency((4, Zero), (1, Gen.Double[0, 20])));

    /// <summary>As <see cref="Fed"/>, with currents drawn out of nodes too.</summary>
    public static Gen<TestNetwork> AnySign(int mostNodes) =>
        Draw(mostNodes, AnyConductance, GigaohmLeak, Gen.Frequency((3, Zero), (1, Gen.Double[-20, 20])));

    /// <summary>Some nodes without a leak, so that parts of the network may float.</summary>
    public static Gen<TestNetwork> PartlyLeakless(int mostNodes) =>
        Draw(mostNodes, AnyConductance, Gen.Frequency((3, Zero), (1, GigaohmLeak)), Zero);

    /// <summary>Resistances from 0.1 Ω to 10 kΩ and leaks of 1 MΩ to 1 GΩ.</summary>
    public static Gen<TestNetwork> Easy(int mostNodes) =>
        Draw(mostNodes, EasyConductance, Gen.OneOf(1e-9, 1e-8, 1e-6), Gen.Frequency((4, Zero), (1, Gen.Double[-5, 5])));

    /// <summary>
    /// Two meshes with one link between them, each with one and a half random links per node, all conducting: the
    /// elimination ends in two dense blocks of dozens of nodes, of which a change touches one.
    /// </summary>
    public static Gen<TestNetwork> Meshed(int countOfEach) =>
        from seed in Gen.Int
        select Meshes(countOfEach, new Random(seed));

    private static TestNetwork Meshes(int half, Random random)
    {
        var count = 2 * half;
        var branches = new List<Branch> { new(0, Branch.Reference), new(half - 1, half) };
        foreach (var first in new[] { 0, half })
        {
            for (var node = 1; node < half; node++)
                branches.Add(new Branch(first + random.Next(node), first + node));
            for (var extra = 0; extra < half / 2; extra++)
                branches.Add(new Branch(first + random.Next(half), first + random.Next(half)));
        }

        return new TestNetwork(
            count,
            [.. branches],
            [.. branches.Select((_, index) => index == 0 ? 200 : Math.Pow(10, (6 * random.NextDouble()) - 3))],
            [.. Enumerable.Repeat(ConductanceRange.DefaultLeak, count)],
            [.. Enumerable.Range(0, count).Select(node => node == 0 ? 2520 : node % 10 == 0 ? -0.01 : 0)]);
    }

    private static Gen<TestNetwork> Draw(int mostNodes, Gen<double> conductance, Gen<double> leak, Gen<double> current) =>
        from count in Gen.Int[2, mostNodes]
        from back in Gen.Int[1, 4]
        from steps in Gen.Int[0, 1000].Array[count - 1]
        from links in conductance.Array[count - 1]
        from extraEnds in Gen.Select(Gen.Int[-1, count - 1], Gen.Int[-1, count - 1]).Array[0, count]
        from extras in conductance.Array[extraEnds.Length]
        from leaks in leak.Array[count]
        from currents in current.Array[count]
        select Build(count, back, steps, links, extraEnds, extras, leaks, currents);

    private static TestNetwork Build(
        int count, int back, int[] steps, double[] links, (int From, int To)[] extraEnds, double[] extras, double[] leaks, double[] currents)
    {
        // The battery is 12.6 V behind 5 mΩ at node 0.
        var branches = new List<Branch> { new(0, Branch.Reference) };
        for (var node = 1; node < count; node++)
        {
            var other = Math.Max(0, node - 1 - (steps[node - 1] % back));
            branches.Add(steps[node - 1] % 2 == 0 ? new Branch(other, node) : new Branch(node, other));
        }

        branches.AddRange(extraEnds.Select(ends => new Branch(ends.From, ends.To)));
        var injected = (double[])currents.Clone();
        injected[0] += 12.6 * 200;
        return new TestNetwork(count, [.. branches], [200, .. links, .. extras], leaks, injected);
    }
}
