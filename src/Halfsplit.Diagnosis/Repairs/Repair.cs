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
/// <param name="Covers">Names of faults it takes away beside those of the target itself: a socket's terminals, a lamp's filaments, a module's outputs.</param>
/// <param name="Renews">Fuses that are replaced along with it.</param>
public sealed record Repair(
    string Id, string Target, string Action, double Minutes, ValueRange Price, ImmutableArray<string> Covers,
    ImmutableArray<string> Renews)
{
    /// <summary>Marks a target that is a relay's or fuse's socket and not the part itself.</summary>
    public const string SocketSuffix = " socket";

    /// <summary>True if this repair takes the fault away.</summary>
    public bool Cures(Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return fault.Part == Target || Covers.Contains(fault.Part);
    }

    public bool Equals(Repair? other) => other is not null && Id == other.Id && Renews.SequenceEqual(other.Renews);

    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);
}
