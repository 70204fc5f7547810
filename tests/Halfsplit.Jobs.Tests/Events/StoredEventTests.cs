using CsCheck;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Xunit;

namespace Halfsplit.Jobs.Tests.Events;

public class StoredEventTests
{
    [Fact]
    public void Every_event_reads_back_equal_and_stands_on_one_line() => AnyEvent.Any.Sample(happened =>
    {
        var line = StoredEvent.Of(happened).Line;
        Assert.DoesNotContain('\n', line);
        Assert.DoesNotContain('\r', line);
        var read = StoredEvent.Read(line)!;
        Assert.Equal(happened, read.Event);
        Assert.True(happened.At.EqualsExact(read.Event.At));
        Assert.Equal(line, StoredEvent.Of(read.Event).Line);
    });

    [Fact]
    public void A_line_looks_as_the_open_format_says()
    {
        Assert.True(EventId.TryParse("01ARYZ6S410000000000000000", out var id));
        var reading = new ReadingTaken(
            id,
            new DateTimeOffset(2026, 3, 4, 15, 6, 7, TimeSpan.FromHours(1)),
            new Observation(
                "volts:C3.4:priming",
                "reading",
                new ArrangementUsed("priming") { Unplugged = ["C3"], Jumpers = [new("K2.30", "K2.87")], Opened = ["boot floor"] },
                "volts",
                "0,3 V",
                new ReadingParse.Number(0.3, Quantity.Volts, 0.1))
            {
                Red = "C3.4",
                Black = "BAT.neg",
                Meter = new MeterUsed(1e7, 0.01, "0.5 % + 2", 0.2),
            });
        Assert.Equal(
            """{"event":"reading-taken","id":"01ARYZ6S410000000000000000","at":"2026-03-04T15:06:07.0000000+01:00","check":"volts:C3.4:priming","kind":"reading","arrangement":{"condition":"priming","unplugged":["C3"],"removed":[],"jumpers":[["K2.30","K2.87"]],"opened":["boot floor"]},"instrument":"volts","red":"C3.4","black":"BAT.neg","meter":{"inputOhms":10000000,"resolution":0.01,"accuracy":"0.5 % + 2","leadOhms":0.2},"typed":"0,3 V","value":{"number":0.3,"quantity":"volts","resolution":0.1}}""",
            StoredEvent.Of(reading).Line);
    }

    [Fact]
    public void Half_a_surrogate_pair_is_replaced_and_does_no_harm()
    {
        var stored = StoredEvent.Of(new NoteWritten(default, default, "a\ud83d b"));
        Assert.Equal("a\ufffd b", ((NoteWritten)StoredEvent.Read(stored.Line)!.Event).Text);
    }

    [Fact]
    public void Fields_of_a_newer_program_stay_on_the_line()
    {
        const string line = """{"event":"note-written","id":"01ARYZ6S410000000000000000","at":"2026-03-04T15:06:07Z","text":"warm","mood":{"x":[1,2.50]}}""";
        var stored = StoredEvent.Read(line)!;
        Assert.Equal("warm", Assert.IsType<NoteWritten>(stored.Event).Text);
        Assert.Equal(line, stored.Line);
    }

    [Theory]
    [InlineData("""{"event":"sound-recorded","id":"01ARYZ6S410000000000000000","at":"2026-03-04T15:06:07Z","hertz":440}""", null)]
    [InlineData("""{"event":"note-written","id":"01ARYZ6S410000000000000000","at":"2026-03-04T15:06:07Z"}""", "text")]
    [InlineData("""{"event":"note-written","id":"01ARYZ6S410000000000000000","at":"yesterday","text":"x"}""", "at")]
    [InlineData("""{"event":"note-written","id":"01ARYZ6S410000000000000000","at":"2026-03-04T15:06:07Z","text":"\ud83d"}""", "text")]
    [InlineData("""{"event":"check-skipped","id":"01ARYZ6S410000000000000000","at":"2026-03-04T15:06:07Z","reason":"too-cold"}""", "reason")]
    [InlineData("""{"event":"job-closed","id":"01ARYZ6S410000000000000000","at":"2026-03-04T15:06:07Z","outcome":4}""", "outcome")]
    [InlineData("""{"event":"repair-done","id":"01ARYZ6S410000000000000000","at":"2026-03-04T15:06:07Z","suspect":"a","repair":"b","minutes":1e999}""", "minutes")]
    [InlineData("""{"id":"01ARYZ6S410000000000000000"}""", "event")]
    public void What_this_version_cannot_read_is_kept_as_unknown(string line, string? field)
    {
        var stored = StoredEvent.Read(line)!;
        var unknown = Assert.IsType<UnknownEvent>(stored.Event);
        Assert.Equal(line, stored.Line);
        Assert.Equal("01ARYZ6S410000000000000000", stored.Id.ToString());
        Assert.Equal(field, unknown.Problem?.Arguments[2]);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("""{"event":"note-written","text":"no id"}""")]
    [InlineData("""{"id":7}""")]
    [InlineData("""{"id":"01ARYZ6S410000000000000000","event":"note-written","text":"cut""")]
    public void A_line_without_an_id_is_no_event(string line) => Assert.Null(StoredEvent.Read(line));

    [Fact]
    public void A_time_without_offset_is_taken_as_UTC_on_every_machine()
    {
        var stored = StoredEvent.Read("""{"event":"note-written","id":"01ARYZ6S410000000000000000","at":"2026-03-04T15:06:07","text":"x"}""")!;
        Assert.True(new DateTimeOffset(2026, 3, 4, 15, 6, 7, TimeSpan.Zero).EqualsExact(stored.Event.At));
    }

    [Fact]
    public void A_number_that_is_none_cannot_become_a_reading() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ReadingParse.Number(double.NaN, Quantity.Volts, null));

    [Fact]
    public void Every_message_of_the_project_has_a_text()
    {
        var catalog = new TextCatalog(Language.English, JobTexts.Source);
        string[] codes =
        [
            "job.file-exists", "job.file-not-found", "job.folder-not-found", "job.file-no-permission", "job.file-in-use",
            "job.file-trouble", "job.file-not-a-job", "job.file-newer", "job.line-damaged", "job.line-cut-short",
            "job.event-unreadable", "job.event-conflict", "job.opened-twice", "job.not-opened", "job.withdraws-nothing",
        ];
        Assert.All(codes, code => Assert.True(catalog.Has(code), code));
    }
}
