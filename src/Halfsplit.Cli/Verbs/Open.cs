using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Jobs.Storage;

namespace Halfsplit.Cli.Verbs;

/// <summary>Starts a job that is kept in a file.</summary>
public static class Open
{
    public static int Run(Terminal terminal, OpenSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (OpenedJob.Of(settings, terminal.Stamps, out var problems, out var code) is not { } job)
        {
            return terminal.Fail(code, settings.Json, problems);
        }

        var made = JobFile.Create(settings.Job, job.Event, job.Noticed);
        if (!made.IsDone)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, made.Problem);
        }

        made.Value.Dispose();
        job.Learned.Tell(terminal);
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteString("job", settings.Job);
                json.WriteString("sheet", job.Event.SheetName);
                json.Object("complaint", () => Complaint(json, job));
                NoticedPage.Write(terminal, json, job);
            });
            return ExitCode.Good;
        }

        terminal.Line(terminal.Say("open.saved", settings.Job), Page.Good);
        terminal.Row(terminal.Say("open.circuit"), job.Circuit.Title);
        terminal.Row(terminal.Say("open.complaint"), Words(terminal, job));
        NoticedPage.Draw(terminal, job);
        terminal.Raw(terminal.Say("open.next", settings.Job));
        return ExitCode.Good;
    }

    /// <summary>The complaint, and what it means.</summary>
    public static string Words(Terminal terminal, OpenedJob job)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(job);
        return terminal.Say(
            "open.complaint-means", job.Complaint.Name, job.Complaint.Load,
            job.Event.Meant!.Is, job.Complaint.Condition);
    }

    private static void Complaint(System.Text.Json.Utf8JsonWriter json, OpenedJob job)
    {
        var meant = ComplaintChoice.ToKeep(job.Complaint);
        json.WriteString("text", job.Complaint.Name);
        json.WriteString("load", meant.Load);
        json.WriteString("is", meant.Is);
        json.WriteString("in", meant.In);
    }
}
