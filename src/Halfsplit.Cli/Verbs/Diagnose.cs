using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Conversation;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Jobs.Storage;

namespace Halfsplit.Cli.Verbs;

/// <summary>The whole job as a conversation.</summary>
public static class Diagnose
{
    public static int Run(Terminal terminal, DiagnoseSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (settings.Job is { } existing && File.Exists(existing))
        {
            return GoOn(terminal, settings, existing);
        }

        if (OpenedJob.Of(settings, terminal.Stamps, out var problems, out var code) is not { } job)
        {
            return terminal.Fail(code, settings.Json, problems);
        }

        job.Learned.Tell(terminal);
        IJobStore store = NothingKept.Instance;
        if (settings.Job is { } path)
        {
            var made = JobFile.Create(path, job.Event, job.Noticed);
            if (!made.IsDone)
            {
                return terminal.Fail(ExitCode.Broken, settings.Json, made.Problem);
            }

            made.Value.Dispose();
            store = new JobFileStore(path);
        }

        var opened = terminal.While(() => JobSession.Open(job.Document, store, terminal.Stamps));
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        if (!settings.Json)
        {
            Greet(terminal, opened.Session, settings.Job, job);
        }

        return Talk(terminal, opened.Session, settings);
    }

    private static int GoOn(Terminal terminal, DiagnoseSettings settings, string path)
    {
        var opened = JobDesk.Open(terminal, path);
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        if (settings.Noticed.Length > 0 || settings.History is not null || settings.IgnoreHistory)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("talk.only-at-opening", path));
        }

        if (settings.SheetName is { } sheet && sheet != opened.Session.Opened.SheetName)
        {
            return terminal.Fail(
                ExitCode.Usage, settings.Json, new Message("talk.other-sheet", path, opened.Session.Opened.SheetName, sheet));
        }

        if (!settings.Json)
        {
            terminal.Line(terminal.Say("talk.goes-on", path), Page.Good);
            Status.Draw(terminal, opened.Session);
            terminal.Blank();
        }

        return opened.Session.IsDone && !settings.Json ? ExitCode.Good : Talk(terminal, opened.Session, settings);
    }

    private static int Talk(Terminal terminal, JobSession session, DiagnoseSettings settings)
    {
        var done = settings.Json ? DiagnosingAsJson.Run(terminal, session) : new Diagnosing(terminal, session).Run();
        if (!settings.Json && !done)
        {
            terminal.Line(
                settings.Job is { } path ? terminal.Say("talk.kept", path) : terminal.Say("talk.not-kept"), Page.Caution);
        }

        return ExitCode.Good;
    }

    private static void Greet(Terminal terminal, JobSession session, string? path, OpenedJob job)
    {
        terminal.Line(session.Circuit.Title, Page.Heading);
        if (session.Circuit.Summary is { } summary)
        {
            terminal.Line(summary);
        }

        var meant = ComplaintChoice.ToKeep(session.Investigation.Complaint);
        terminal.Row(
            terminal.Say("open.complaint"),
            terminal.Say("open.complaint-means", session.Opened.Complaint, meant.Load, meant.Is, meant.In));
        NoticedPage.Draw(terminal, job);
        terminal.Row(terminal.Say("talk.job"), path ?? terminal.Say("talk.no-file"));
        foreach (var caution in session.Circuit.Cautions)
        {
            terminal.Line(
                terminal.Say("check.caution", terminal.Say(Diagnosis.Safety.Cautions.Of(caution))), Page.Caution, 2, 2);
        }

        terminal.Line(terminal.Say("talk.defer"), Page.Caution, 2, 2);
        terminal.Blank();
    }
}
