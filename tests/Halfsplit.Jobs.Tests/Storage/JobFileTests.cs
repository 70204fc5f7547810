using System.Text;
using CsCheck;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Storage;
using Halfsplit.Jobs.Tests.Events;
using Xunit;

namespace Halfsplit.Jobs.Tests.Storage;

public sealed class JobFileTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void A_new_file_starts_with_the_format_and_holds_the_opening()
    {
        var path = folder.File("new.job.jsonl");
        var opening = TemporaryFolder.Opening;
        using (var file = JobFile.Create(path, opening).Value) Assert.Equal(opening, file?.Document.Events[0].Event);
        Assert.Equal("""{"format":"halfsplit-job","version":1}""", File.ReadLines(path).First());
        Assert.Equal([path], Directory.GetFiles(Path.GetDirectoryName(path)!));
        Assert.Equal(opening, JobReplay.Replay(JobFile.Read(path).Value!.Document).Opened);
    }

    [Fact]
    public void An_existing_file_is_never_overwritten()
    {
        var path = folder.File("notes.txt");
        File.WriteAllText(path, "mine");
        Assert.Equal("job.file-exists", JobFile.Create(path, TemporaryFolder.Opening).Problem?.Code);
        Assert.Equal("mine", File.ReadAllText(path));
    }

    [Fact]
    public void What_is_no_job_file_is_left_alone()
    {
        var path = folder.File("sheet.yaml");
        File.WriteAllText(path, "sheet: 1\n");
        Assert.Equal("job.file-not-a-job", JobFile.Open(path).Problem?.Code);
        Assert.Equal("job.file-not-a-job", JobFile.Read(path).Problem?.Code);
        Assert.Equal("job.file-not-found", JobFile.Open(folder.File("none")).Problem?.Code);
        Assert.Equal("job.folder-not-found", JobFile.Open(folder.File("none/none")).Problem?.Code);
        Assert.Equal("job.folder-not-found", JobFile.Create(folder.File("none/none"), TemporaryFolder.Opening).Problem?.Code);
        Assert.False(JobFile.Open(folder.File("")).IsDone);
        Assert.False(JobFile.Open("").IsDone);
        Assert.False(JobFile.Read("a\0b").IsDone);
    }

    [Fact]
    public void A_newer_file_can_be_read_but_not_added_to()
    {
        var path = folder.File("newer.job.jsonl");
        File.WriteAllText(path, """{"format":"halfsplit-job","version":2}""" + "\n");
        Assert.Equal("job.file-newer", JobFile.Open(path).Problem?.Code);
        Assert.Equal(2, JobFile.Read(path).Value?.Document.Version);
    }

    [Fact]
    public void Appended_events_are_read_back() => AnyEvent.Any.Array[1, 5].Sample(events =>
    {
        using var place = new TemporaryFolder();
        var path = place.NewJob();
        using (var file = JobFile.Open(path).Value!)
        {
            foreach (var happened in events) Assert.Null(file.Append(happened));
        }

        var read = JobFile.Read(path).Value!;
        Assert.Subset(read.Document.Events.Select(stored => stored.Event).ToHashSet(), events.ToHashSet());
        Assert.Empty(read.Damaged);
    });

    [Fact]
    public void A_file_cut_anywhere_takes_the_next_event_and_keeps_every_byte() =>
        Gen.Select(AnyEvent.Stored.Array[1, 4], Gen.Int).Sample((events, cutAt) =>
        {
            using var place = new TemporaryFolder();
            var path = place.File("cut.job.jsonl");
            var whole = JobDocument.Of(events).ToJsonLines();
            var head = whole.AsSpan().IndexOf((byte)'\n') + 1;
            var cut = whole[..(head + (int)((uint)cutAt % (whole.Length - head + 1)))];
            File.WriteAllBytes(path, cut);
            var before = JobFile.Read(path).Value!;
            var note = new NoteWritten(EventIdSource.Shared.Next(before.Document.LastId), default, "next");
            using (var file = JobFile.Open(path).Value!) Assert.Null(file.Append(note));

            var bytes = File.ReadAllBytes(path);
            Assert.Equal(cut, bytes[..cut.Length]);
            var after = JobDocument.Read(bytes);
            Assert.Equal(before.Document.With(note), after.Document);
            Assert.Equal(before.Damaged, after.Damaged);
        });

    [Fact]
    public void A_damaged_line_in_the_middle_is_told_and_the_rest_read()
    {
        var path = folder.NewJob();
        File.AppendAllText(path, "{\"event\":oops}\n");
        using (var file = JobFile.Open(path).Value!)
        {
            var damaged = Assert.Single(file.Damaged);
            Assert.Equal((3, false), (damaged.Number, damaged.CutShort));
            Assert.Null(file.Append(new NoteWritten(EventIdSource.Shared.Next(), default, "after")));
        }

        var read = JobFile.Read(path).Value!;
        Assert.Equal(2, read.Document.Events.Length);
        Assert.Equal(3, Assert.Single(read.Damaged).Number);
    }

    [Fact]
    public void Two_writers_in_one_program_are_kept_apart_too()
    {
        var path = folder.NewJob();
        using (JobFile.Open(path).Value!)
        {
            Assert.Equal("job.file-in-use", JobFile.Open(path, TimeSpan.Zero).Problem?.Code);
            Assert.Equal("job.file-in-use", JobFile.Read(path, TimeSpan.Zero).Problem?.Code);
        }

        Assert.True(JobFile.Read(path, TimeSpan.Zero).IsDone);
    }

    [Fact]
    public async Task Opening_waits_for_a_writer_that_is_nearly_done()
    {
        var path = folder.NewJob();
        var first = JobFile.Open(path).Value!;
        var second = Task.Run(() => JobFile.Open(path, TimeSpan.FromMinutes(1)), TestContext.Current.CancellationToken);
        await Task.Delay(50, TestContext.Current.CancellationToken);
        first.Dispose();
        using var opened = (await second).Value;
        Assert.NotNull(opened);
    }

    [Fact]
    public void Two_copies_merge_to_the_same_job_and_lines_of_a_newer_program_stay()
    {
        var one = folder.NewJob();
        var two = folder.File("two.job.jsonl");
        File.Copy(one, two);
        const string newer = """{"event":"sound-recorded","id":"7ZZZZZZZZZZZZZZZZZZZZZZZZZ","hertz": 440}""";
        File.AppendAllText(two, newer + "\n");
        using (var file = JobFile.Open(one).Value!) file.Append(new NoteWritten(EventIdSource.Shared.Next(), default, "on one"));
        using (var file = JobFile.Open(two).Value!) file.Append(new NoteWritten(EventIdSource.Shared.Next(), default, "on two"));
        var onTwo = JobFile.Read(two).Value!.Document;
        using (var file = JobFile.Open(one).Value!)
        {
            Assert.Null(file.Merge(onTwo));
            using var other = JobFile.Open(two).Value!;
            Assert.Null(other.Merge(file.Document));
            Assert.Equal(file.Document, other.Document);
            Assert.Equal(4, file.Document.Events.Length);
        }

        Assert.Contains(newer, File.ReadAllLines(one));
        var length = new FileInfo(one).Length;
        using (var file = JobFile.Open(one).Value!) Assert.Null(file.Merge(onTwo));
        Assert.Equal(length, new FileInfo(one).Length);
    }

    [Fact]
    public void An_event_is_in_the_file_when_append_returns()
    {
        var path = folder.NewJob();
        using var file = JobFile.Open(path).Value!;
        var before = new FileInfo(path).Length;
        var note = StoredEvent.Of(new NoteWritten(EventIdSource.Shared.Next(), default, "Ω"));
        file.Append(note.Event);
        Assert.Equal(before + Encoding.UTF8.GetByteCount(note.Line) + 1, new FileInfo(path).Length);
    }

    public void Dispose() => folder.Dispose();
}
