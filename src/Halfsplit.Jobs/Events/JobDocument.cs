using System.Collections.Immutable;
using System.Text;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Events;

/// <summary>
/// A job in memory: its events, sorted by id. Immutable. Where it is kept (a file, a browser's store, a server) is
/// somebody else's matter.
/// </summary>
public sealed class JobDocument : IEquatable<JobDocument>
{
    /// <summary>The version of the format that this program writes.</summary>
    public const int CurrentVersion = 1;

    private JobDocument(int version, ImmutableArray<StoredEvent> events)
    {
        Version = version;
        Events = events;
    }

    public static JobDocument Empty { get; } = new(CurrentVersion, []);

    /// <summary>The version of the format it was read in; above <see cref="CurrentVersion"/> it must not be added to.</summary>
    public int Version { get; }

    /// <summary>Sorted by id.</summary>
    public ImmutableArray<StoredEvent> Events { get; }

    /// <summary>The latest id, after which the next event's must sort; null in an empty document.</summary>
    public EventId? LastId => Events.IsEmpty ? null : Events[^1].Id;

    /// <summary>Ids that stand for more than one content.</summary>
    public ImmutableArray<Message> Conflicts => JobEvents.Conflicts(Events);

    /// <summary>Reads JSON lines; never fails, but reports the lines that can't be read.</summary>
    public static JobReading Read(ReadOnlySpan<byte> utf8) => JobLines.Read(utf8);

    /// <summary>A document of these events.</summary>
    public static JobDocument Of(IEnumerable<StoredEvent> events, int version = CurrentVersion) =>
        new(version, JobEvents.Normalise([.. events]));

    /// <summary>This document with one more event.</summary>
    public JobDocument With(JobEvent happened) => With(StoredEvent.Of(happened));

    /// <summary>This document with one more event.</summary>
    public JobDocument With(StoredEvent stored) => new(Version, JobEvents.Merge(Events, [stored]));

    /// <summary>All events of both documents. See <see cref="JobEvents.Merge"/>.</summary>
    public JobDocument Merge(JobDocument other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new(Math.Max(Version, other.Version), JobEvents.Merge(Events, other.Events));
    }

    /// <summary>The whole document as a job file holds it: the head line, then a line per event.</summary>
    public byte[] ToJsonLines()
    {
        var text = new StringBuilder(JobLines.Head(Version));
        foreach (var stored in Events) text.Append(stored.Line).Append('\n');
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    public bool Equals(JobDocument? other) =>
        other is not null && Version == other.Version && Events.SequenceEqual(other.Events);

    public override bool Equals(object? obj) => Equals(obj as JobDocument);

    public override int GetHashCode() => HashCode.Combine(Version, Events.Length, LastId);
}
