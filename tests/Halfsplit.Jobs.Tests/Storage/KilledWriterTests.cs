using System.Diagnostics;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Storage;
using Xunit;

namespace Halfsplit.Jobs.Tests.Storage;

public sealed class KilledWriterTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public async Task What_a_killed_writer_said_is_recorded_is_in_the_file_and_the_next_append_works()
    {
        var path = folder.NewJob();
        var promised = new HashSet<string>();
        var random = new Random(20);
        for (var round = 0; round < 20; round++)
        {
            var said = await WriteAndKill(path, TimeSpan.FromMilliseconds(random.Next(0, 60)));
            Assert.NotEmpty(said);
            promised.UnionWith(said);

            var before = JobFile.Read(path).Value!;
            Assert.Subset(Ids(before.Document), promised);
            Assert.All(before.Damaged, line => Assert.True(line.CutShort));

            // The next append stands on a line of its own, whatever the kill left.
            using var file = JobFile.Open(path).Value!;
            var note = new NoteWritten(EventIdSource.Shared.Next(file.Document.LastId), default, $"after kill {round}");
            Assert.Null(file.Append(note));
            file.Dispose();
            promised.Add(note.Id.ToString());
            var after = JobFile.Read(path).Value!;
            Assert.Equal(Ids(before.Document).Count + 1, after.Document.Events.Length);
            Assert.Equal(note, after.Document.Events[^1].Event);
            Assert.Equal(before.Damaged, after.Damaged);
            Assert.False(after.EndsInsideLine);
        }
    }

    [Fact]
    public async Task A_second_writer_is_refused_until_the_first_is_gone()
    {
        var path = folder.NewJob();
        using var writer = Start(path);
        Assert.NotNull(await writer.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken));
        var refused = JobFile.Open(path, TimeSpan.Zero);
        Assert.Equal("job.file-in-use", refused.Problem?.Code);
        writer.Kill();
        await writer.WaitForExitAsync(TestContext.Current.CancellationToken);
        using var opened = JobFile.Open(path).Value;
        Assert.NotNull(opened);
    }

    public void Dispose() => folder.Dispose();

    private static HashSet<string> Ids(JobDocument document) => [.. document.Events.Select(stored => stored.Id.ToString())];

    /// <summary>Returns the ids that the writer printed before it was killed.</summary>
    private static async Task<List<string>> WriteAndKill(string path, TimeSpan delay)
    {
        using var writer = Start(path);
        var said = new List<string>();
        var first = await writer.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
        if (first is not null) said.Add(first);
        await Task.Delay(delay, TestContext.Current.CancellationToken);
        // SIGKILL: the writer gets no chance to tidy up.
        writer.Kill();
        var rest = await writer.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await writer.WaitForExitAsync(TestContext.Current.CancellationToken);
        said.AddRange(rest.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        return [.. said.Where(line => line.Length == EventId.TextLength)];
    }

    private static Process Start(string path)
    {
        var program = Environment.ProcessPath!;
        var start = new ProcessStartInfo(program) { RedirectStandardOutput = true };
        if (Path.GetFileNameWithoutExtension(program) == "dotnet") start.ArgumentList.Add(typeof(EndlessWriter).Assembly.Location);
        start.ArgumentList.Add(EndlessWriter.Argument);
        start.ArgumentList.Add(path);
        return Process.Start(start)!;
    }
}
