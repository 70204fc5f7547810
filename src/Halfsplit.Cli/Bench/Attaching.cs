using System.Collections.Immutable;
using System.Text.Json;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Terminals;
using Halfsplit.Cli.Verbs;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Bench;

/// <summary>A result that a job has taken as evidence.</summary>
/// <param name="Job">The job's file, as the person named it.</param>
/// <param name="Before">The odds of every suspect before.</param>
public sealed record Attached(
    string Job, JobSession Session, Noticed What, ImmutableArray<JobEvent> Events, Dictionary<string, double> Before)
{
    /// <summary>Attaches what the answer found to the job that the settings name.</summary>
    /// <returns>Null with an exit code where it was not attached; what is wrong has been told.</returns>
    public static Attached? To(Terminal terminal, PartSettings settings, Answer answer, out int code)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(answer);
        code = ExitCode.Good;
        if (answer.Found is not { } found || PartFindings.Find(found) is not { } kind)
        {
            code = terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.nothing-to-attach"));
            return null;
        }

        var opened = JobDesk.Open(terminal, settings.Job!, asksNext: false);
        if (!opened.IsOpen)
        {
            code = terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
            return null;
        }

        var session = opened.Session;
        var (what, problem) = PartFindings.On(session.Circuit, session.Investigation.Complaint, kind, settings.Part, answer.PartKinds);
        if (what is null)
        {
            code = terminal.Fail(ExitCode.Usage, settings.Json, problem!);
            return null;
        }

        var before = session.Investigation.Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds, StringComparer.Ordinal);
        var outcome = terminal.While(() => session.Attach(settings.Typed[0], what, settings.Typed.Skip(1), answer.Measured, settings.Confirm));
        if (outcome is not SessionOutcome.Kept kept)
        {
            code = terminal.Fail(outcome, settings.Json);
            return null;
        }

        return new Attached(settings.Job!, session, what, kept.Events, before);
    }

    public void Draw(Terminal terminal)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        terminal.Line(terminal.Say("record.saved", terminal.Say("bench.attached", terminal.Say(NoticedText.Of(Session.Circuit, What)))), Page.Good, 0, 4);
        terminal.Raw(terminal.Say("bench.take-back", Job, What.ToString()));
        SuspectList.Draw(terminal, Session, 5, Before);
    }

    public void Write(Terminal terminal, Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        json.Object("attached", () =>
        {
            json.WriteString("found", What.Kind.Name);
            json.WriteString("part", What.About);
            json.WriteString("text", terminal.Say(NoticedText.Of(Session.Circuit, What)));
            json.Texts("events", Events.Select(e => e.Id.ToString()));
            NextJson.Suspects(json, "suspects", Session.Investigation.Suspects);
        });
    }
}
