using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using EventId = Halfsplit.Jobs.Events.EventId;

namespace Halfsplit.App.Desk;

/// <summary>
/// Collects the events of one request. The browser's store answers only later, so the events are handed on with the
/// reply, and the reply is shown when they are kept; if they can't be kept, the session is thrown away and replayed.
/// </summary>
internal sealed class StagedStore : IJobStore
{
    private readonly List<JobEvent> _staged = [];

    private EventId? _after;

    public Message? Append(JobEvent happened, EventId? after)
    {
        if (_staged.Count == 0)
        {
            _after = after;
        }

        _staged.Add(happened);
        return null;
    }

    /// <summary>What has come in since the last time; null for nothing.</summary>
    public KeepOrder? Take(EventId job)
    {
        if (_staged.Count == 0)
        {
            return null;
        }

        var order = Order(job, _after, [.. _staged]);
        _staged.Clear();
        return order;
    }

    public static KeepOrder Order(EventId job, EventId? after, ImmutableArray<JobEvent> events) => new(
        job.ToString(), after?.ToString(),
        [.. events.Select(StoredEvent.Of).Select(s => new KeptLine(s.Id.ToString(), s.Line))]);
}
