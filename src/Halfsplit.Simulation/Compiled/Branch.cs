namespace Halfsplit.Simulation.Compiled;

/// <summary>What a branch of the network is in the car.</summary>
public enum BranchUse
{
    Wire,
    Cavity,
    Socket,
    GroundPoint,
    FuseElement,
    SwitchContact,
    Coil,
    Suppression,
    RelayContact,
    Winding,
    Filament,
    Element,
    Junction,
    ModuleInside,
    ModuleOutput,
    ModuleInput,
    Source,
    Attachment,
}

/// <summary>A two-terminal piece of the network that belongs to a part or a wire.</summary>
/// <param name="From">Node; −1 is the reference.</param>
/// <param name="To">Node; −1 is the reference.</param>
/// <param name="Owner">Part or wire it belongs to.</param>
/// <param name="Target">The name a fault uses for it: <c>C3.4</c>, <c>K2.30</c>, the wire's id; null where only the part is named.</param>
/// <param name="Ohms">Healthy resistance in ohms.</param>
/// <param name="Tolerance">Spread of its natural logarithm from car to car.</param>
public sealed record NetworkBranch(
    int From, int To, BranchUse Use, string Owner, string? Target, double Ohms, double Tolerance);
