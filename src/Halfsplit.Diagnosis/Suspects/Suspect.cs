using System.Collections.Immutable;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Suspects;

/// <summary>A part and a way it can fail, two of those at once, or "none of these".</summary>
/// <param name="Id">"G2 resistive", "K1 coil open", "M1 open + C3.4 resistive", "none of these".</param>
/// <param name="Modes">The fault modes that make it: one, two, or none.</param>
public sealed record Suspect(string Id, ImmutableArray<FaultMode> Modes)
{
    public const string NoneId = "none of these";

    public static Suspect None { get; } = new(NoneId, []);

    public static Suspect Of(FaultMode mode)
    {
        ArgumentNullException.ThrowIfNull(mode);
        return new Suspect(mode.Id, [mode]);
    }

    public static Suspect Of(FaultMode first, FaultMode second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return new Suspect($"{first.Id} + {second.Id}", [first, second]);
    }

    public bool IsNone => Modes.Length == 0;

    public bool Equals(Suspect? other) => other is not null && Id == other.Id;

    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);
}

/// <summary>A suspect in one degree of severity and one draw of the thresholds: a car that can be simulated.</summary>
/// <param name="Index">Position among all hypotheses; stable within an investigation.</param>
/// <param name="Suspect">Index of the suspect.</param>
/// <param name="Faults">What is wrong; empty for "none of these".</param>
/// <param name="ThresholdFactor">Multiplies relay, motor and fuse thresholds.</param>
/// <param name="LogPrior">Natural logarithm of its weight before any reading, the complaint and what was noticed included.</param>
/// <param name="Severity">How its readings move within its cell of severity; null where it has no degree.</param>
public sealed record Hypothesis(
    int Index, int Suspect, ImmutableArray<Fault> Faults, double ThresholdFactor, double LogPrior, SeverityCell? Severity)
{
    /// <summary>The same of the other of two faults; null where there is no other, or it has no degree.</summary>
    public SeverityCell? Beside { get; init; }

    public bool IsNone => Faults.Length == 0 && Suspect >= 0;
}

/// <summary>The severity as an unknown inside its cell: which branches' ohms it moves together.</summary>
/// <param name="Of">The fault whose severity it is.</param>
/// <param name="Branches">Index of each branch, with one standard deviation of the natural logarithm of its ohms; at least one.</param>
public sealed record SeverityCell(Fault Of, ImmutableArray<(int Index, double LogSpread)> Branches)
{
    public override string ToString() => string.Join(' ', Branches.Select(b => $"{b.Index}~{b.LogSpread:R}"));
}
