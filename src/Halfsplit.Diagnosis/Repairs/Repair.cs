using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Repairs;

/// <summary>Something that can be mended or replaced.</summary>
/// <param name="Id">"replace M1", "clean G2", "mend C3.4".</param>
/// <param name="Target">Part, wire, cavity or socket it works on.</param>
/// <param name="Action">Key of the action's text: replace, mend-wire, mend-contact, clean-ground, latch …</param>
/// <param name="Minutes">Working time without access.</param>
/// <param name="Price">Price range of what it needs.</param>
/// <param name="Renews">Fuses that are replaced along with it.</param>
public sealed record Repair(
    string Id, string Target, string Action, double Minutes, ValueRange Price, ImmutableArray<string> Renews)
{
    /// <summary>Marks a target that is a relay's or fuse's socket and not the part itself.</summary>
    public const string SocketSuffix = " socket";

    /// <summary>True if this repair takes the fault away.</summary>
    public bool Cures(Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        // Replacing a part mends all its own faults; a joint's name ("C3.4", "K2.30") is its own target,
        // but a module's outputs ("ECU.pump-drive") belong to the module.
        return fault.Part == Target
            || (Action is "examine-module" && IsInside(fault))
            || (Target.EndsWith(SocketSuffix, StringComparison.Ordinal) && IsInSocket(fault));
    }

    private bool IsInside(Fault fault) =>
        fault.Part.StartsWith(Target + ".", StringComparison.Ordinal)
        && fault.Mode is FaultModes.OutputOff or FaultModes.OutputOn or FaultModes.NotCommanded;

    private bool IsInSocket(Fault fault) =>
        fault.Part.StartsWith(Target[..^SocketSuffix.Length] + ".", StringComparison.Ordinal)
        && fault.Mode is FaultModes.Open or FaultModes.Resistive;

    public bool Equals(Repair? other) => other is not null && Id == other.Id && Renews.SequenceEqual(other.Renews);

    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);
}
