using CsCheck;
using Halfsplit.Jobs.Events;
using Xunit;

namespace Halfsplit.Jobs.Tests.Events;

public class EventIdTests
{
    [Fact]
    public void The_text_form_is_that_of_the_open_description()
    {
        // The example of the ULID description: 1469918176385 ms is written 01ARYZ6S41.
        var id = new EventId((UInt128)1469918176385 << 80);
        Assert.Equal("01ARYZ6S410000000000000000", id.ToString());
        Assert.Equal(1469918176385, id.Milliseconds);
        Assert.Equal("7ZZZZZZZZZZZZZZZZZZZZZZZZZ", new EventId(UInt128.MaxValue).ToString());
    }

    [Fact]
    public void Text_sorts_as_the_ids_do_and_reads_back() =>
        Gen.Select(AnyEvent.Id, AnyEvent.Id).Sample((left, right) =>
        {
            Assert.True(EventId.TryParse(left.ToString(), out var read));
            Assert.Equal(left, read);
            Assert.True(EventId.TryParse(left.ToString().ToLowerInvariant(), out read));
            Assert.Equal(left, read);
            Assert.Equal(
                Math.Sign(left.CompareTo(right)),
                Math.Sign(string.CompareOrdinal(left.ToString(), right.ToString())));
        });

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("01ARYZ6S41000000000000000")]
    [InlineData("01ARYZ6S4100000000000000000")]
    [InlineData("81ARYZ6S410000000000000000")]
    [InlineData("01ARYZ6S41000000000000000U")]
    [InlineData("01ARYZ6S41000000000000000ı")]
    public void Other_texts_are_no_id(string? text) => Assert.False(EventId.TryParse(text, out _));

    [Fact]
    public void Ids_rise_within_a_millisecond_and_when_the_clock_goes_back()
    {
        var clock = new SetClock { Now = DateTimeOffset.FromUnixTimeMilliseconds(1_800_000_000_000) };
        var source = new EventIdSource(clock);
        var last = source.Next();
        Assert.Equal(1_800_000_000_000, last.Milliseconds);
        for (var i = 0; i < 2000; i++)
        {
            if (i == 1000) clock.Now -= TimeSpan.FromDays(1);
            var next = source.Next();
            Assert.True(next > last);
            last = next;
        }

        clock.Now += TimeSpan.FromDays(2);
        Assert.Equal(clock.Now.ToUnixTimeMilliseconds(), source.Next().Milliseconds);
    }

    [Fact]
    public void An_id_sorts_after_what_a_device_with_a_fast_clock_wrote()
    {
        var slow = new SetClock { Now = DateTimeOffset.FromUnixTimeMilliseconds(1_800_000_000_000) };
        var ahead = new EventId(((UInt128)1_800_000_500_000 << 80) | 77);
        var one = new EventIdSource(slow).Next(ahead);
        var other = new EventIdSource(slow).Next(ahead);
        Assert.True(one > ahead && other > ahead);
        Assert.NotEqual(one, other);
    }

    [Fact]
    public void Several_threads_and_sources_never_make_the_same_id()
    {
        EventIdSource[] sources = [EventIdSource.Shared, EventIdSource.Shared, new(TimeProvider.System), new(TimeProvider.System)];
        var made = new EventId[sources.Length][];
        Parallel.For(0, sources.Length, at => made[at] = [.. Enumerable.Range(0, 20_000).Select(_ => sources[at].Next())]);
        Assert.Equal(80_000, made.SelectMany(ids => ids).Distinct().Count());
        foreach (var ids in made) Assert.Equal(ids.Order(), ids);
    }

    [Fact]
    public void The_end_of_time_stops_nobody() =>
        Assert.NotEqual(default, new EventIdSource(TimeProvider.System).Next(new EventId(UInt128.MaxValue)));

    private sealed class SetClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; }

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
