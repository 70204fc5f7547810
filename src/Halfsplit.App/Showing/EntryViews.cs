using Halfsplit.App.Views;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>What was done, in words.</summary>
internal static class EntryViews
{
    public static EntryView Of(JobSession session, SessionEntry entry) =>
        Of(session, entry, session.Investigation.Doubts.Any(d => d.Id == entry.Event.Id.ToString()));

    private static EntryView Of(JobSession session, SessionEntry entry, bool isDoubtful)
    {
        var title = entry.Check is { } check
            ? AppTexts.Sentence(AppTexts.Catalog.Say(CheckTitle.Of(session.Circuit, check)))
            : "";
        var (kind, shown, value) = entry.Event switch
        {
            CheckSkipped { Place: { } place } => ("skip", AppTexts.Say("app.entry.place", place), AppTexts.Say("app.entry.given-up")),
            CheckSkipped skipped => ("skip", title, AppTexts.Say(skipped.Reason == SkipReason.NotSure ? "app.entry.not-sure" : "app.entry.left-out")),
            RepairDone => ("repair", title, AppTexts.Say("app.entry.done")),
            PutBackDone => ("put-back", title, AppTexts.Say("app.entry.done")),
            ProofTaken => ("proof", title, Value(entry.Value!)),
            _ => ("reading", title, Value(entry.Value!)),
        };
        return new EntryView(entry.Event.Id.ToString(), entry.Number, kind, shown, value, isDoubtful);
    }

    /// <summary>"3. Key on: volts DC, F19.2p to BAT.neg: 12.4 V".</summary>
    public static string Line(JobSession session, SessionEntry entry)
    {
        var view = Of(session, entry, isDoubtful: false);
        return AppTexts.Say("app.entry.line", view.Number, view.Title, view.Value);
    }

    /// <summary>The lines of these readings, in the order in which they were taken.</summary>
    public static string[] Lines(JobSession session, IEnumerable<string> ids)
    {
        var wanted = ids.ToHashSet(StringComparer.Ordinal);
        return [.. session.Entries.Where(e => wanted.Contains(e.Event.Id.ToString())).Select(e => Line(session, e))];
    }

    public static string Value(ReadingValue value) => SpokenReading.Of(value, AppTexts.Language);
}
