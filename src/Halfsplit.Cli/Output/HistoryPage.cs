using System.Globalization;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>How a suspect came by its odds: a line for the weights, one for the complaint, one for each reading.</summary>
public static class HistoryPage
{
    /// <summary>Factors nearer to one than this are no move.</summary>
    private const double NoMove = 1.1;

    public static void Draw(Terminal terminal, JobSession session, SuspectHistory history)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(history);
        terminal.Line(
            terminal.Say("moves.heading", terminal.Say(SuspectName.Of(session.Circuit, history.Suspect)), OddsText.Of(history.Odds)),
            Page.Heading);
        terminal.Line(terminal.Say("moves.weight", Percent(history.Weight)), null, 2, 4);
        terminal.Line(
            terminal.Say("moves.complaint", session.Opened.Complaint, Percent(history.AfterComplaint), Factor(terminal, history.ComplaintFactor)),
            null, 2, 4);
        foreach (var step in history.Noticed)
        {
            terminal.Line(
                terminal.Say(
                    step.What.Kind.IsFromBench ? "moves.bench" : "moves.noticed", terminal.Say(NoticedText.Of(session.Circuit, step.What)), Percent(step.Without), Percent(step.Final),
                    Factor(terminal, step.Factor)),
                null, 2, 4);
            terminal.Line(
                terminal.Say("moves.believed", Share(step.What.Kind.IfSo), Share(step.What.Kind.Otherwise), step.What.Kind.Source), null, 4, 2);
        }

        foreach (var step in history.Steps)
        {
            var entry = session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == step.Entry);
            var title = entry is null ? step.Check.Id : EntryText.Of(terminal, session, entry);
            terminal.Line(
                step.Joined
                    ? terminal.Say("moves.joined", title, Percent(step.After))
                    : terminal.Say("moves.step", title, Percent(step.Before), Percent(step.After), Factor(terminal, step.Factor)),
                null, 2, 4);
        }

        // Readings overlap: what one says another may have said before.
        var alone = history.Steps.Where(s => Size(s.FactorAsLast) >= NoMove).OrderByDescending(s => Size(s.FactorAsLast)).ToList();
        terminal.Line(terminal.Say(alone.Count > 0 ? "moves.alone" : "moves.none-alone"), null, 2, 2);
        foreach (var step in alone)
        {
            var entry = session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == step.Entry);
            terminal.Line(
                terminal.Say("moves.without", entry?.Number ?? 0, Percent(step.Without), Factor(terminal, step.FactorAsLast)), null, 4, 4);
        }
    }

    private static string Share(double share) => string.Create(CliTexts.Formats, $"{100 * share:0.#} %");

    private static double Size(double factor) => Math.Max(factor, 1 / factor);

    private static string Factor(Terminal terminal, double factor) => Size(factor) < NoMove
        ? terminal.Say("moves.unmoved")
        : terminal.Say(
            factor > 1 ? "moves.likelier" : "moves.less-likely",
            Size(factor) >= 1000 ? terminal.Say("moves.over-thousand") : Size(factor).ToString(Size(factor) < 10 ? "G2" : "F0", CliTexts.Formats));

    /// <summary>With a decimal where small; never certainty.</summary>
    private static string Percent(double odds) => odds is >= 0.0005 and < 0.0995
        ? string.Create(CliTexts.Formats, $"{100 * odds:F1} %")
        : OddsText.Of(odds);
}
