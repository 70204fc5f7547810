using System.Text.Json;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>What was noticed and what was learned before the first reading, as text and as JSON.</summary>
public static class NoticedPage
{
    /// <summary>Of a job that is being opened.</summary>
    public static void Draw(Terminal terminal, OpenedJob job)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(job);
        Draw(terminal, job.Circuit, Things(job).Select(t => t.What));
        if (job.Event.Learned is { } learned)
        {
            terminal.Row(
                terminal.Say("learned.label"),
                terminal.Say("learned.jobs-in", learned.Jobs, job.Learned.Folder!, learned.CircuitJobs));
        }
    }

    /// <summary>Of a job as it stands.</summary>
    public static void Draw(Terminal terminal, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        Draw(terminal, session.Circuit, session.Noticed.Select(n => n.What));
        Draw(terminal, session.Circuit, session.BenchResults.Select(n => n.What), "found.label");
        if (session.Opened.Learned is { } learned)
        {
            terminal.Row(terminal.Say("learned.label"), terminal.Say("learned.jobs", learned.Jobs, learned.CircuitJobs));
        }
    }

    /// <summary>All that can be said of a circuit and complaint.</summary>
    public static void Choices(Terminal terminal, Circuit circuit, Complaint complaint)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(complaint);
        terminal.Line(terminal.Say("notice.heading", complaint.Name), Page.Heading);
        foreach (var choice in NoticedChoice.For(circuit, complaint))
        {
            terminal.Line($"{choice.Kind.Name,-27} {terminal.Say(TextOf(choice))}", null, 2, 28);
        }

        terminal.Line(new Message("notice.how"));
    }

    public static void Write(Terminal terminal, Utf8JsonWriter json, OpenedJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        Write(terminal, json, job.Circuit, Things(job));
        Write(json, job.Event.Learned);
    }

    public static void Write(Terminal terminal, Utf8JsonWriter json, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        Write(terminal, json, session.Circuit, session.Noticed);
        Write(terminal, json, session.Circuit, session.BenchResults, "bench");
        Write(json, session.Opened.Learned);
    }

    /// <summary>One thing that can be said.</summary>
    public static void Write(Terminal terminal, Utf8JsonWriter json, NoticedChoice choice)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(choice);
        json.WriteString("name", choice.Kind.Name);
        json.WriteString("text", terminal.Say(NoticedText.Of(choice.Kind)));
        json.WriteBoolean("mustName", choice.MustName);
        json.WriteString("usual", choice.Usual);
        json.Texts("about", choice.Things);
        json.WriteNumber("ifSo", choice.Kind.IfSo);
        json.WriteNumber("otherwise", choice.Kind.Otherwise);
        json.WriteString("source", choice.Kind.Source);
    }

    private static void Draw(Terminal terminal, Circuit circuit, IEnumerable<Noticed> things, string code = "noticed.label")
    {
        var label = terminal.Say(code);
        foreach (var what in things)
        {
            terminal.Row(label, terminal.Say(NoticedText.Of(circuit, what)));
            label = "";
        }
    }

    private static Message TextOf(NoticedChoice choice)
    {
        var text = NoticedText.Of(choice.Kind);
        if (choice.Things.Length == 0)
        {
            return text;
        }

        var named = string.Join(", ", choice.Things);
        return choice.Kind.MayLeaveOut ? new Message("notice.may-name", text, named)
            : choice.Usual is { } usual ? new Message("notice.usual", text, usual, named)
            : new Message("notice.about", text, named);
    }

    private static IEnumerable<(string Id, Noticed What)> Things(OpenedJob job) => job.Noticed.Select(n =>
        (n.Id.ToString(), NoticedChoice.Find(job.Circuit, job.Complaint, n.Name, n.About)!));

    private static void Write(
        Terminal terminal, Utf8JsonWriter json, Circuit circuit, IEnumerable<(string Id, Noticed What)> things, string name = "noticed") =>
        json.Array(name, things, thing =>
        {
            json.WriteString("id", thing.Id);
            json.WriteString("name", thing.What.Kind.Name);
            json.WriteString("about", thing.What.About);
            json.WriteString("text", terminal.Say(NoticedText.Of(circuit, thing.What)));
        });

    private static void Write(Utf8JsonWriter json, HistoryUsed? learned)
    {
        if (learned is null)
        {
            json.WriteNull("learned");
            return;
        }

        json.Object("learned", () =>
        {
            json.WriteNumber("jobs", learned.Jobs);
            json.WriteNumber("circuitJobs", learned.CircuitJobs);
        });
    }
}
