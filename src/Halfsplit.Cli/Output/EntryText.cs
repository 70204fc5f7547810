using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>What was done, in one line: "3  volts DC, F19.1p to BAT.neg; key on: 12.4 V".</summary>
public static class EntryText
{
    public static string Of(Terminal terminal, JobSession session, SessionEntry entry)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(entry);
        var title = entry.Check is { } check ? terminal.Say(CheckTitle.Of(session.Circuit, check)) : "";
        return entry.Event switch
        {
            CheckSkipped { Place: { } place } => terminal.Say("entry.place", entry.Number, place),
            CheckSkipped => terminal.Say("entry.skipped", entry.Number, title),
            RepairDone or PutBackDone => terminal.Say("entry.repair", entry.Number, title),
            _ => terminal.Say("entry.reading", entry.Number, title, Value(entry.Value!)),
        };
    }

    /// <summary>A value as shown to people.</summary>
    public static string Value(ReadingValue value) => SpokenReading.Of(value, CliTexts.Catalog.Language);
}
