using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Verbs;

/// <summary>Says what to do now.</summary>
public static class Next
{
    public static int Run(Terminal terminal, NextSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var opened = JobDesk.Open(terminal, settings.Job);
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                NextJson.Write(json, opened.Session);
                if (settings.Why && opened.Session.Next.Check is { } asked)
                {
                    WhyJson.Outcomes(json, terminal, opened.Session, asked);
                }
            });
            return ExitCode.Good;
        }

        Draw(terminal, opened.Session);
        if (settings.Why && !opened.Session.IsDone)
        {
            WhyPage.Draw(terminal, opened.Session);
        }

        if (!opened.Session.IsDone && opened.Session.Next.Check is { } check)
        {
            CheckPage.Answers(terminal, opened.Session, check);
            terminal.Raw("  " + terminal.Say("check.record").PadRight(12) + terminal.Say(
                check.Kind is CheckKind.Repair or CheckKind.PutBack ? "check.record-repair" : "check.record-command", settings.Job));
        }

        return ExitCode.Good;
    }

    /// <summary>The finding if there is one to act upon, and the check; or that the job is done.</summary>
    public static void Draw(Terminal terminal, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        var next = session.Next;
        if (session.IsDone)
        {
            terminal.Line(
                terminal.Say(session.IsProven ? "done.proven" : session.State.HandedOver is null ? "done.closed" : "done.handed-over"),
                Page.Good);
            return;
        }

        if (next.Finding is { } finding)
        {
            FindingPage.Draw(terminal, session, finding);
            NotProvenPage.Draw(terminal, session);
        }

        if (next is { Check: { } check, Effort: { } effort })
        {
            CheckPage.Draw(terminal, session, check, effort, next.Reason, next.Cautions);
        }
        else
        {
            terminal.Line(next.Reason, Page.Caution);
        }

        WhyPage.Money(terminal, session, session.Compared);
        TroublePage.Outside(terminal, session, next.Outside ?? session.Investigation.OutsideTheSheet);
    }
}
