using BenchmarkDotNet.Attributes;
using Halfsplit.Simulation.Networks;

namespace Halfsplit.Benchmarks.Networks;

/// <summary>The solver's calls on 60 nodes wired like a vehicle's circuit.</summary>
[MemoryDiagnoser]
public class NetworkSolverBenchmarks
{
    private readonly SampleNetwork network = SampleNetwork.Circuit(60);
    private readonly double[] volts = new double[60];
    private readonly double[] response = new double[60];
    private readonly AddedBranch[] meter = [new(20, 40, 1e-7)];
    private readonly double[] conductance;
    private readonly NetworkSolver solver;
    private int changed;

    public NetworkSolverBenchmarks()
    {
        solver = new NetworkSolver(NetworkShape.Create(network.NodeCount, network.Branches));
        solver.Factor(network.Conductance, network.Leak);
        conductance = [.. network.Conductance];
    }

    [Benchmark]
    public NetworkShape CreateShape() => NetworkShape.Create(network.NodeCount, network.Branches);

    [Benchmark]
    public FactorOutcome FactorAndSolve() => solver.FactorAndSolve(network.Conductance, network.Leak, network.Injected, volts);

    /// <summary>One branch after the other in turn, so that near and far ones weigh the same.</summary>
    [Benchmark]
    public FactorOutcome RefactorOneBranch()
    {
        changed = (changed + 1) % conductance.Length;
        return solver.Refactor(new ReadOnlySpan<int>(in changed), conductance);
    }

    [Benchmark]
    public void SolveTenCurrents()
    {
        for (var count = 0; count < 10; count++)
            solver.Solve(network.Injected, volts);
    }

    [Benchmark]
    public double SolveBetweenTwoNodes() => solver.SolveBetween(20, 40, response);

    [Benchmark]
    public double ResistanceBetweenTwoNodes() => solver.ResistanceBetween(20, 40);

    [Benchmark]
    public void SolveWithMeterAcross() => solver.SolveWithAdded(meter, network.Injected, volts);
}
