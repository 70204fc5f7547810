using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Sessions;

/// <summary>What came of something the person did.</summary>
public abstract record SessionOutcome
{
    private SessionOutcome()
    {
    }

    /// <summary>The events are kept.</summary>
    /// <param name="Events">In order; the last may be the closing of the job.</param>
    public sealed record Kept(ImmutableArray<JobEvent> Events) : SessionOutcome;

    /// <summary>The reading is doubtful: nothing is kept until the person confirms it or types another one.</summary>
    public sealed record Asked(ReadingParse.Question Question) : SessionOutcome;

    /// <summary>A result of the bench does not fit what the job has read: nothing is kept until the person stands by it.</summary>
    /// <param name="Message">Which reading, what it was, and what the result says.</param>
    public sealed record Doubted(Message Message) : SessionOutcome;

    /// <summary>The text is no answer to the check; nothing is kept.</summary>
    public sealed record Refused(Message Message) : SessionOutcome;

    /// <summary>It does not fit where the job stands; nothing is kept.</summary>
    public sealed record Misplaced(Message Message) : SessionOutcome;

    /// <summary>The store did not keep it.</summary>
    public sealed record NotKept(Message Message) : SessionOutcome;
}
