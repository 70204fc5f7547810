using System.Globalization;
using Halfsplit.App.Views;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>A job, and what a reading did, as the screens show them.</summary>
internal static class JobViews
{
    private const int MostSuspects = 8, ClearedNamed = 3, SentencesShown = 3;

    /// <param name="before">Odds by suspect before the last answer; null where nothing came before.</param>
    public static JobView Of(JobSession session, IReadOnlyDictionary<string, double>? before = null)
    {
        var opened = session.Opened;
        var (suspects, others) = SuspectViews.Of(session, MostSuspects, before);
        return new JobView(
            opened.Id.ToString(), session.Circuit.Title, session.Circuit.Summary ?? "", opened.Complaint, opened.VehicleNotes,
            Stands(session.State, session.IsProven), opened.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
            Math.Round(session.MinutesSpent, 1),
            [.. session.Entries.Select(e => EntryViews.Of(session, e))], suspects, others, [.. Doubts(session)],
            [.. session.Noticed.Select(n => AppTexts.Sentence(AppTexts.Catalog.Say(NoticedText.Of(session.Circuit, n.What))))],
            [.. session.State.Notes.Select(n => n.Text)], [.. session.Problems.Select(AppTexts.Catalog.Say)],
            SafetyPage(session.Circuit))
        {
            Bench = [.. session.BenchResults.Select(n => AppTexts.Catalog.Say(NoticedText.Of(session.Circuit, n.What)))],
        };
    }

    /// <summary>The cautions of a whole circuit, and to whom the app defers.</summary>
    public static string[] SafetyPage(Circuits.Model.Circuit circuit)
    {
        var places = circuit.Places.SelectMany(p => p.Cautions);
        return
        [
            .. circuit.Cautions.Concat(places).Concat(circuit.Parts.SelectMany(p => p.Notes.Cautions))
                .Distinct(StringComparer.Ordinal).Select(c => AppTexts.Catalog.Say(Cautions.Of(c))),
            AppTexts.Say("app.safety.defer"),
        ];
    }

    public static string Stands(JobState state, bool isProven) => isProven ? "proven"
        : state.HandedOver is not null ? "handed-over"
        : state.IsClosed ? "given-up" : "going-on";

    /// <summary>What the last entry did.</summary>
    public static SavedView Saved(JobSession session, SessionEntry entry)
    {
        var clearance = session.Investigation.ClearanceOf(entry.Event.Id.ToString());
        var cleared = clearance?.Cleared ?? [];
        return Kept(session, entry) with
        {
            IsWhole = true,
            Cleared = [.. cleared.Take(ClearedNamed).Select(m => AppTexts.Catalog.Say(SuspectName.Of(session.Circuit, m.Suspect)))],
            MoreCleared = cleared.Length > ClearedNamed ? AppTexts.Say("app.cleared.and-more", cleared.Length - ClearedNamed) : null,
            Carried = [.. (clearance?.Assurances ?? []).Take(SentencesShown).Select(AppTexts.Catalog.Say)],
            NotCleared = [.. (clearance?.Reasons ?? []).Take(SentencesShown).Select(AppTexts.Catalog.Say)],
        };
    }

    /// <summary>The last entry as it was kept; what it did is not worked out yet.</summary>
    public static SavedView Kept(JobSession session, SessionEntry entry)
    {
        return new SavedView(
            EntryViews.Line(session, entry), [], null, [], [], false,
            entry.Value is ReadingParse.Number { Unsteady: false } number ? number.Value : null,
            entry.Value switch
            {
                ReadingParse.Word word => word.Answer.Id,
                ReadingParse.OverLimit => "OL",
                _ => null,
            });
    }

    private static IEnumerable<string> Doubts(JobSession session)
    {
        var investigation = session.Investigation;
        if (investigation.LeadingPair is { } pair)
        {
            yield return AppTexts.Say("app.doubt.two", SuspectViews.Line(session, pair));
        }

        if (investigation.WorksNow)
        {
            yield return AppTexts.Say("app.doubt.works-now");
        }
        else if (investigation.SeemsToComeAndGo)
        {
            yield return AppTexts.Say("app.doubt.comes-and-goes", OddsWords.Of(investigation.FlickeringOdds));
        }

        foreach (var doubt in investigation.Doubts)
        {
            if (session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == doubt.Id) is { } entry)
            {
                yield return AppTexts.Say("app.doubt.slip", EntryViews.Line(session, entry), OddsWords.Of(doubt.Odds));
            }
        }
    }
}
