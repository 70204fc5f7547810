namespace Halfsplit.Jobs.Events;

/// <summary>Something was noticed without measuring: evidence before the first reading, whenever it is told.</summary>
/// <param name="Name">What, such as <c>no-sound</c>.</param>
public sealed record ThingNoticed(EventId Id, DateTimeOffset At, string Name) : JobEvent(Id, At)
{
    /// <summary>The part, place or output it is about; null where it is about none.</summary>
    public string? About { get; init; }
}
