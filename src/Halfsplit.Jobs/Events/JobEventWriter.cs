using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Jobs.Events;

/// <summary>Writes an event as one line of JSON. Absent and empty fields are left out.</summary>
internal static class JobEventWriter
{
    // The file is no web page: letters such as Ω and ü stay readable. Control characters are still escaped, so that
    // an event never spans two lines.
    public static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <exception cref="ArgumentException">The event is an <see cref="UnknownEvent"/>, which has only its line.</exception>
    public static string Write(JobEvent happened)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            json.WriteStartObject();
            Text(json, "event", KindOf(happened));
            Text(json, "id", happened.Id.ToString());
            Text(json, "at", happened.At.ToString("O", CultureInfo.InvariantCulture));
            Text(json, "by", happened.By);
            WriteBody(json, happened);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static string KindOf(JobEvent happened) => happened switch
    {
        JobOpened => EventNames.Opened,
        ReadingTaken => EventNames.Reading,
        ReadingWithdrawn => EventNames.Withdrawn,
        CheckSkipped => EventNames.Skipped,
        ThingNoticed => EventNames.Noticed,
        PartFound => EventNames.Found,
        NoteWritten => EventNames.Note,
        JobDescribed => EventNames.Described,
        RepairDone => EventNames.Repair,
        ProofTaken => EventNames.Proof,
        PutBackDone => EventNames.PutBack,
        HandedOver => EventNames.HandedOver,
        JobClosed => EventNames.Closed,
        _ => throw new ArgumentException("Only the line of an unknown event can be written.", nameof(happened)),
    };

    private static void WriteBody(Utf8JsonWriter json, JobEvent happened)
    {
        switch (happened)
        {
            case JobOpened opened:
                Text(json, "sheetName", opened.SheetName);
                Text(json, "sheet", opened.SheetText);
                Text(json, "dataVersion", opened.DataVersion);
                Text(json, "engineVersion", opened.EngineVersion);
                Text(json, "complaint", opened.Complaint);
                if (opened.Meant is { } meant)
                {
                    json.WriteStartObject("meant");
                    Text(json, "load", meant.Load);
                    Text(json, "is", meant.Is);
                    Text(json, "in", meant.In);
                    json.WriteEndObject();
                }

                Text(json, "vehicleNotes", opened.VehicleNotes);
                json.WriteStartObject("options");
                Write(json, opened.Options);
                json.WriteEndObject();
                Write(json, opened.Learned);
                break;
            case ReadingTaken reading:
                Write(json, reading.Observation);
                break;
            case ProofTaken proof:
                Write(json, proof.Observation);
                Text(json, "proves", proof.Proves?.ToString());
                break;
            case ReadingWithdrawn withdrawn:
                Text(json, "withdraws", withdrawn.Withdraws.ToString());
                Text(json, "reason", withdrawn.Reason);
                break;
            case CheckSkipped skipped:
                Text(json, "check", skipped.Check);
                Text(json, "place", skipped.Place);
                Text(json, "reason", EventNames.NameOf(EventNames.SkipReasons, skipped.Reason));
                Text(json, "text", skipped.Text);
                break;
            case ThingNoticed noticed:
                Text(json, "name", noticed.Name);
                Text(json, "about", noticed.About);
                break;
            case PartFound found:
                Text(json, "aid", found.Aid);
                Text(json, "found", found.Found);
                Text(json, "part", found.Part);
                Texts(json, "typed", found.Typed);
                Number(json, "ohms", found.Ohms);
                if (found.Confirmed) json.WriteBoolean("confirmed", true);
                break;
            case NoteWritten note:
                Text(json, "text", note.Text);
                break;
            case JobDescribed described:
                Text(json, "vehicle", described.Vehicle);
                Text(json, "owner", described.Owner);
                Text(json, "worker", described.Worker);
                break;
            case RepairDone repair:
                Text(json, "suspect", repair.Suspect);
                Text(json, "repair", repair.Repair);
                Number(json, "minutes", repair.Minutes);
                if (repair.Price is { } price) json.WriteNumber("price", price);
                Text(json, "currency", repair.Currency);
                Text(json, "text", repair.Text);
                break;
            case PutBackDone done:
                Texts(json, "items", done.Items);
                Number(json, "minutes", done.Minutes);
                break;
            case HandedOver handed:
                Text(json, "to", handed.To);
                Text(json, "text", handed.Text);
                break;
            case JobClosed closed:
                Text(json, "outcome", EventNames.NameOf(EventNames.Outcomes, closed.Outcome));
                Text(json, "text", closed.Text);
                break;
        }
    }

    private static void Write(Utf8JsonWriter json, JobOptions options)
    {
        Texts(json, "toolsAtHand", options.ToolsAtHand);
        Texts(json, "unreachablePlaces", options.UnreachablePlaces);
        json.WriteBoolean("helperPresent", options.HelperPresent);
        if (options.RemoteStarterPresent) json.WriteBoolean("remoteStarterPresent", true);
        if (options.ValueOfAnHour is { } value) json.WriteNumber("valueOfAnHour", value);
        Text(json, "currency", options.Currency);
        Write(json, options.Meter);
        Number(json, "leadMetres", options.LeadMetres);
        Flag(json, "clamp", options.Clamp);
        Flag(json, "testLamp", options.TestLamp);
        Flag(json, "scanTool", options.ScanTool);
        Flag(json, "spareRelay", options.SpareRelay);
        Flag(json, "smellOfFuelOrImpact", options.SmellOfFuelOrImpact);
        if (options.MeterAtHand is not { } meter) return;
        json.WriteStartObject("meterAtHand");
        json.WriteNumber("inputOhms", meter.InputOhms);
        json.WriteNumber("lowImpedanceOhms", meter.LowImpedanceOhms);
        json.WriteNumber("leadOhms", meter.LeadOhms);
        json.WriteNumber("counts", meter.Counts);
        json.WriteNumber("gainAccuracy", meter.GainAccuracy);
        json.WriteNumber("countAccuracy", meter.CountAccuracy);
        json.WriteNumber("jackAmps", meter.JackAmps);
        json.WriteNumber("lampWatts", meter.LampWatts);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, HistoryUsed? learned)
    {
        if (learned is null) return;
        json.WriteStartObject("learned");
        json.WriteNumber("jobs", learned.Jobs);
        json.WriteNumber("circuitJobs", learned.CircuitJobs);
        json.WriteNumber("kindStrength", learned.KindStrength);
        json.WriteNumber("circuitStrength", learned.CircuitStrength);
        Counts(json, "kinds", learned.Kinds);
        Counts(json, "suspects", learned.Suspects);
        json.WriteEndObject();
    }

    private static void Counts(Utf8JsonWriter json, string name, ValueList<CountUsed> counts)
    {
        json.WriteStartArray(name);
        foreach (var count in counts)
        {
            json.WriteStartObject();
            Text(json, "name", count.Name);
            json.WriteNumber("jobs", count.Jobs);
            json.WriteNumber("expected", count.Expected);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter json, string name, double? number)
    {
        if (number is { } told) json.WriteNumber(name, told);
    }

    private static void Flag(Utf8JsonWriter json, string name, bool? flag)
    {
        if (flag is { } told) json.WriteBoolean(name, told);
    }

    private static void Write(Utf8JsonWriter json, MeterUsed? meter)
    {
        if (meter is null) return;
        json.WriteStartObject("meter");
        json.WriteNumber("inputOhms", meter.InputOhms);
        json.WriteNumber("resolution", meter.Resolution);
        Text(json, "accuracy", meter.Accuracy);
        json.WriteNumber("leadOhms", meter.LeadOhms);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Observation observation)
    {
        Text(json, "check", observation.Check);
        Text(json, "kind", observation.Kind);
        json.WriteStartObject("arrangement");
        Text(json, "condition", observation.Arrangement.Condition);
        Texts(json, "unplugged", observation.Arrangement.Unplugged);
        Texts(json, "removed", observation.Arrangement.Removed);
        json.WriteStartArray("jumpers");
        foreach (var jumper in observation.Arrangement.Jumpers)
        {
            json.WriteStartArray();
            json.WriteStringValue(Encoding.UTF8.GetBytes(jumper.From));
            json.WriteStringValue(Encoding.UTF8.GetBytes(jumper.To));
            json.WriteEndArray();
        }

        json.WriteEndArray();
        Texts(json, "opened", observation.Arrangement.Opened);
        json.WriteEndObject();
        Text(json, "instrument", observation.Instrument);
        Text(json, "red", observation.Red);
        Text(json, "black", observation.Black);
        Text(json, "about", observation.About);
        Number(json, "lampWatts", observation.LampWatts);
        Write(json, observation.Meter);
        Text(json, "typed", observation.Typed);
        json.WriteStartObject("value");
        switch (observation.Value)
        {
            case ReadingParse.Number number:
                json.WriteNumber("number", number.Value);
                Text(json, "quantity", EventNames.NameOf(EventNames.Quantities, number.Quantity));
                if (number.Resolution is { } resolution) json.WriteNumber("resolution", resolution);
                if (number.Unsteady) json.WriteBoolean("unsteady", true);
                break;
            case ReadingParse.Word word:
                Text(json, "word", word.Answer.Id);
                break;
            default:
                json.WriteBoolean("overLimit", true);
                break;
        }

        json.WriteEndObject();
        if (observation.Confirmed) json.WriteBoolean("confirmed", true);
    }

    private static void Texts(Utf8JsonWriter json, string name, ValueList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts) json.WriteStringValue(Encoding.UTF8.GetBytes(text));
        json.WriteEndArray();
    }

    // By way of UTF-8 bytes, so that half a surrogate pair becomes U+FFFD and not an exception.
    private static void Text(Utf8JsonWriter json, string name, string? text)
    {
        if (text is not null) json.WriteString(name, Encoding.UTF8.GetBytes(text));
    }
}
