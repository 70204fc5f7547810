using System.Collections.Immutable;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>
/// Wires, joints, fuses and contacts one after the other with nothing branching off: the same current flows through all
/// of it, and no reading from its ends can tell which of them resists.
/// </summary>
/// <param name="From">Terminal at its upstream end.</param>
/// <param name="To">Terminal at its other end.</param>
/// <param name="Targets">Its pieces, as faults name them.</param>
/// <param name="Branches">Indexes of its branches.</param>
public sealed record Stretch(
    string From, string To, ImmutableArray<string> Targets, ImmutableArray<int> Branches)
{
    /// <summary>A resistance more, anywhere in it; null where it has nothing that can resist.</summary>
    public Fault? WithOhms(CircuitNetwork network, double ohms)
    {
        ArgumentNullException.ThrowIfNull(network);
        foreach (var index in Branches)
        {
            var branch = network.Branches[index];
            if (branch.Target is { } target && IsJoint(branch.Use))
            {
                return new Fault(target, FaultModes.Resistive, ohms);
            }
        }

        foreach (var index in Branches)
        {
            var branch = network.Branches[index];
            if (branch is { Target: { } target, Use: BranchUse.RelayContact or BranchUse.SwitchContact })
            {
                return new Fault(target, FaultModes.ContactResistive, ohms);
            }
        }

        return null;
    }

    public bool Equals(Stretch? other) => other is not null && From == other.From && To == other.To && Branches.SequenceEqual(other.Branches);

    public override int GetHashCode() => HashCode.Combine(From, To, Branches.Length);

    internal static bool IsJoint(BranchUse use) =>
        use is BranchUse.Wire or BranchUse.Cavity or BranchUse.Socket or BranchUse.GroundPoint;

    internal static bool CarriesOn(BranchUse use) =>
        IsJoint(use) || use is BranchUse.FuseElement or BranchUse.RelayContact or BranchUse.SwitchContact;
}
