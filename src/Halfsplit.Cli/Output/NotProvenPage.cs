using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>At a finding: who else is alive, and what would tell them from the blamed one.</summary>
public static class NotProvenPage
{
    private const int Column = 16;

    /// <summary>Nothing is drawn where nobody else is alive, or where the finding has been acted upon.</summary>
    public static void Draw(Terminal terminal, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        var open = Of(session).ToList();
        if (open.Count == 0)
        {
            return;
        }

        terminal.Line(terminal.Say("open-suspects.heading"), Page.Heading);
        foreach (var suspect in open)
        {
            terminal.Row(
                OddsText.Of(suspect.Rival.Odds),
                $"{terminal.Say(SuspectName.WithDegree(session.Circuit, suspect.Rival))}: {How(terminal, session, suspect)}", Column);
        }

        terminal.Blank();
    }

    /// <summary>The suspects left open, as long as the finding still has to be acted upon.</summary>
    public static IEnumerable<OpenSuspect> Of(JobSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        return session.IsDone || session.Next is not { Finding: not null, IsProven: false } ? [] : session.Investigation.NotProven();
    }

    private static string How(Terminal terminal, JobSession session, OpenSuspect suspect)
    {
        if (suspect is not { PartedBy: { } check, Effort: { } effort })
        {
            return terminal.Say("open-suspects.by-none");
        }

        var title = terminal.Say(CheckTitle.Of(session.Circuit, check));
        return suspect.Lacks.Length == 0
            ? terminal.Say("open-suspects.by-now", title, CheckPage.Minutes(effort.Minutes))
            : terminal.Say("open-suspects.by-lacking", title, string.Join(", ", suspect.Lacks.Select(terminal.Say)));
    }
}
