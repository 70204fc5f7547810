using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Verbs;

/// <summary>Takes something that was noticed, or lists what can be said.</summary>
public static class Notice
{
    public static int Run(Terminal terminal, NoticeSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        return settings.Name.Length == 0 ? List(terminal, settings) : Take(terminal, settings);
    }

    private static int Take(Terminal terminal, NoticeSettings settings)
    {
        var opened = JobDesk.Open(terminal, settings.Job, asksNext: false);
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        var session = opened.Session;
        var (what, problem) = NoticedChoice.Read(
            session.Circuit, session.Investigation.Complaint, string.Join(' ', settings.Name));
        if (what is null)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, problem!);
        }

        var before = session.Investigation.Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds, StringComparer.Ordinal);
        var outcome = terminal.While(() => session.Notice(what));
        if (outcome is not SessionOutcome.Kept kept)
        {
            return terminal.Fail(outcome, settings.Json);
        }

        var text = terminal.Say("notice.saved", terminal.Say(NoticedText.Of(session.Circuit, what)));
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteBoolean("saved", true);
                json.WriteString("text", text);
                json.Texts("events", kept.Events.Select(e => e.Id.ToString()));
                NextJson.Suspects(json, "suspects", session.Investigation.Suspects);
            });
            return ExitCode.Good;
        }

        terminal.Line(terminal.Say("record.saved", text), Page.Good, 0, 4);
        SuspectList.Draw(terminal, session, 5, before);
        return ExitCode.Good;
    }

    private static int List(Terminal terminal, NoticeSettings settings)
    {
        if (Find(terminal, settings, out var problem, out var code) is not var (circuit, complaint))
        {
            return terminal.Fail(code, settings.Json, problem!);
        }

        if (settings.Json)
        {
            JsonOutput.Write(terminal, json => json.Array(
                "choices", NoticedChoice.For(circuit, complaint), choice => NoticedPage.Write(terminal, json, choice)));
        }
        else
        {
            NoticedPage.Choices(terminal, circuit, complaint);
        }

        return ExitCode.Good;
    }

    /// <summary>A shipped sheet or a sheet's file; a file that is a job speaks of its own sheet and complaint.</summary>
    private static (Circuit Circuit, Complaint Complaint)? Find(
        Terminal terminal, NoticeSettings settings, out Message? problem, out int code)
    {
        (problem, code) = (null, ExitCode.Broken);
        if (File.Exists(settings.Job) && Jobs.Storage.JobFile.Read(settings.Job).IsDone)
        {
            var opened = JobDesk.Open(terminal, settings.Job, asksNext: false);
            problem = opened.Problem;
            return opened.IsOpen ? (opened.Session.Circuit, opened.Session.Investigation.Complaint) : null;
        }

        var source = SheetSource.Find(settings.Job);
        if (source.Text is null || source.Read().Circuit is not { } circuit)
        {
            problem = source.Problem ?? new Message("cli.sheet-has-errors", settings.Job);
            return null;
        }

        code = ExitCode.Usage;
        var complaint = settings.Complaint is { } text ? ComplaintChoice.Named(circuit, text) : ComplaintChoice.Usual(circuit);
        if (complaint is null)
        {
            var all = circuit.Complaints.Select(c => c.Name).ToList();
            problem = settings.Complaint is { } said
                ? new Message("cli.no-complaint", said, Spelling.Hint(said, all), string.Join("; ", all))
                : new Message("cli.no-complaint-at-all");
            return null;
        }

        return (circuit, complaint);
    }
}
