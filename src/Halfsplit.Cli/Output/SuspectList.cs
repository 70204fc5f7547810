using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>The likeliest suspects with their odds as bars, and the rest as a count.</summary>
public static class SuspectList
{
    private const int BarColumns = 20, OddsColumns = 10;

    /// <summary>Odds under which a suspect is only counted.</summary>
    private const double WorthALine = 0.005;

    /// <param name="before">Odds by suspect before the last reading, to show what moved; null for none.</param>
    public static void Draw(
        Terminal terminal, JobSession session, int most = 8, IReadOnlyDictionary<string, double>? before = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        var all = session.Investigation.Suspects;
        var shown = all.Where(s => s.Odds >= WorthALine).Take(most).ToList();
        if (shown.Count == 0)
        {
            shown = [.. all.Take(1)];
        }

        foreach (var suspect in shown)
        {
            Row(terminal, suspect, terminal.Say(SuspectName.WithDegree(session.Circuit, suspect)), before);
        }

        var rest = all.Length - shown.Count;
        if (rest > 0)
        {
            terminal.Line(
                terminal.Say("suspects.more", rest, OddsText.Of(all.Except(shown).Sum(s => s.Odds))), null, 2);
        }
    }

    /// <summary>True where some suspect's odds read otherwise than before.</summary>
    public static bool Moved(JobSession session, IReadOnlyDictionary<string, double> before)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(before);
        return session.Investigation.Suspects.Any(s =>
            OddsText.Of(s.Odds) != OddsText.Of(before.GetValueOrDefault(s.Suspect.Id)));
    }

    private static void Row(
        Terminal terminal, SuspectOdds suspect, string name, IReadOnlyDictionary<string, double>? before)
    {
        var moved = before is null ? "" : Moved(terminal, suspect, before);
        var odds = OddsText.Of(suspect.Odds).PadLeft(OddsColumns - 1);
        var column = 2 + OddsColumns + BarColumns + 2;
        var lines = Wrapping.Wrap(name + moved, terminal.Width - column).ToList();
        terminal.Pieces(
            ("  " + odds + " ", null), (OddsText.Bar(suspect.Odds, BarColumns), Page.Bar), ("  " + lines[0], null));
        foreach (var line in lines.Skip(1))
        {
            terminal.Pieces((new string(' ', column) + line, null));
        }
    }

    private static string Moved(Terminal terminal, SuspectOdds suspect, IReadOnlyDictionary<string, double> before)
    {
        var old = before.GetValueOrDefault(suspect.Suspect.Id);
        var (was, now) = (OddsText.Of(old), OddsText.Of(suspect.Odds));
        return was == now ? "" : terminal.Say("suspects.was", was);
    }
}
