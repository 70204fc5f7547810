using System.Collections.Immutable;

namespace Halfsplit.Circuits.Shelf;

/// <summary>A complaint that a shipped sheet answers.</summary>
/// <param name="Sheet">The shelf's entry that it belongs to.</param>
/// <param name="Name">In a driver's words, as the sheet has it.</param>
/// <param name="Load">Plain name of the load complained of.</param>
/// <param name="Fuses">Ratings in amps of the fuses that carry the load's current.</param>
public sealed record ShelvedComplaint(ShelvedSheet Sheet, string Name, string Load, ImmutableArray<string> Fuses);
