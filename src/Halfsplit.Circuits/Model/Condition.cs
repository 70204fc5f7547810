using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>What the car is doing: key off, priming, key on, cranking, running.</summary>
/// <param name="Name">As shown to the person.</param>
/// <param name="Settings">What is set: switch positions ("IGN" → "on") and module outputs ("ECU.pump-drive" → "low").</param>
/// <param name="After">The condition the car passes through before this one; null: from everything at rest.</param>
/// <param name="LastsSeconds">Seconds until the car leaves this condition by itself; null: as long as one likes.</param>
/// <param name="StarterAmps">Amps drawn at the battery by a starter that is not a part of the sheet.</param>
/// <param name="AlternatorVolts">Volts held at the battery's posts by an alternator that is not a part of the sheet.</param>
/// <param name="Needs">Loads without which the car cannot be in this condition: an engine does not run without its pump.</param>
/// <param name="EngineTurns">True when the engine turns under its own power (alternators generate).</param>
/// <param name="TakesMinutes">Minutes until the car is so, once for a job: an engine that is warm stays warm; 0: at once.</param>
public sealed record Condition(
    string Name,
    ImmutableSortedDictionary<string, string> Settings,
    string? After = null,
    double? LastsSeconds = null,
    double? StarterAmps = null,
    double? AlternatorVolts = null,
    bool EngineTurns = false,
    ImmutableArray<string> Needs = default,
    double TakesMinutes = 0)
{
    /// <summary>Loads without which the car cannot be in this condition; empty, never default.</summary>
    public ImmutableArray<string> Needs { get; init; } = Needs.IsDefault ? [] : Needs;

    /// <summary>False where this load is needed and does nothing.</summary>
    public bool IsPossibleWithout(string load) => !Needs.Contains(load);

    /// <summary>Nobody can hold this condition while walking round the car: cranking, or one that ends by itself.</summary>
    public bool NeedsHelper => StarterAmps is not null || LastsSeconds is not null;
}
