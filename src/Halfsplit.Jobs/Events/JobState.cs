using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Events;

/// <summary>Where a job stands: what its events amount to when withdrawn ones no longer count.</summary>
public sealed record JobState
{
    /// <summary>How it began; null where that event is missing, and then the job can't be worked on.</summary>
    public JobOpened? Opened { get; init; }

    /// <summary>Every known event that counts, in order, withdrawals left out.</summary>
    public required ImmutableArray<JobEvent> InForce { get; init; }

    /// <summary>The ids of events that were taken back.</summary>
    public required ImmutableHashSet<EventId> Withdrawn { get; init; }

    /// <summary>Events of a newer program, which this one keeps but can't weigh.</summary>
    public required ImmutableArray<UnknownEvent> Unknown { get; init; }

    /// <summary>What is odd about this job; does not stop the work.</summary>
    public required ImmutableArray<Message> Problems { get; init; }

    public IEnumerable<ReadingTaken> Readings => InForce.OfType<ReadingTaken>();

    public IEnumerable<CheckSkipped> Skips => InForce.OfType<CheckSkipped>();

    public IEnumerable<ThingNoticed> Noticed => InForce.OfType<ThingNoticed>();

    public IEnumerable<PartFound> Found => InForce.OfType<PartFound>();

    public IEnumerable<NoteWritten> Notes => InForce.OfType<NoteWritten>();

    public IEnumerable<RepairDone> Repairs => InForce.OfType<RepairDone>();

    public IEnumerable<ProofTaken> Proofs => InForce.OfType<ProofTaken>();

    public IEnumerable<PutBackDone> PutBacks => InForce.OfType<PutBackDone>();

    /// <summary>The car as it was described last; empty where it never was.</summary>
    public string Vehicle => Told(d => d.Vehicle) ?? Opened?.VehicleNotes ?? "";

    /// <summary>Who the report is for; null where nobody was named.</summary>
    public string? Owner => Told(d => d.Owner);

    /// <summary>Who did the work; null where nobody was named.</summary>
    public string? Worker => Told(d => d.Worker);

    public HandedOver? HandedOver => InForce.OfType<HandedOver>().LastOrDefault();

    public JobClosed? Closed => InForce.OfType<JobClosed>().LastOrDefault();

    /// <summary>Whether nothing more is to be done: closed, and not opened again by withdrawing that.</summary>
    public bool IsClosed => Closed is not null;

    /// <summary>What "take back" takes back: the last reading, proof, skip, repair or putting back in force.</summary>
    public JobEvent? LastToWithdraw =>
        InForce.LastOrDefault(happened => happened is ReadingTaken or ProofTaken or CheckSkipped or RepairDone or PutBackDone);

    private string? Told(Func<JobDescribed, string?> field) =>
        InForce.OfType<JobDescribed>().Select(field).LastOrDefault(told => told is not null);
}
