using System.Collections.Immutable;

namespace Halfsplit.Circuits.Shelf;

/// <summary>A complaint that a shipped sheet answers.</summary>
/// <param name="Sheet">The shelf's entry that it belongs to.</param>
/// <param name="Name">In a driver's words, as the sheet has it.</param>
/// <param name="Load">Plain name of the load complained of.</param>
/// <param name="Fuses">Those that carry the load's current.</param>
public sealed record ShelvedComplaint(ShelvedSheet Sheet, string Name, string Load, ImmutableArray<ShelvedFuse> Fuses);

/// <summary>A fuse of a shipped sheet.</summary>
/// <param name="Id">Its designator on the sheet.</param>
/// <param name="Amps">Its rating, as written on it.</param>
public sealed record ShelvedFuse(string Id, string Amps);
