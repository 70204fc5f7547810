using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Learning;

namespace Halfsplit.Jobs.Storage;

/// <summary>What a folder's job files teach.</summary>
/// <param name="Entries">Its jobs, sorted by name; copies of one job as one.</param>
/// <param name="Problems">Files that could not be read, and jobs that could not be counted.</param>
public sealed record HistoryRead(ImmutableArray<HistoryEntry> Entries, ImmutableArray<Message> Problems);

/// <summary>Reads the finished jobs of one folder. Only files named <c>*.job.jsonl</c> in it, not those in folders below.</summary>
public static class HistoryFolder
{
    public const string Pattern = "*.job.jsonl";

    /// <summary>Reads them; what can't be read is told and left out. Null, with the problem, where there is no such folder.</summary>
    public static FileOutcome<HistoryRead> Read(string folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        string[] files;
        try
        {
            files = Directory.GetFiles(folder, Pattern, SearchOption.TopDirectoryOnly);
        }
        catch (Exception trouble) when (FileTroubles.IsExpected(trouble))
        {
            return FileOutcome<HistoryRead>.Failed(FileTroubles.Describe(trouble, folder));
        }

        var problems = ImmutableArray.CreateBuilder<Message>();
        var jobs = new List<(string, JobDocument)>();
        foreach (var file in files.Order(StringComparer.Ordinal))
        {
            // A job that somebody is writing right now is not finished: no waiting for it.
            var read = JobFile.Read(file, TimeSpan.Zero);
            if (!read.IsDone)
            {
                problems.Add(read.Problem);
            }
            else if (read.Value.Document.Version > JobDocument.CurrentVersion)
            {
                problems.Add(new Message("job.file-newer", file, read.Value.Document.Version));
            }
            else
            {
                jobs.Add((Path.GetFileName(file), read.Value.Document));
            }
        }

        var entries = JobHistory.Of(jobs);
        problems.AddRange(entries.Select(e => e.Problem).OfType<Message>());
        return FileOutcome<HistoryRead>.Done(new HistoryRead(entries, problems.ToImmutable()));
    }
}
