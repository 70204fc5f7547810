namespace Halfsplit.Cli.Tests.Running;

/// <summary>A clock that stands still in UTC, so that what is printed is the same every day.</summary>
internal sealed class FixedClock : TimeProvider
{
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => new(2026, 3, 14, 9, 30, 0, TimeSpan.Zero);
}
