using System.Text;
using CsCheck;
using Halfsplit.Jobs.Events;
using Xunit;

namespace Halfsplit.Jobs.Tests.Events;

public class JobLinesTests
{
    private static readonly Gen<StoredEvent[]> SomeEvents =
        AnyEvent.Stored.Array[1, 5].Select(events => events.DistinctBy(stored => stored.Id).ToArray());

    [Fact]
    public void Any_bytes_are_read_without_a_crash() => Gen.Byte.Array[0, 400].Sample(bytes =>
    {
        var reading = JobDocument.Read(bytes);
        Assert.True(reading.Document.Events.Length + reading.Damaged.Length <= bytes.Length);
        JobReplay.Replay(reading.Document);
    });

    [Fact]
    public void Any_near_json_is_read_without_a_crash() =>
        Gen.Select(SomeEvents, Gen.Int, Gen.Char["{}[]\":,\\u\nd8\0eE9-\u00ff"].Select(character => (byte)character).Array[1, 8])
            .Sample((events, place, junk) =>
            {
                var bytes = JobDocument.Of(events).ToJsonLines();
                var at = (int)((uint)place % bytes.Length);
                foreach (var one in junk)
                {
                    bytes[at] = one;
                    at = ((at * 7) + one) % bytes.Length;
                }

                JobReplay.Replay(JobDocument.Read(bytes).Document);
            });

    [Fact]
    public void A_file_cut_anywhere_keeps_every_whole_line() =>
        Gen.Select(SomeEvents, Gen.Int).Sample((events, place) =>
        {
            var document = JobDocument.Of(events);
            var whole = document.ToJsonLines();
            var cut = whole.AsSpan(0, (int)((uint)place % (whole.Length + 1)));
            var ends = cut.Count((byte)'\n');
            var reading = JobDocument.Read(cut);
            var kept = document.Events.Take(Math.Max(0, ends - 1)).ToArray();
            Assert.Equal(kept, reading.Document.Events.Take(kept.Length));
            // What follows the last line's end is an event only if it is a whole one that lacks its end.
            Assert.True(reading.Document.Events.Length <= ends);
            var tail = cut[(cut.LastIndexOf((byte)'\n') + 1)..];
            Assert.Equal(!tail.IsEmpty, reading.EndsInsideLine);
            if (reading.Damaged.Length > 0) Assert.Equal(ends + 1, Assert.Single(reading.Damaged).Number);
            if (reading.Damaged.Length > 0) Assert.True(reading.Damaged[0].CutShort);
        });

    [Fact]
    public void Damage_to_one_line_leaves_the_others() =>
        Gen.Select(SomeEvents, Gen.Int, Gen.Byte.Where(one => one != '\n').Array[0, 60]).Sample((events, place, junk) =>
        {
            var document = JobDocument.Of(events);
            var lines = Encoding.UTF8.GetString(document.ToJsonLines()).TrimEnd('\n').Split('\n').Select(Encoding.UTF8.GetBytes).ToArray();
            var hit = 1 + (int)((uint)place % document.Events.Length);
            lines[hit] = [(byte)'#', .. junk];
            var reading = JobDocument.Read([.. lines.SelectMany(line => (byte[])[.. line, (byte)'\n'])]);
            Assert.Equal(document.Events.Where((_, at) => at != hit - 1), reading.Document.Events);
            var damaged = Assert.Single(reading.Damaged);
            Assert.Equal(hit + 1, damaged.Number);
            Assert.Equal("job.line-damaged", damaged.Message.Code);
        });

    [Fact]
    public void Editors_marks_and_line_ends_do_no_harm()
    {
        var document = JobDocument.Of([StoredEvent.Of(new NoteWritten(new EventId(7), default, "x"))]);
        var text = "\uFEFF" + Encoding.UTF8.GetString(document.ToJsonLines()).Replace("\n", "\r\n\r\n", StringComparison.Ordinal);
        var reading = JobDocument.Read(Encoding.UTF8.GetBytes(text));
        Assert.Equal(document, reading.Document);
        Assert.Empty(reading.Damaged);
    }

    [Theory]
    [InlineData("")]
    [InlineData("sheet: 1\ntitle: Pump feed\n")]
    [InlineData("{\"format\":\"other\",\"version\":1}\n")]
    public void What_is_no_job_is_told(string text) => Assert.False(JobDocument.Read(Encoding.UTF8.GetBytes(text)).IsJob);

    [Fact]
    public void A_newer_version_is_seen()
    {
        var reading = JobDocument.Read("{\"format\":\"halfsplit-job\",\"version\":7,\"more\":1}\n"u8);
        Assert.Equal(7, reading.Document.Version);
        Assert.Empty(reading.Damaged);
    }
}
