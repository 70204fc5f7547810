using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Sessions;

/// <summary>Names and dates new events.</summary>
/// <param name="ids">Makes the ids.</param>
/// <param name="clock">The time of the writer.</param>
public sealed class EventStamps(EventIdSource ids, TimeProvider clock)
{
    /// <summary>On the machine's clock.</summary>
    public static EventStamps OfThisMachine { get; } = new(EventIdSource.Shared, TimeProvider.System);

    /// <summary>An id behind <paramref name="after"/>, and the time now.</summary>
    public (EventId Id, DateTimeOffset At) Next(EventId? after) => (ids.Next(after), clock.GetLocalNow());
}
