using System.Globalization;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Verbs;

/// <summary>Where a job stands.</summary>
public static class Status
{
    public static int Run(Terminal terminal, StatusSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var opened = JobDesk.Open(terminal, settings.Job);
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        if (settings.Why is { } named)
        {
            return Why(terminal, opened.Session, named, settings.Json);
        }

        if (settings.Json)
        {
            terminal.While(() => Explained(opened.Session));
            Write(terminal, opened.Session);
        }
        else
        {
            Draw(terminal, opened.Session);
        }

        return ExitCode.Good;
    }

    private static int Why(Terminal terminal, JobSession session, string named, bool asJson)
    {
        if (NamedSuspect.Find(session, named, out var problem) is not { } suspect)
        {
            return terminal.Fail(ExitCode.Usage, asJson, problem!);
        }

        var history = terminal.While(() => session.Investigation.HistoryOf(suspect));
        if (asJson)
        {
            JsonOutput.Write(terminal, json => ExplainingJson.History(json, session, history));
        }
        else
        {
            HistoryPage.Draw(terminal, session, history);
        }

        return ExitCode.Good;
    }

    /// <summary>The costly part, done while the progress is shown; it is kept.</summary>
    private static int Explained(JobSession session) =>
        session.Entries.Count(e => session.Investigation.ClearanceOf(e.Event.Id.ToString()) is not null);

    public static void Draw(Terminal terminal, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        terminal.While(() => Explained(session));
        var opened = session.Opened;
        terminal.Line(session.Circuit.Title, Page.Heading);
        terminal.Row(terminal.Say("open.complaint"), opened.Complaint);
        if (session.State.Vehicle.Length > 0)
        {
            terminal.Row(terminal.Say("status.vehicle"), session.State.Vehicle);
        }

        NoticedPage.Draw(terminal, session);
        terminal.Row(terminal.Say("status.opened"), opened.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture));
        terminal.Row(terminal.Say("status.spent"), terminal.Say("status.minutes", CheckPage.Minutes(session.MinutesSpent)));
        terminal.Row(terminal.Say("status.stands"), terminal.Say(
            session.IsProven ? "done.proven" : session.State.HandedOver is not null ? "done.handed-over"
            : session.IsDone ? "done.closed" : "status.going-on"));
        terminal.Blank();
        if (session.Entries.Count > 0)
        {
            terminal.Line(terminal.Say("status.done-so-far"), Page.Heading);
            foreach (var entry in session.Entries)
            {
                terminal.Line(EntryText.Of(terminal, session, entry) + TroublePage.Sign(terminal, session, entry), null, 2, 4);
                if (session.Investigation.ClearanceOf(entry.Event.Id.ToString()) is { Reasons: [var first, ..] })
                {
                    terminal.Line(terminal.Say("clears.line", terminal.Say(first)), null, 5, 2);
                }
            }

            terminal.Blank();
        }

        foreach (var note in session.State.Notes)
        {
            terminal.Row(terminal.Say("status.note"), note.Text);
        }

        terminal.Line(terminal.Say(session.IsProven ? "status.suspects-left" : "status.suspects"), Page.Heading);
        SuspectList.Draw(terminal, session, 10);
        TroublePage.Doubts(terminal, session);
        if (!session.IsProven)
        {
            TroublePage.Outside(terminal, session, session.Investigation.OutsideTheSheet);
        }

        foreach (var problem in session.Problems)
        {
            terminal.Line(problem, Page.Caution);
        }

        if (session.Finding is { } finding)
        {
            terminal.Blank();
            FindingPage.Draw(terminal, session, finding);
            NotProvenPage.Draw(terminal, session);
        }
    }

    private static void Write(Terminal terminal, JobSession session) => JsonOutput.Write(terminal, json =>
    {
        json.WriteString("sheet", session.Opened.SheetName);
        json.WriteString("complaint", session.Opened.Complaint);
        json.WriteString("vehicle", session.State.Vehicle);
        NoticedPage.Write(terminal, json, session);
        json.WriteString("opened", session.Opened.At.ToString("O", CultureInfo.InvariantCulture));
        json.WriteBoolean("done", session.IsDone);
        json.WriteString("outcome", session.IsProven ? "proven"
            : session.State.HandedOver is not null ? "handed-over" : session.IsDone ? "given-up" : null);
        json.Number("minutes", session.MinutesSpent);
        json.Array("entries", session.Entries, entry =>
        {
            EntryJson.Write(json, entry);
            json.WriteString("text", EntryText.Of(terminal, session, entry));
            ExplainingJson.Clearance(json, session, entry);
        });
        json.Array("notes", session.State.Notes, note =>
        {
            json.WriteString("id", note.Id.ToString());
            json.WriteString("text", note.Text);
        });
        NextJson.Suspects(json, "suspects", session.Investigation.Suspects);
        if (session.Finding is { } finding)
        {
            json.Object("finding", () => NextJson.Finding(json, session, finding));
        }
        else
        {
            json.WriteNull("finding");
        }

        TroubleJson.Write(json, session);
        json.Texts("withdrawn", session.State.Withdrawn.Order().Select(id => id.ToString()));
        json.Texts("problems", session.Problems.Select(terminal.Say));
    });
}
