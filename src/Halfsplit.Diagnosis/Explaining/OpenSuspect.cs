using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>A suspect that the readings leave alive beside the one that is blamed.</summary>
/// <param name="PartedBy">The cheapest check that would tell it from the blamed one; null where none would.</param>
/// <param name="Effort">What that check takes from where the car stands.</param>
/// <param name="Lacks">What is not at hand for it: a place, a tool, a lead; empty where it can be done now.</param>
public sealed record OpenSuspect(SuspectOdds Rival, Check? PartedBy, Effort? Effort, ImmutableArray<Message> Lacks)
{
    /// <summary>No check that can be reached tells it from the blamed one.</summary>
    public bool IsOutOfReach => PartedBy is null || Lacks.Length > 0;
}
