using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Jobs.Practice;

/// <summary>Draws what is wrong: by how often such things fail, and such that the car shows the complaint.</summary>
public static class HiddenFault
{
    private const int MostTries = 4000;

    /// <summary>Amps out of a battery at rest that mean smoke; common practice, no published source.</summary>
    private const double FireAmps = 60;

    /// <summary>A fault of this car that makes the complaint; null where none could be drawn.</summary>
    public static Fault? Draw(CircuitSimulator simulator, Complaint complaint, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        ArgumentNullException.ThrowIfNull(complaint);
        ArgumentNullException.ThrowIfNull(chance);
        var modes = FaultCatalog.For(simulator);
        return Draw(
            modes, [.. modes.Select(m => FailureWeights.Of(m, FaultPlace.EnvironmentOf(simulator.Network.Circuit, m)))],
            fault => Shows(simulator, complaint, [fault]), chance);
    }

    /// <summary>A fault by given weights of the modes that is accepted; null where none could be drawn.</summary>
    public static Fault? Draw(
        IReadOnlyList<FaultMode> modes, IReadOnlyList<double> weights, Func<Fault, bool> accepts, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(modes);
        ArgumentNullException.ThrowIfNull(accepts);
        ArgumentNullException.ThrowIfNull(chance);
        for (var i = 0; i < MostTries; i++)
        {
            var mode = modes[chance.Pick(weights)];
            var fault = new Fault(mode.Part, mode.Mode, Degree(mode, chance));
            if (accepts(fault))
            {
                return fault;
            }
        }

        return null;
    }

    private static double? Degree(FaultMode mode, SeededChance chance) => mode.Severities.Length switch
    {
        0 => null,
        1 => mode.Severities[0],
        _ when mode.Unit == SeverityUnit.Ohms => chance.InDecades(mode.Severities[0], mode.Severities[^1]),
        _ => mode.Severities[0] + (chance.Next() * (mode.Severities[^1] - mode.Severities[0])),
    };

    /// <summary>True if a car with these faults makes the complaint and still waits for a meter.</summary>
    public static bool Shows(CircuitSimulator simulator, Complaint complaint, IReadOnlyList<Fault> faults)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        ArgumentNullException.ThrowIfNull(complaint);
        ArgumentNullException.ThrowIfNull(faults);
        var point = simulator.Simulate(new Arrangement(complaint.Condition), faults);
        var battery = simulator.Network.Circuit.Battery;
        // A short with no fuse before it is a burning car, not one that waits for a meter.
        return point.IsSteady
            && point.Load(complaint.Load).Condition == complaint.Is
            && (faults.All(f => f.Mode != FaultModes.ShortToGround) || point.Volts(new(battery.Id, "pos")) > 0.7 * battery.NominalVolts)
            && !IsOnFire(simulator, faults);
    }

    private static bool IsOnFire(CircuitSimulator simulator, IReadOnlyList<Fault> faults) =>
        faults.Any(f => f.Mode is FaultModes.ShortToGround or FaultModes.ShortToFeed)
        && simulator.Simulate(new Arrangement(CheckCatalog.RestCondition(simulator.Network.Circuit)), faults).BatteryAmps > FireAmps;
}
