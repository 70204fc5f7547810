using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Devices;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation;

/// <summary>Choices for a simulation beyond arrangement and faults.</summary>
/// <param name="ThresholdFactor">Multiplies relay and motor thresholds and, squared, fuse melting times.</param>
/// <param name="Laid">An instrument that takes part in the circuit: a test lamp or an in-line ammeter.</param>
public sealed record SimulationOptions(double ThresholdFactor = 1, Probe? Laid = null);

/// <summary>
/// Simulates cars with the circuit of one sheet. A car first lives with its faults (every condition of the sheet in
/// turn, everything in place: fuses that blow are blown from then on); then it is brought into the arrangement.
/// Deterministic. Not thread-safe; make one per thread on the same <see cref="CircuitNetwork"/>.
/// </summary>
public sealed class CircuitSimulator(CircuitNetwork network, Meter? meter = null)
{
    private const int MostHistories = 4096;

    private readonly Dictionary<string, int[]> _histories = new(StringComparer.Ordinal);
    private readonly Meter _meter = meter ?? Meter.Default;

    public CircuitNetwork Network => network;

    public Meter Meter => _meter;

    /// <summary>Settles a car in an arrangement.</summary>
    /// <exception cref="ArgumentException">The arrangement's condition is not in the sheet.</exception>
    public OperatingPoint Simulate(
        Arrangement arrangement, IReadOnlyList<Fault> faults, SimulationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        ArgumentNullException.ThrowIfNull(faults);
        options ??= new SimulationOptions();
        var target = network.Circuit.FindCondition(arrangement.Condition)
            ?? throw new ArgumentException($"The circuit has no condition \"{arrangement.Condition}\".", nameof(arrangement));
        var state = History(faults, options.ThresholdFactor);
        Attachment[] laid = options.Laid is { } probe ? [InstrumentReader.Lay(network, probe, _meter)] : [];
        OperatingPoint? point = null;
        foreach (var condition in Chain(target))
        {
            point = Settle(condition, arrangement, faults, laid, options.ThresholdFactor, state);
            state = Carry(point.Run.State);
        }

        return point!;
    }

    /// <summary>What an instrument shows in an arrangement.</summary>
    public Prediction Read(
        Arrangement arrangement, IReadOnlyList<Fault> faults, Probe probe, SimulationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(probe);
        if (InstrumentReader.TakesPart(probe.Instrument))
        {
            options = (options ?? new SimulationOptions()) with { Laid = probe };
        }

        return new InstrumentReader(Simulate(arrangement, faults, options), _meter).Read(probe);
    }

    /// <summary>The fuses that have gone by the time the person arrives.</summary>
    public ImmutableArray<string> Blown(IReadOnlyList<Fault> faults)
    {
        var state = History(faults, 1);
        return [.. network.Devices.OfType<FuseDevice>().Where(f => OverloadDevice.IsGone(state[f.Slot])).Select(f => f.Part)];
    }

    /// <summary>Only what outlives the key: blown fuses.</summary>
    private int[] History(IReadOnlyList<Fault> faults, double thresholdFactor)
    {
        var key = string.Join(" ", faults) + (thresholdFactor == 1 ? "" : $" x{thresholdFactor}");
        if (_histories.TryGetValue(key, out var known))
        {
            return known;
        }

        var state = new int[network.Devices.Length];
        foreach (var condition in network.Circuit.Conditions)
        {
            var run = Settle(condition, null, faults, [], thresholdFactor, state);
            state = Carry(run.Run.State);
        }

        var lasting = new int[state.Length];
        foreach (var device in network.Devices)
        {
            if (device is FuseDevice)
            {
                lasting[device.Slot] = state[device.Slot];
            }
        }

        if (_histories.Count >= MostHistories)
        {
            _histories.Clear();
        }

        return _histories[key] = lasting;
    }

    private OperatingPoint Settle(
        Condition condition, Arrangement? arrangement, IReadOnlyList<Fault> faults, ReadOnlySpan<Attachment> laid,
        double thresholdFactor, int[] state)
    {
        var run = new Run(network, condition, arrangement, faults, laid, thresholdFactor);
        state.CopyTo(run.State, 0);
        return new OperatingPoint(run, new Settler(run).Settle());
    }

    private int[] Carry(int[] state)
    {
        var next = new int[state.Length];
        foreach (var device in network.Devices)
        {
            next[device.Slot] = device.Carry(state[device.Slot]);
        }

        return next;
    }

    private List<Condition> Chain(Condition target)
    {
        var chain = new List<Condition> { target };
        // A sheet with a circle in "after" is an error of the sheet; here it only must not hang.
        while (chain[^1].After is { } before && chain.Count <= network.Circuit.Conditions.Length
            && network.Circuit.FindCondition(before) is { } condition)
        {
            chain.Add(condition);
        }

        chain.Reverse();
        return chain;
    }
}
