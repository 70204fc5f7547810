using System.Collections.Immutable;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>An answer that a check may get, and what it would leave.</summary>
/// <param name="Typical">A typical answer of this kind.</param>
/// <param name="Low">For numbers: where this outcome begins; null without a limit, or for words.</param>
/// <param name="High">For numbers: where it ends; null without a limit, or for words.</param>
/// <param name="Odds">How likely it is now.</param>
/// <param name="Leaves">The likeliest suspects after it, with their odds then.</param>
public sealed record ForeseenOutcome(
    ReadingValue Typical, double? Low, double? High, double Odds, ImmutableArray<(Suspect Suspect, double Odds)> Leaves);
