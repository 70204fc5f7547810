using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Terminals;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Jobs.Storage;

namespace Halfsplit.Cli.Verbs;

/// <summary>Fetches a job from its file and replays it.</summary>
public static class JobDesk
{
    /// <summary>The session on a job file; what is done in it is added to the file. Lines that can't be read are told.</summary>
    /// <param name="asksNext">What is asked now will be wanted.</param>
    public static OpenedSession Open(Terminal terminal, string path, bool asksNext = true)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        var read = JobFile.Read(path);
        if (!read.IsDone)
        {
            return new OpenedSession(null, read.Problem);
        }

        foreach (var line in read.Value.Damaged)
        {
            terminal.Error.WriteLine(terminal.Say("trouble", terminal.Say(line.Message)));
        }

        return terminal.While(() =>
        {
            var opened = JobSession.Open(read.Value.Document, new JobFileStore(path), terminal.Stamps);
            if (opened.IsOpen && asksNext)
            {
                // The costly part, done while the progress is shown.
                _ = opened.Session.Next;
            }

            return opened;
        });
    }

    /// <summary>The check that an option names, or the one that is asked now.</summary>
    /// <returns>False where the named one does not exist.</returns>
    public static bool Find(JobSession session, string? id, out Diagnosis.Checks.Check? check, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(session);
        check = id is null ? session.Next.Check : session.FindCheck(id);
        problem = id is not null && check is null ? new Message("cli.no-check", id) : null;
        return problem is null;
    }
}
