using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Events;

/// <summary>One thing that happened in a job. Events are never changed, only added.</summary>
/// <param name="Id">Never two alike; sorts by time.</param>
/// <param name="At">When it happened by the writer's clock, with the offset from UTC that held there.</param>
public abstract record JobEvent(EventId Id, DateTimeOffset At)
{
    /// <summary>Who or which device wrote it, if known.</summary>
    public string? By { get; init; }
}

/// <summary>Takes back an earlier event. A withdrawal can itself be withdrawn.</summary>
/// <param name="Withdraws">The id of the reading, proof, skip, repair or other event that no longer counts.</param>
public sealed record ReadingWithdrawn(EventId Id, DateTimeOffset At, EventId Withdraws) : JobEvent(Id, At)
{
    public string? Reason { get; init; }
}

/// <summary>Why a check was not done.</summary>
public enum SkipReason
{
    CannotReach,
    NotSure,
    NoTool,
}

/// <summary>A check, or everything at a place, is set aside. At least one of the two is given.</summary>
public sealed record CheckSkipped(EventId Id, DateTimeOffset At, SkipReason Reason) : JobEvent(Id, At)
{
    public string? Check { get; init; }

    public string? Place { get; init; }

    public string? Text { get; init; }
}

/// <summary>Something worth remembering that is no reading.</summary>
public sealed record NoteWritten(EventId Id, DateTimeOffset At, string Text) : JobEvent(Id, At);

/// <summary>Something was mended or replaced.</summary>
/// <param name="Suspect">The suspect it is meant to cure, such as <c>G2 resistive</c>.</param>
/// <param name="Repair">The repair's id.</param>
public sealed record RepairDone(EventId Id, DateTimeOffset At, string Suspect, string Repair) : JobEvent(Id, At)
{
    /// <summary>Minutes of work it took, if told; not negative.</summary>
    public double? Minutes { get; init; }

    /// <summary>What the parts cost, if told, in <see cref="Currency"/>.</summary>
    public decimal? Price { get; init; }

    /// <summary>ISO 4217 code, if told.</summary>
    public string? Currency { get; init; }

    public string? Text { get; init; }
}

/// <summary>Everything that the job has opened, pulled, unplugged and bridged is back in place.</summary>
public sealed record PutBackDone(EventId Id, DateTimeOffset At) : JobEvent(Id, At)
{
    /// <summary>What was on the list, by the names of <see cref="Diagnosis.Planning.PutBackItem.Id"/>.</summary>
    public ValueList<string> Items { get; init; }

    /// <summary>Minutes by the table of times, as the list had them; not negative.</summary>
    public double? Minutes { get; init; }
}

/// <summary>The job goes to somebody else, such as a workshop.</summary>
public sealed record HandedOver(EventId Id, DateTimeOffset At) : JobEvent(Id, At)
{
    public string? To { get; init; }

    public string? Text { get; init; }
}

/// <summary>How a job ended.</summary>
public enum JobOutcome
{
    Proven,
    HandedOver,
    GivenUp,
}

/// <summary>Nothing more is to be done.</summary>
public sealed record JobClosed(EventId Id, DateTimeOffset At, JobOutcome Outcome) : JobEvent(Id, At)
{
    public string? Text { get; init; }
}

/// <summary>
/// An event that this version of the program does not know or can't read in full. It is kept and merged as it is.
/// </summary>
/// <param name="Kind">The kind as written.</param>
/// <param name="Problem">What could not be read, where the kind is known; null for an unknown kind.</param>
public sealed record UnknownEvent(EventId Id, DateTimeOffset At, string Kind, Message? Problem) : JobEvent(Id, At);
