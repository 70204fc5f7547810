using System.Diagnostics;
using Halfsplit.Simulation.Networks;

namespace Halfsplit.Benchmarks.Networks;

/// <summary>
/// The ways to get a fault's volts, timed. A resistive fault adds ohms to a branch; a short lays a conductance from a
/// node to the reference.
/// </summary>
internal sealed class FaultRuns
{
    public const double AddedOhms = 10;
    public const double ShortSiemens = 10;
    private const int MostFaults = 500;
    private const double SecondsPerTiming = 0.5;

    private readonly SampleNetwork network;
    private readonly NetworkSolver solver;
    private readonly double[] conductance;
    private readonly double[] healthy;
    private readonly double[] volts;
    private readonly double[] response;
    private readonly int[] changed = new int[2];

    public FaultRuns(SampleNetwork network)
    {
        this.network = network;
        Shape = NetworkShape.Create(network.NodeCount, network.Branches);
        solver = new NetworkSolver(Shape);
        conductance = [.. network.Conductance];
        healthy = new double[network.NodeCount];
        volts = new double[network.NodeCount];
        response = new double[network.NodeCount];
        Restore();
        Branches = Sample(network.Branches.Length);
        Nodes = Sample(network.NodeCount);
        Probes = [.. Sample(network.NodeCount).Where((_, index) => index % Math.Max(1, Nodes.Length / 16) == 0).Take(16)];
    }

    public NetworkShape Shape { get; }

    /// <summary>The branches that are made resistive, and the nodes that are shorted: all, or an even sample.</summary>
    public int[] Branches { get; }

    public int[] Nodes { get; }

    public int[] Probes { get; }

    /// <summary>Seconds for a complete factorisation and solution.</summary>
    public double Complete() => Time(() => solver.FactorAndSolve(network.Conductance, network.Leak, network.Injected, volts), 1);

    /// <summary>Seconds per resistive fault, all node volts: re-elimination of the path, then substitution.</summary>
    public double Resistive()
    {
        var seconds = Time(
            () =>
            {
                foreach (var branch in Branches)
                    SolveResistive(branch);
            },
            Branches.Length);
        Restore();
        return seconds;
    }

    /// <summary>Seconds per short, all node volts: one response, then a multiple of it.</summary>
    public double Shorted() => Time(
        () =>
        {
            foreach (var node in Nodes)
                SolveShorted(node);
        },
        Nodes.Length);

    /// <summary>Seconds per short and probe once each probe's response and each node's resistance are known.</summary>
    public double ShortedAtProbes(out double largestDifference)
    {
        var responses = Probes.Select(probe =>
        {
            var one = new double[network.NodeCount];
            solver.SolveBetween(probe, Branch.Reference, one);
            return one;
        }).ToArray();
        var across = Nodes.Select(node => new AddedConductance(healthy[node], solver.ResistanceBetween(node, Branch.Reference))).ToArray();
        var table = new double[Nodes.Length * Probes.Length];
        var seconds = Time(Fill, table.Length);
        largestDifference = 0;
        for (var index = 0; index < Nodes.Length; index++)
        {
            SolveShorted(Nodes[index]);
            for (var probe = 0; probe < Probes.Length; probe++)
                largestDifference = Math.Max(largestDifference, Math.Abs(volts[Probes[probe]] - table[(index * Probes.Length) + probe]));
        }

        return seconds;

        void Fill()
        {
            var place = 0;
            for (var index = 0; index < Nodes.Length; index++)
            {
                var current = across[index].Current(ShortSiemens);
                var node = Nodes[index];
                for (var probe = 0; probe < responses.Length; probe++)
                    table[place++] = healthy[Probes[probe]] - (responses[probe][node] * current);
            }
        }
    }

    /// <summary>All node volts with one branch resistive. The branch before it is whole again.</summary>
    public ReadOnlySpan<double> SolveResistive(int branch)
    {
        conductance[changed[0]] = network.Conductance[changed[0]];
        changed[1] = changed[0];
        changed[0] = branch;
        conductance[branch] = Faulty(branch);
        solver.Refactor(changed, conductance);
        solver.Solve(network.Injected, volts);
        return volts;
    }

    /// <summary>All node volts with a node shorted to the reference.</summary>
    public ReadOnlySpan<double> SolveShorted(int node)
    {
        var current = solver.Across(node, Branch.Reference, healthy, response).Current(ShortSiemens);
        for (var other = 0; other < volts.Length; other++)
            volts[other] = healthy[other] - (response[other] * current);
        return volts;
    }

    /// <summary>Forgets the faults.</summary>
    public void Restore()
    {
        network.Conductance.CopyTo(conductance, 0);
        solver.FactorAndSolve(conductance, network.Leak, network.Injected, healthy);
    }

    /// <summary>The conductance of a branch with the added ohms.</summary>
    public double Faulty(int branch) => network.Conductance[branch] / (1 + (AddedOhms * network.Conductance[branch]));

    private static int[] Sample(int count)
    {
        var step = Math.Max(1, count / MostFaults);
        return [.. Enumerable.Range(0, count).Where(index => index % step == 0).Take(MostFaults)];
    }

    /// <summary>The best of several rounds, which is what the machine can do when nothing else disturbs it.</summary>
    private static double Time(Action run, int per)
    {
        var warm = Stopwatch.StartNew();
        while (warm.Elapsed.TotalSeconds < SecondsPerTiming / 2)
            run();
        var best = double.MaxValue;
        var total = Stopwatch.StartNew();
        do
        {
            var repeats = 0;
            var round = Stopwatch.StartNew();
            do
            {
                run();
                repeats++;
            }
            while (round.Elapsed.TotalSeconds < SecondsPerTiming / 10);
            best = Math.Min(best, round.Elapsed.TotalSeconds / repeats);
        }
        while (total.Elapsed.TotalSeconds < SecondsPerTiming);
        return best / per;
    }
}
