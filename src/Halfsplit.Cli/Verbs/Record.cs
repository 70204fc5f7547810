using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Verbs;

/// <summary>Takes a reading.</summary>
public static class Record
{
    public static int Run(Terminal terminal, RecordSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var opened = JobDesk.Open(terminal, settings.Job, asksNext: settings.Check is null);
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        var session = opened.Session;
        if (!JobDesk.Find(session, settings.Check, out var check, out var problem))
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, problem!);
        }

        var before = session.Investigation.Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds, StringComparer.Ordinal);
        var typed = ArgumentGuard.Undo(string.Join(' ', settings.Reading));
        switch (terminal.While(() => session.Record(typed, check, settings.Confirm, CliTexts.Words)))
        {
            case SessionOutcome.Asked asked:
                return Ask(terminal, asked.Question, settings.Json);
            case SessionOutcome.Kept kept:
                if (settings.Json)
                {
                    JsonOutput.Write(terminal, json =>
                    {
                        json.WriteBoolean("recorded", true);
                        EntryJson.Write(json, session.Entries[^1]);
                        ExplainingJson.Clearance(json, session, session.Entries[^1]);
                        json.WriteBoolean("done", session.IsDone);
                        json.Texts("events", kept.Events.Select(e => e.Id.ToString()));
                    });
                }
                else
                {
                    terminal.Line(
                        terminal.Say("record.saved", EntryText.Of(terminal, session, session.Entries[^1])), Page.Good, 0, 4);
                    if (session.IsDone)
                    {
                        Next.Draw(terminal, session);
                    }
                    else
                    {
                        ClearancePage.Draw(terminal, session, session.Entries[^1]);
                        SuspectList.Draw(terminal, session, 5, before);
                        terminal.Raw(terminal.Say("open.next", settings.Job));
                    }
                }

                return ExitCode.Good;
            case var other:
                return terminal.Fail(other, settings.Json);
        }
    }

    private static int Ask(Terminal terminal, ReadingParse.Question question, bool asJson)
    {
        if (asJson)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteBoolean("recorded", false);
                json.Object("question", () =>
                {
                    json.WriteString("code", question.Message.Code);
                    json.WriteString("text", terminal.Say(question.Message));
                    json.WriteString("meant", EntryText.Value(question.Meant));
                    json.Texts("alternatives", question.Alternatives.Select(EntryText.Value));
                });
            });
        }
        else
        {
            terminal.Line(terminal.Say(question.Message), Page.Caution);
            terminal.Line(terminal.Say("record.confirm", EntryText.Value(question.Meant)));
        }

        return ExitCode.Question;
    }
}
