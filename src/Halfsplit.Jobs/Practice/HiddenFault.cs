using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Jobs.Practice;

/// <summary>Draws what is wrong: by how often such things fail, and such that the car shows the complaint.</summary>
public static class HiddenFault
{
    private const int MostTries = 4000;

    /// <summary>A fault of this car that makes the complaint; null where none could be drawn.</summary>
    public static Fault? Draw(CircuitSimulator simulator, Complaint complaint, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        ArgumentNullException.ThrowIfNull(complaint);
        ArgumentNullException.ThrowIfNull(chance);
        var modes = FaultCatalog.For(simulator);
        var weights = modes.Select(m => FailureWeights.Of(m, EnvironmentOf(simulator.Network.Circuit, m))).ToList();
        for (var i = 0; i < MostTries; i++)
        {
            var mode = modes[chance.Pick(weights)];
            var fault = new Fault(mode.Part, mode.Mode, Degree(mode, chance));
            if (Shows(simulator, complaint, fault))
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

    private static bool Shows(CircuitSimulator simulator, Complaint complaint, Fault fault)
    {
        var point = simulator.Simulate(new Arrangement(complaint.Condition), [fault]);
        var battery = simulator.Network.Circuit.Battery;
        // A short with no fuse before it is a burning car, not one that waits for a meter.
        return point.IsSteady
            && point.Load(complaint.Load).Condition == complaint.Is
            && (fault.Mode != FaultModes.ShortToGround || point.Volts(new(battery.Id, "pos")) > 0.7 * battery.NominalVolts);
    }

    private static PlaceEnvironment EnvironmentOf(Circuit circuit, FaultMode mode)
    {
        var place = circuit.Find(mode.Owner)?.Notes.Place
            ?? circuit.Wires.FirstOrDefault(w => w.Id == mode.Owner)?.Spec.Place;
        return circuit.FindPlace(place)?.Environment ?? PlaceEnvironment.Dry;
    }
}
