using System.Collections.Immutable;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Noticing;

/// <summary>One car as people come to know it: with everything in place, settled in each condition when it is asked for.</summary>
/// <param name="simulator">Simulates the car.</param>
/// <param name="modes">The ways it has failed; empty for the healthy car.</param>
/// <param name="faults">The same in their degrees.</param>
/// <param name="thresholdFactor">Multiplies its thresholds.</param>
internal sealed class CarSeen(
    CircuitSimulator simulator, ImmutableArray<FaultMode> modes, ImmutableArray<Fault> faults, double thresholdFactor)
{
    private readonly Dictionary<string, OperatingPoint> _points = new(StringComparer.Ordinal);

    public ImmutableArray<FaultMode> Modes => modes;

    public OperatingPoint In(string condition)
    {
        if (!_points.TryGetValue(condition, out var point))
        {
            _points[condition] = point =
                simulator.Simulate(new Arrangement(condition), faults, new SimulationOptions(thresholdFactor));
        }

        return point;
    }

    /// <summary>True if this part has one of these faults.</summary>
    public bool Has(string part, params ReadOnlySpan<string> named)
    {
        foreach (var mode in modes)
        {
            if (mode.Part == part && named.Contains(mode.Mode))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>How bad one of its faults is, in the unit of its mode; null for one without a degree.</summary>
    public double? SeverityOf(FaultMode mode)
    {
        foreach (var fault in faults)
        {
            if (fault.Part == mode.Part && fault.Mode == mode.Mode)
            {
                return fault.Severity;
            }
        }

        return null;
    }

    /// <summary>The largest value of any of its faults; 0 for the healthy car.</summary>
    public double Most(Func<FaultMode, double> value)
    {
        var most = 0.0;
        foreach (var mode in modes)
        {
            most = Math.Max(most, value(mode));
        }

        return most;
    }
}
