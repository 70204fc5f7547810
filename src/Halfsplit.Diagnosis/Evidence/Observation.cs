using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>A check that was done, its outcome, and what had been repaired before it.</summary>
/// <param name="Id">Name of the reading in the job; withdrawals use it.</param>
public sealed record Observation(string Id, Check Check, ReadingValue Value, ImmutableArray<Repair> RepairsBefore)
{
    /// <summary>The load did its work at the time: a fault that comes and goes was away.</summary>
    public bool IsFaultAway { get; init; }
}
