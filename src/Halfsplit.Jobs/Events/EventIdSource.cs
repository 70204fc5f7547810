using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Halfsplit.Jobs.Events;

/// <summary>
/// Makes event ids that rise with every call, whatever the clock does, and that no other source makes. Safe to use
/// from several threads.
/// </summary>
public sealed class EventIdSource
{
    private readonly Lock gate = new();
    private readonly TimeProvider clock;
    private EventId last;

    public EventIdSource(TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        this.clock = clock;
    }

    /// <summary>The one source of this process, on the machine's clock.</summary>
    public static EventIdSource Shared { get; } = new(TimeProvider.System);

    /// <summary>
    /// The next id: above every id this source made, and above <paramref name="after"/>, so that an event sorts
    /// behind those it was written after even where another device's clock was ahead.
    /// </summary>
    public EventId Next(EventId? after = null)
    {
        lock (gate)
        {
            var now = Math.Clamp(clock.GetUtcNow().ToUnixTimeMilliseconds(), 0, EventId.LargestMilliseconds);
            // Counting on within the millisecond keeps the order; the start of the count was random.
            var id = now > last.Milliseconds || last == default ? Fresh(now) : new EventId(last.Value + 1);
            if (after is { } earlier && id <= earlier && earlier.Milliseconds < EventId.LargestMilliseconds)
            {
                // Not earlier + 1: two devices that know the same last event would make the same id.
                id = Fresh(earlier.Milliseconds + 1);
            }

            last = id;
            return id;
        }
    }

    private static EventId Fresh(long milliseconds)
    {
        Span<byte> random = stackalloc byte[16];
        RandomNumberGenerator.Fill(random[6..]);
        random[..6].Clear();
        // The top random bit stays free, so that counting on never carries into the time.
        random[6] &= 0x7f;
        return new EventId(((UInt128)milliseconds << 80) | BinaryPrimitives.ReadUInt128BigEndian(random));
    }
}
