using BenchmarkDotNet.Attributes;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Benchmarks.Dictionary;

/// <summary>One car settled by way of the conditions before, and one reading with and without its slopes.</summary>
[MemoryDiagnoser]
public class CircuitSimulatorBenchmarks
{
    private static readonly Fault[] Faults = [new("G2", FaultModes.Resistive, 1)];
    private static readonly Arrangement Running = new("running");
    private static readonly Probe Feed = new(Instrument.Volts, new TerminalName("M1", "pos"), new TerminalName("BAT", "neg"));

    private CircuitNetwork _network = null!;
    private OperatingPoint _point = null!;
    private double[] _slopes = [];

    [GlobalSetup]
    public void Load()
    {
        _network = NetworkCompiler.Compile(ShippedSheets.Load("pump-feed"));
        _point = new CircuitSimulator(_network).Simulate(Running, Faults);
        _slopes = new double[_network.Branches.Length + 1];
    }

    /// <summary>A simulator that knows nothing yet: fuses and all five conditions.</summary>
    [Benchmark]
    public OperatingPoint Simulate() => new CircuitSimulator(_network).Simulate(Running, Faults);

    [Benchmark]
    public Prediction Read() => new InstrumentReader(_point).Read(Feed);

    [Benchmark]
    public double ReadWithSlopes()
    {
        var reader = new InstrumentReader(_point);
        reader.Slopes(Feed, _slopes);
        return reader.Read(Feed).Value + _slopes[0];
    }
}
