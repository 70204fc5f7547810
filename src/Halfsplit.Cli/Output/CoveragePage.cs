using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Coverage;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>The groups of suspects that can't be told apart, and what would part them.</summary>
public static class CoveragePage
{
    private const int Column = 20;

    private const string Indent = "   ";

    public static void Draw(Terminal terminal, JobSession session, CoverageReport report)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(report);
        terminal.Line(session.Circuit.Title, Page.Heading);
        terminal.Row(terminal.Say("open.complaint"), session.Opened.Complaint);
        terminal.Line(terminal.Say("coverage.summary", report.Suspects, report.Repairs, report.Checks), null, 2);
        terminal.Line(terminal.Say("coverage.apart", report.Alone), null, 2);
        if (report.Unseen.Length == 0)
        {
            terminal.Line(terminal.Say("coverage.all-seen"), null, 2);
        }
        else
        {
            terminal.Row(
                terminal.Say("coverage.unseen"),
                string.Join(", ", report.Unseen.Select(s => terminal.Say(SuspectName.Of(session.Circuit, s)))), 36);
        }

        if (report.Groups.Length == 0)
        {
            terminal.Line(terminal.Say("coverage.none"), Page.Good, 2);
        }

        Groups(terminal, session, "coverage.groups", report.Groups.Where(g => !g.OnlyAtWorst));
        Groups(terminal, session, "coverage.groups-worst", report.Groups.Where(g => g.OnlyAtWorst));
    }

    private static void Groups(Terminal terminal, JobSession session, string heading, IEnumerable<SuspectGroup> groups)
    {
        var number = 0;
        foreach (var group in groups)
        {
            if (number++ == 0)
            {
                terminal.Blank();
                terminal.Line(terminal.Say(heading), Page.Heading);
            }

            terminal.Row(
                $"{number}. {OddsText.Of(group.Odds)}",
                string.Join(", ", group.Suspects.Select(s => terminal.Say(SuspectName.Of(session.Circuit, s)))), Column);
            terminal.Row(Indent + terminal.Say("coverage.check"), WouldPart(terminal, session, group.WouldPart), Column);
            terminal.Row(Indent + terminal.Say("coverage.point"), Point(terminal, session, group.ExtraPoint), Column);
        }
    }

    private static string WouldPart(Terminal terminal, JobSession session, LackingCheck? check) => check is null
        ? terminal.Say("coverage.no-check")
        : terminal.Say(
            "coverage.would-part", terminal.Say(CheckTitle.Of(session.Circuit, check.Check)), CheckPage.Minutes(check.Minutes),
            string.Join(", ", check.Lacks.Select(terminal.Say)));

    private static string Point(Terminal terminal, JobSession session, ExtraPoint? point) => point is null
        ? terminal.Say("coverage.no-point")
        : terminal.Say(
            "coverage.at-point", terminal.Say(CheckTitle.Of(session.Circuit, point.Check)), CheckPage.Minutes(point.Minutes), point.Terminal);
}
