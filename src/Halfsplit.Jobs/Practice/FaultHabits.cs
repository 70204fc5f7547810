using System.Collections.Immutable;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Practice;

/// <summary>How the faults of a car behave beyond being there.</summary>
/// <param name="Shows">Share of the looks and readings at which an intermittent fault is there, 0 to 1; 1: always.</param>
/// <param name="OhmsFall">
/// Power with which a bad joint's ohms fall with its amps: ohms as stated at 1 A, times amps to the power of minus this.
/// 0: ohmic. A film of oxide does so; the power is an assumption.
/// </param>
public sealed record FaultHabits(double Shows = 1, double OhmsFall = 0)
{
    private const double LeastAmps = 1e-3;
    private const int MostRounds = 24;

    /// <summary>Always there and ohmic.</summary>
    public static FaultHabits Plain { get; } = new();

    /// <summary>The faults with the ohms that their joints have at the amps that then flow.</summary>
    /// <param name="probe">What is held to the circuit, where that draws current; null for nothing.</param>
    public ImmutableArray<Fault> Settle(
        CircuitSimulator simulator, ImmutableArray<Fault> faults, Arrangement arrangement, Probe? probe)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        if (OhmsFall <= 0 || !faults.Any(IsJoint))
        {
            return faults;
        }

        var laid = probe is not null && InstrumentReader.TakesPart(probe.Instrument) ? probe : null;
        var now = faults;
        for (var round = 0; round < MostRounds; round++)
        {
            var point = simulator.Simulate(arrangement, now, new SimulationOptions(1, laid));
            var next = now.Select((fault, i) => IsJoint(fault)
                ? fault with { Severity = Ohms(faults[i].Severity!.Value, Amps(point, fault.Part)) }
                : fault).ToImmutableArray();
            var moved = now.Zip(next).Any(p => IsJoint(p.First)
                && Math.Abs(Math.Log(p.First.Severity!.Value / p.Second.Severity!.Value)) > 1e-3);
            now = next;
            if (!moved)
            {
                break;
            }
        }

        return now;
    }

    private double Ohms(double atOneAmp, double amps) => atOneAmp * Math.Pow(Math.Max(amps, LeastAmps), -OhmsFall);

    private static double Amps(OperatingPoint point, string part)
    {
        var most = 0.0;
        foreach (var branch in point.Network.BranchesOf(part))
        {
            most = Math.Max(most, Math.Abs(point.Amps(branch)));
        }

        return most;
    }

    private static bool IsJoint(Fault fault) =>
        fault.Severity is not null && fault.Mode is FaultModes.Resistive or FaultModes.ContactResistive;
}
