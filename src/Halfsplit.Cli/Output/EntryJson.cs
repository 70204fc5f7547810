using System.Text.Json;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>A reading, repair or skip as JSON.</summary>
public static class EntryJson
{
    public static void Write(Utf8JsonWriter json, SessionEntry entry)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(entry);
        json.WriteNumber("number", entry.Number);
        json.WriteString("id", entry.Event.Id.ToString());
        json.WriteString("sort", entry.Event switch
        {
            CheckSkipped => "skip",
            RepairDone => "repair",
            PutBackDone => "put-back",
            ProofTaken => "proof",
            _ => "reading",
        });
        json.WriteString("check", entry.Check?.Id);
        json.WriteString("place", (entry.Event as CheckSkipped)?.Place);
        json.WriteString("typed", entry.Event switch
        {
            ReadingTaken reading => reading.Observation.Typed,
            ProofTaken proof => proof.Observation.Typed,
            _ => null,
        });
        json.WriteString("value", entry.Value is { } value ? EntryText.Value(value) : null);
        json.Number("amount", (entry.Value as ReadingParse.Number)?.Value);
        json.WriteNumber("minutes", entry.Minutes);
    }
}
