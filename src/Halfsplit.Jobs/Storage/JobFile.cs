using System.Collections.Immutable;
using System.Text;
using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Storage;

/// <summary>
/// A job file open for writing. Lines are only ever added; an event is on the disk when <see cref="Append(JobEvent)"/> returns.
/// While it is open, no other program can write it (an advisory lock on Unix: it holds between programs that ask).
/// </summary>
public sealed class JobFile : IDisposable
{
    /// <summary>How long opening waits for another program to let go of the file.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly FileStream stream;
    private bool endsInsideLine;

    private JobFile(string path, FileStream stream, JobReading reading)
    {
        Path = path;
        this.stream = stream;
        Document = reading.Document;
        Damaged = reading.Damaged;
        endsInsideLine = reading.EndsInsideLine;
    }

    public string Path { get; }

    /// <summary>All events, those just added included.</summary>
    public JobDocument Document { get; private set; }

    /// <summary>Lines that could not be read when the file was opened.</summary>
    public ImmutableArray<DamagedLine> Damaged { get; }

    /// <summary>
    /// Makes a new file with a job's first event, and opens it. The file appears whole or not at all; it is never
    /// put in the place of another.
    /// </summary>
    /// <param name="more">Events behind the first.</param>
    public static FileOutcome<JobFile> Create(string path, JobOpened opened, IEnumerable<JobEvent>? more = null)
    {
        var document = JobDocument.Of([StoredEvent.Of(opened), .. (more ?? []).Select(StoredEvent.Of)]);
        if (System.IO.Path.Exists(path)) return FileOutcome<JobFile>.Failed(new Message("job.file-exists", path));
        var making = $"{path}.{opened.Id}.new";
        try
        {
            try
            {
                using (var made = new FileStream(making, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0))
                {
                    made.Write(document.ToJsonLines());
                    made.Flush(flushToDisk: true);
                }

                File.Move(making, path, overwrite: false);
            }
            finally
            {
                File.Delete(making);
            }
        }
        catch (Exception trouble) when (FileTroubles.IsExpected(trouble))
        {
            return FileOutcome<JobFile>.Failed(
                System.IO.Path.Exists(path)
                    ? new Message("job.file-exists", path)
                    : FileTroubles.Describe(trouble, path));
        }

        return Open(path);
    }

    /// <summary>Opens a file for writing. Damaged lines don't stop it; see <see cref="Damaged"/>.</summary>
    /// <param name="patience">How long to wait for another writer; <see cref="Patience"/> if not given.</param>
    public static FileOutcome<JobFile> Open(string path, TimeSpan? patience = null)
    {
        var outcome = OpenStream(path, FileAccess.ReadWrite, FileShare.None, patience ?? Patience);
        if (outcome.Value is not { } stream) return FileOutcome<JobFile>.Failed(outcome.Problem!);
        var reading = ReadAll(stream, path);
        var problem = reading.Problem;
        if (reading.Value is { } read)
        {
            if (!read.IsJob) problem = new Message("job.file-not-a-job", path);
            else if (read.Document.Version > JobDocument.CurrentVersion) problem = new Message("job.file-newer", path, read.Document.Version);
            else return FileOutcome<JobFile>.Done(new JobFile(path, stream, read));
        }

        stream.Dispose();
        return FileOutcome<JobFile>.Failed(problem!);
    }

    /// <summary>Reads a file without keeping it open.</summary>
    public static FileOutcome<JobReading> Read(string path, TimeSpan? patience = null)
    {
        var outcome = OpenStream(path, FileAccess.Read, FileShare.Read, patience ?? Patience);
        if (outcome.Value is not { } stream) return FileOutcome<JobReading>.Failed(outcome.Problem!);
        using (stream)
        {
            var reading = ReadAll(stream, path);
            return reading.Value is { IsJob: false }
                ? FileOutcome<JobReading>.Failed(new Message("job.file-not-a-job", path))
                : reading;
        }
    }

    /// <summary>
    /// Adds an event. It is on the disk when this returns null; otherwise nothing was added, and the message says
    /// why.
    /// </summary>
    public Message? Append(JobEvent happened) => Append([StoredEvent.Of(happened)]);

    /// <summary>Adds what another copy of the job has and this one has not.</summary>
    /// <returns>Null when all is on the disk; otherwise nothing was added.</returns>
    public Message? Merge(JobDocument other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Version > JobDocument.CurrentVersion) return new Message("job.file-newer", Path, other.Version);
        var known = Document.Events.ToHashSet();
        return Append([.. Document.Merge(other).Events.Where(stored => !known.Contains(stored))]);
    }

    public void Dispose() => stream.Dispose();

    private Message? Append(ImmutableArray<StoredEvent> added)
    {
        if (added.IsEmpty) return null;
        // A line that a killed writer left unfinished is closed first and so kept aside: it stays as it is, and the
        // new event does not run into it.
        var text = new StringBuilder(endsInsideLine ? "\n" : "");
        foreach (var stored in added) text.Append(stored.Line).Append('\n');
        var length = stream.Length;
        try
        {
            stream.Position = length;
            stream.Write(Encoding.UTF8.GetBytes(text.ToString()));
            stream.Flush(flushToDisk: true);
        }
        catch (Exception trouble) when (FileTroubles.IsExpected(trouble))
        {
            TakeBack(length);
            return FileTroubles.Describe(trouble, Path);
        }

        endsInsideLine = false;
        Document = Document.Merge(JobDocument.Of(added));
        return null;
    }

    // As on a full disk: half a line may have been written. If it can't be cut off, it counts as an unfinished line.
    private void TakeBack(long length)
    {
        try
        {
            stream.SetLength(length);
        }
        catch (Exception trouble) when (FileTroubles.IsExpected(trouble))
        {
            endsInsideLine = true;
        }
    }

    private static FileOutcome<FileStream> OpenStream(string path, FileAccess access, FileShare share, TimeSpan patience)
    {
        var began = TimeProvider.System.GetTimestamp();
        while (true)
        {
            try
            {
                return FileOutcome<FileStream>.Done(new FileStream(path, FileMode.Open, access, share, bufferSize: 0));
            }
            catch (Exception trouble) when (FileTroubles.IsExpected(trouble))
            {
                if (!FileTroubles.IsInUse(trouble) || TimeProvider.System.GetElapsedTime(began) >= patience)
                {
                    return FileOutcome<FileStream>.Failed(FileTroubles.Describe(trouble, path));
                }
            }

            Thread.Sleep(20);
        }
    }

    private static FileOutcome<JobReading> ReadAll(FileStream stream, string path)
    {
        try
        {
            if (stream.Length > Array.MaxLength) return FileOutcome<JobReading>.Failed(new Message("job.file-not-a-job", path));
            var bytes = new byte[stream.Length];
            stream.Position = 0;
            var read = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return FileOutcome<JobReading>.Done(JobDocument.Read(bytes.AsSpan(0, read)));
        }
        catch (Exception trouble) when (FileTroubles.IsExpected(trouble))
        {
            return FileOutcome<JobReading>.Failed(FileTroubles.Describe(trouble, path));
        }
    }
}
