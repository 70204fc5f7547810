using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Sessions;

/// <summary>A reading, proof, repair, skip or putting back that counts.</summary>
/// <param name="Number">Counted from 1 in the order in which they were done.</param>
/// <param name="Event">What the job holds.</param>
/// <param name="Check">The check it answers; null for a place given up.</param>
/// <param name="Value">The outcome; null where it was skipped.</param>
/// <param name="From">How the car and the meter stood before.</param>
/// <param name="Minutes">The minutes it takes from there by the engine's table; 0 where it was skipped.</param>
public sealed record SessionEntry(
    int Number, JobEvent Event, Check? Check, ReadingValue? Value, Position From, double Minutes);
