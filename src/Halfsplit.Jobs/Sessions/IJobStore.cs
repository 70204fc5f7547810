using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Sessions;

/// <summary>Where a session keeps what happens. The terminal has files, a browser its own store.</summary>
public interface IJobStore
{
    /// <summary>Keeps an event for good before it returns.</summary>
    /// <param name="happened">The event.</param>
    /// <param name="after">The last event the writer knows: if the store has later ones, nothing is kept.</param>
    /// <returns>Null when it is kept; else why it is not.</returns>
    Message? Append(JobEvent happened, EventId? after);
}

/// <summary>Keeps nothing: for a job that lives only as long as the program, or one that is only looked at.</summary>
public sealed class NothingKept : IJobStore
{
    public static NothingKept Instance { get; } = new();

    public Message? Append(JobEvent happened, EventId? after) => null;
}
