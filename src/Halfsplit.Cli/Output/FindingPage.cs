using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>A finding: what is blamed, what it rests on, what it does not clear, and the repair.</summary>
public static class FindingPage
{
    private const int MostNotCleared = 6;

    /// <param name="isAdvice">The finding is what the engine advises to act upon, and not only how things stand.</param>
    public static void Draw(Terminal terminal, JobSession session, Finding finding, bool isAdvice = true)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(finding);
        var circuit = session.Circuit;
        terminal.Line(terminal.Say("finding.heading", OddsText.Of(finding.Odds)), Page.Heading);
        List(terminal, "finding.blamed", finding.Blamed.Select(s => Suspect(terminal, session, s)));
        var repair = terminal.Say(CheckTitle.Repair(circuit, finding.Repair.Id));
        terminal.Row(terminal.Say("finding.repair"), repair, 16);
        if (finding.Repair.Renews.Length > 0)
        {
            terminal.Row("", terminal.Say("finding.renews", string.Join(", ", finding.Repair.Renews)), 16);
        }

        terminal.Row(
            terminal.Say("finding.costs"),
            terminal.Say(
                "finding.minutes-and-price", CheckPage.Minutes(finding.Repair.Minutes), finding.Repair.Price.Low, finding.Repair.Price.High),
            16);
        List(
            terminal, "finding.rests-on",
            finding.RestsOn
                .Select(id => session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == id))
                .OfType<SessionEntry>()
                .OrderBy(e => e.Number)
                .Select(e => EntryText.Of(terminal, session, e)));
        var left = finding.NotCleared.Where(s => s.Odds >= 0.0005).ToList();
        List(
            terminal, "finding.not-cleared",
            left.Take(MostNotCleared).Select(s => Suspect(terminal, session, s))
                .Concat(left.Count > MostNotCleared ? [terminal.Say("finding.more", left.Count - MostNotCleared)] : []));
        if (!finding.IsSettled && isAdvice)
        {
            terminal.Line(terminal.Say("finding.unsettled"), Page.Caution, 2, 2);
        }

        terminal.Blank();
    }

    private static string Suspect(Terminal terminal, JobSession session, SuspectOdds suspect) =>
        $"{terminal.Say(SuspectName.WithDegree(session.Circuit, suspect))}: {OddsText.Of(suspect.Odds)}";

    private static void List(Terminal terminal, string heading, IEnumerable<string> lines)
    {
        var label = terminal.Say(heading);
        foreach (var line in lines)
        {
            terminal.Row(label, line, 16);
            label = "";
        }
    }
}
