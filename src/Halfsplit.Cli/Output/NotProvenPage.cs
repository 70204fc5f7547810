using Halfsplit.Cli.Terminals;
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
        var open = HowToTellApart.StillOpen(session);
        if (open.Length == 0)
        {
            return;
        }

        terminal.Line(terminal.Say("open-suspects.heading"), Page.Heading);
        foreach (var suspect in open)
        {
            terminal.Row(
                OddsText.Of(suspect.Rival.Odds),
                $"{terminal.Say(SuspectName.WithDegree(session.Circuit, suspect.Rival))}: {terminal.Say(HowToTellApart.Of(session, suspect))}", Column);
        }

        terminal.Blank();
    }
}
