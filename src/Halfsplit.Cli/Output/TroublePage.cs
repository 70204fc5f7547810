using System.Collections.Immutable;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>What is doubtful, what lies outside the sheet, what has to be put back.</summary>
public static class TroublePage
{
    /// <summary>A sign behind a reading that was more likely a slip than not.</summary>
    public static string Sign(Terminal terminal, JobSession session, SessionEntry entry)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(entry);
        return session.Investigation.Doubts.Any(d => d.Id == entry.Event.Id.ToString()) ? terminal.Say("doubt.sign") : "";
    }

    /// <summary>The doubtful readings, and a pair of faults where no single one fits.</summary>
    public static void Doubts(Terminal terminal, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        if (session.Investigation.LeadingPair is { } pair)
        {
            terminal.Line(
                terminal.Say("doubt.pair", terminal.Say(SuspectName.WithDegree(session.Circuit, pair)), OddsText.Of(pair.Odds)), Page.Caution);
        }

        if (session.Investigation.WorksNow)
        {
            terminal.Line(terminal.Say("doubt.works-now"), Page.Caution);
        }
        else if (session.Investigation.SeemsToComeAndGo)
        {
            terminal.Line(terminal.Say("doubt.comes-and-goes", OddsText.Of(session.Investigation.FlickeringOdds)), Page.Caution, 0, 2);
        }

        foreach (var doubt in session.Investigation.Doubts)
        {
            if (session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == doubt.Id) is { } entry)
            {
                terminal.Line(
                    terminal.Say("doubt.reading", EntryText.Of(terminal, session, entry), OddsText.Of(doubt.Odds)), Page.Caution, 0, 2);
            }
        }
    }

    /// <summary>What lies outside the sheet, and where the sheet has to be compared with the car; nothing for null.</summary>
    public static void Outside(Terminal terminal, JobSession session, OutsideAdvice? advice)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        if (advice is null)
        {
            return;
        }

        terminal.Blank();
        terminal.Line(terminal.Say("outside.heading", OddsText.Of(advice.Odds)), Page.Heading);
        foreach (var cause in advice.Causes)
        {
            terminal.Line("- " + terminal.Say(cause), null, 2, 2);
        }

        var readings = advice.Compare
            .Select(o => session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == o.Id)).OfType<SessionEntry>().ToList();
        if (readings.Count > 0)
        {
            terminal.Line(terminal.Say("outside.compare"), null, 0, 2);
            foreach (var reading in readings)
            {
                terminal.Line(EntryText.Of(terminal, session, reading), null, 2, 4);
            }
        }
    }

    /// <summary>What has to be put back, in order.</summary>
    public static void PutBack(Terminal terminal, ImmutableArray<PutBackItem> list)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        terminal.Line(terminal.Say("put-back.heading", CheckPage.Minutes(Math.Round(list.Sum(i => i.Minutes), 1))), Page.Heading);
        var number = 0;
        foreach (var item in list)
        {
            terminal.Line($"{++number}. {CheckPage.Sentence(terminal.Say(item.Text))}", null, 2, 3);
        }

        terminal.Blank();
    }
}
