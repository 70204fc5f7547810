using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Verbs;

/// <summary>The short verbs that change a job: take back, give up, note, hand over.</summary>
public static class Changes
{
    public static int Withdraw(Terminal terminal, WithdrawSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return Change(terminal, settings, session =>
        {
            if (settings.Noticed is { } said)
            {
                var (noticed, problem) = NoticedChoice.Read(session.Circuit, session.Investigation.Complaint, said);
                return problem is not null
                    ? (null, problem, "", ExitCode.Usage)
                    : (session.WithdrawNoticed(noticed!, settings.Reason), null,
                        terminal.Say("withdraw.done", terminal.Say(NoticedText.Of(session.Circuit, noticed!))), 0);
            }

            if (settings.Bench is { } result)
            {
                var (found, problem) = PartFindings.Read(session.Circuit, session.Investigation.Complaint, result);
                return problem is not null
                    ? (null, problem, "", ExitCode.Usage)
                    : (session.WithdrawBench(found!, settings.Reason), null,
                        terminal.Say("withdraw.done", terminal.Say(NoticedText.Of(session.Circuit, found!))), 0);
            }

            SessionEntry? entry = null;
            if (settings.Number is { } number)
            {
                entry = session.Entries.FirstOrDefault(e => e.Number == number);
                if (entry is null)
                {
                    return (null, new Message("cli.no-number", number, session.Entries.Count), "", ExitCode.Usage);
                }
            }

            var texts = session.Entries.ToDictionary(e => e.Event.Id, e => EntryText.Of(terminal, session, e));
            var outcome = session.Withdraw(entry, settings.Reason);
            var what = outcome is SessionOutcome.Kept kept
                ? kept.Events.OfType<ReadingWithdrawn>()
                    .Select(w => texts.GetValueOrDefault(w.Withdraws)).LastOrDefault(t => t is not null)
                : null;
            return (outcome, null, what is null ? terminal.Say("withdraw.reopened") : terminal.Say("withdraw.done", what), 0);
        });
    }

    public static int Skip(Terminal terminal, SkipSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return Change(terminal, settings, session =>
        {
            if (!JobDesk.Find(session, settings.Check, out var check, out var problem))
            {
                return (null, problem, "", ExitCode.Usage);
            }

            string? place = null;
            if (settings.Place.IsSet)
            {
                var names = new Cars.Names(new Simulation.CircuitSimulator(session.Investigation.Network));
                place = settings.Place.Value is { Length: > 0 } said ? names.PlaceOrPart(said)
                    : check is null ? null : session.HardestPlace(check);
                if (names.Problems.Count > 0)
                {
                    return (null, names.Problems[0], "", ExitCode.Usage);
                }

                if (place is null && check is not null)
                {
                    return (null, new Message("skip.no-place"), "", ExitCode.Misplaced);
                }
            }

            var outcome = session.Skip(check, place);
            return (outcome, null, outcome is SessionOutcome.Kept ? EntryText.Of(terminal, session, session.Entries[^1]) : "", 0);
        });
    }

    public static int Note(Terminal terminal, NoteSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return Change(terminal, settings, session =>
            (session.Note(string.Join(' ', settings.Text)), null, terminal.Say("note.saved"), 0));
    }

    public static int Describe(Terminal terminal, DescribeSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return Change(terminal, settings, session => settings is { Vehicle: null, Owner: null, Worker: null }
            ? (null, new Message("describe.nothing"), "", ExitCode.Usage)
            : (session.Describe(settings.Vehicle, settings.Owner, settings.Worker), null, terminal.Say("describe.saved"), 0));
    }

    public static int HandOver(Terminal terminal, HandOverSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return Change(terminal, settings, session =>
        {
            var putBack = session.Investigation.PutBackList;
            var outcome = session.HandOver(settings.To, settings.Reason);
            if (outcome is SessionOutcome.Kept && !settings.Json)
            {
                TroublePage.PutBack(terminal, putBack);
                Status.Draw(terminal, session);
                terminal.Blank();
            }

            return (outcome, null, terminal.Say("done.handed-over"), 0);
        });
    }

    private static int Change(
        Terminal terminal, JobSettings settings,
        Func<JobSession, (SessionOutcome? Outcome, Message? Problem, string Done, int Code)> change)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        var opened = JobDesk.Open(terminal, settings.Job, asksNext: settings is SkipSettings { Check: null });
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        var (outcome, problem, done, code) = change(opened.Session);
        if (problem is not null)
        {
            return terminal.Fail(code, settings.Json, problem);
        }

        if (outcome is not SessionOutcome.Kept kept)
        {
            return terminal.Fail(outcome!, settings.Json);
        }

        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteBoolean("saved", true);
                json.WriteString("text", done);
                json.WriteBoolean("done", opened.Session.IsDone);
                json.Texts("events", kept.Events.Select(e => e.Id.ToString()));
                if (settings is HandOverSettings)
                {
                    TroubleJson.HandedOver(json, terminal, opened.Session);
                }
            });
        }
        else
        {
            terminal.Line(terminal.Say("record.saved", done), Page.Good, 0, 4);
        }

        return ExitCode.Good;
    }
}
