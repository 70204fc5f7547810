using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Reporting;

/// <summary>The report as one JSON object, the same in every language: texts are English, numbers SI.</summary>
public static class ReadingsJson
{
    private static readonly JsonWriterOptions Options =
        new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Highest odds written: nothing is certain.</summary>
    private const double MostOdds = 0.999999;

    public static string Write(Report report, TextCatalog texts)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(texts);
        var english = texts.In(Language.English);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            Head(json, report, english);
            json.WriteStartArray("steps");
            foreach (var step in report.Steps)
            {
                json.WriteStartObject();
                Step(json, step, english);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            Finding(json, report.Finding, english);
            Texts(json, "doubts", report.Doubts, english);
            Texts(json, "cautions", report.Cautions, english);
            Cost(json, report.Cost, english);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    internal static string SortName(StepSort sort) => sort switch
    {
        StepSort.Proof => "proof",
        StepSort.Repair => "repair",
        StepSort.Skip => "skip",
        StepSort.PutBack => "put-back",
        _ => "reading",
    };

    internal static string QuantityName(Quantity quantity) => EventNames.NameOf(EventNames.Quantities, quantity);

    private static void Head(Utf8JsonWriter json, Report report, TextCatalog texts)
    {
        json.WriteString("job", report.Job);
        json.WriteString("sheet", report.SheetName);
        json.WriteString("circuit", report.Circuit);
        json.WriteString("vehicle", report.Vehicle);
        json.WriteString("owner", report.Owner);
        json.WriteString("worker", report.Worker);
        json.WriteString("complaint", report.Complaint);
        json.WriteString("opened", report.Opened.ToString("O", CultureInfo.InvariantCulture));
        json.WriteString("ended", report.Ended.ToString("O", CultureInfo.InvariantCulture));
        json.WriteString("standing", report.Standing switch
        {
            ReportStanding.Found => "found",
            ReportStanding.Repaired => "repaired",
            ReportStanding.Proven => "proven",
            ReportStanding.HandedOver => "handed-over",
            ReportStanding.GivenUp => "given-up",
            _ => "going-on",
        });
        Texts(json, "noticed", report.Noticed, texts);
        Texts(json, "bench", report.Bench, texts);
        json.WriteStartArray("notes");
        foreach (var note in report.Notes)
        {
            json.WriteStringValue(note.Text);
        }

        json.WriteEndArray();
    }

    private static void Step(Utf8JsonWriter json, ReportedStep step, TextCatalog texts)
    {
        json.WriteNumber("number", step.Number);
        json.WriteString("sort", SortName(step.Sort));
        json.WriteString("at", step.At.ToString("O", CultureInfo.InvariantCulture));
        json.WriteString("by", step.By);
        json.WriteString("check", step.Check?.Id);
        json.WriteString("what", texts.Say(step.What));
        json.WriteString("condition", step.Check?.Arrangement.Condition);
        json.WriteStartArray("places");
        foreach (var place in step.Places)
        {
            json.WriteStringValue(place);
        }

        json.WriteEndArray();
        json.WriteString("instrument", step.Check?.Probe.Instrument.Name());
        json.WriteString("red", step.Check?.Probe.Red?.ToString());
        json.WriteString("black", step.Check?.Probe.Black?.ToString());
        json.WriteString("about", step.Check?.Probe.About);
        json.WriteString("healthy", step.Healthy?.ToString());
        json.WriteString("typed", step.Typed);
        json.WriteString("read", step.Read?.ToString());
        if (step.Read is ReadingParse.Number number)
        {
            json.WriteString("quantity", QuantityName(number.Quantity));
            json.WriteNumber("amount", number.Value);
        }

        json.WriteBoolean("doubtful", step.IsDoubtful);
        Texts(json, "cleared", step.Cleared, texts);
        Texts(json, "carried", step.Carried, texts);
        Texts(json, "notCleared", step.NotCleared, texts);
        json.WriteNumber("minutes", step.Minutes);
    }

    private static void Finding(Utf8JsonWriter json, ReportedFinding? finding, TextCatalog texts)
    {
        if (finding is null)
        {
            json.WriteNull("finding");
            return;
        }

        json.WriteStartObject("finding");
        json.WriteString("repair", finding.Finding.Repair.Id);
        json.WriteNumber("odds", Math.Clamp(finding.Finding.Odds, 0, MostOdds));
        json.WriteBoolean("actedUpon", finding.IsActedUpon);
        Suspects(json, "blamed", finding.Finding.Blamed.Zip(finding.Blamed, (s, b) => (s.Suspect.Id, b.Text, b.Odds)), texts);
        json.WriteStartArray("restsOn");
        foreach (var number in finding.RestsOn)
        {
            json.WriteNumberValue(number);
        }

        json.WriteEndArray();
        Suspects(json, "notProven", finding.Finding.NotCleared.Zip(finding.NotProven, (s, b) => (s.Suspect.Id, b.Text, b.Odds)), texts);
        json.WriteEndObject();
    }

    private static void Suspects(Utf8JsonWriter json, string name, IEnumerable<(string Id, Message Text, double Odds)> suspects, TextCatalog texts)
    {
        json.WriteStartArray(name);
        foreach (var (id, text, odds) in suspects)
        {
            json.WriteStartObject();
            json.WriteString("id", id);
            json.WriteString("text", texts.Say(text));
            json.WriteNumber("odds", Math.Clamp(odds, 0, MostOdds));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Cost(Utf8JsonWriter json, ReportedCost cost, TextCatalog texts)
    {
        json.WriteNumber("minutes", cost.Minutes);
        json.WriteString("currency", cost.Currency.Length > 0 ? cost.Currency : null);
        json.WriteStartArray("repairs");
        foreach (var repair in cost.Repairs)
        {
            json.WriteStartObject();
            json.WriteString("id", repair.Repair.Id);
            json.WriteString("text", texts.Say(repair.What));
            json.WriteBoolean("done", repair.IsDone);
            json.WriteNumber("priceLow", repair.Repair.Price.Low);
            json.WriteNumber("priceHigh", repair.Repair.Price.High);
            if (repair.Told is { } told)
            {
                json.WriteNumber("price", told);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Texts(Utf8JsonWriter json, string name, ImmutableArray<Message> messages, TextCatalog texts)
    {
        json.WriteStartArray(name);
        foreach (var message in messages)
        {
            json.WriteStringValue(texts.Say(message));
        }

        json.WriteEndArray();
    }
}
