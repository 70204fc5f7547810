namespace Halfsplit.Jobs.Events;

/// <summary>
/// What a report says of the car and the people. Everything is optional; what is told later stands in the place of what was
/// told before, and what is not told stays.
/// </summary>
public sealed record JobDescribed(EventId Id, DateTimeOffset At) : JobEvent(Id, At)
{
    /// <summary>The car, as its owner would know it: in the place of <see cref="JobOpened.VehicleNotes"/>.</summary>
    public string? Vehicle { get; init; }

    /// <summary>Who the report is for.</summary>
    public string? Owner { get; init; }

    /// <summary>Who did the work.</summary>
    public string? Worker { get; init; }
}
