using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Suspects;

/// <summary>Where a fault lives.</summary>
public static class FaultPlace
{
    /// <summary>The place of the part or wire that fails; null where the sheet does not say.</summary>
    public static string? Of(Circuit circuit, FaultMode mode)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(mode);
        return circuit.Find(mode.Owner)?.Notes.Place ?? circuit.Wires.FirstOrDefault(w => w.Id == mode.Owner)?.Spec.Place;
    }

    /// <summary>What the surroundings do to it; dry where the sheet does not say.</summary>
    public static PlaceEnvironment EnvironmentOf(Circuit circuit, FaultMode mode)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        return circuit.FindPlace(Of(circuit, mode))?.Environment ?? PlaceEnvironment.Dry;
    }
}
