using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Jobs.Storage;

/// <summary>A job file that is opened, added to, flushed and closed for every event, so that nothing else is kept waiting.</summary>
/// <param name="path">The file, which exists.</param>
public sealed class JobFileStore(string path) : IJobStore
{
    public Message? Append(JobEvent happened, EventId? after)
    {
        var opened = JobFile.Open(path);
        if (!opened.IsDone)
        {
            return opened.Problem;
        }

        using var file = opened.Value;
        return file.Document.LastId == after ? file.Append(happened) : new Message("job.file-changed", path);
    }
}
