using System.Text.Json;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>Clearances, suspects left open and a suspect's history as JSON.</summary>
public static class ExplainingJson
{
    /// <summary>Writes <c>clearance</c>; null where the entry is no reading.</summary>
    public static void Clearance(Utf8JsonWriter json, JobSession session, SessionEntry entry)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(entry);
        if (session.Investigation.ClearanceOf(entry.Event.Id.ToString()) is not { } clearance)
        {
            json.WriteNull("clearance");
            return;
        }

        json.Object("clearance", () =>
        {
            json.Array("cleared", clearance.Cleared, move =>
            {
                json.WriteString("suspect", move.Suspect.Id);
                json.Odds("before", move.Before);
                json.Odds("after", move.After);
            });
            Limits(json, "notCleared", clearance.NotCleared);
            Limits(json, "proven", clearance.Proven);
            json.Texts("reasons", clearance.Reasons.Select(CliTexts.Catalog.Say));
            json.Texts("assurances", clearance.Assurances.Select(CliTexts.Catalog.Say));
        });
    }

    /// <summary>Writes <c>notProven</c>.</summary>
    public static void NotProven(Utf8JsonWriter json, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        json.Array("notProven", HowToTellApart.StillOpen(session), open =>
        {
            json.WriteString("suspect", open.Rival.Suspect.Id);
            json.Odds("odds", open.Rival.Odds);
            json.WriteString("partedBy", open.PartedBy?.Id);
            json.WriteString(
                "title", open.PartedBy is { } check ? CliTexts.Catalog.Say(CheckTitle.Of(session.Circuit, check)) : null);
            json.Number("minutes", open.Effort?.Minutes);
            json.Texts("lacks", open.Lacks.Select(CliTexts.Catalog.Say));
            json.WriteBoolean("outOfReach", open.IsOutOfReach);
        });
    }

    /// <summary>Writes <c>why</c>.</summary>
    public static void History(Utf8JsonWriter json, JobSession session, SuspectHistory history)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(history);
        json.Object("why", () =>
        {
            json.WriteString("suspect", history.Suspect.Id);
            json.WriteString("name", CliTexts.Catalog.Say(SuspectName.Of(session.Circuit, history.Suspect)));
            json.Odds("weight", history.Weight);
            json.Odds("afterComplaint", history.AfterComplaint);
            json.Odds("odds", history.Odds);
            json.Array("noticed", history.Noticed, step =>
            {
                json.WriteString("id", step.Entry);
                json.WriteString("what", step.What.Kind.Name);
                json.WriteString("about", step.What.About);
                json.WriteBoolean("onTheBench", step.What.Kind.IsFromBench);
                json.Odds("without", step.Without);
                json.Number("factor", step.Factor);
                json.WriteNumber("ifSo", step.What.Kind.IfSo);
                json.WriteNumber("otherwise", step.What.Kind.Otherwise);
                json.WriteString("source", step.What.Kind.Source);
            });
            json.Array("steps", history.Steps, step =>
            {
                json.Number("number", session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == step.Entry)?.Number);
                json.WriteString("id", step.Entry);
                json.WriteString("check", step.Check.Id);
                json.Odds("before", step.Before);
                json.Odds("after", step.After);
                json.Number("factor", step.Joined ? null : step.Factor);
                json.Odds("without", step.Without);
                json.Number("factorAsLast", step.FactorAsLast);
            });
        });
    }

    private static void Limits(Utf8JsonWriter json, string name, IEnumerable<ResistanceLimit> limits) =>
        json.Array(name, limits, limit =>
        {
            json.Array("stretches", limit.Stretches, stretch =>
            {
                json.WriteString("from", stretch.From);
                json.WriteString("to", stretch.To);
                json.Texts("pieces", stretch.Targets);
            });
            json.Number("amps", limit.Amps);
            json.WriteBoolean("loaded", limit.IsLoaded);
            json.Number("ohms", limit.Ohms);
            json.Number("sameDigitsOhms", limit.SameOhms);
            json.Number("hiddenOhms", limit.HiddenOhms);
        });
}
