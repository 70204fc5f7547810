using System.Text.Json;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Jobs.Events;

/// <summary>Reads an event from its line. A line with a readable id is always an event, if only an unknown one.</summary>
internal static class JobEventReader
{
    /// <summary>The event of a JSON object; null if it has no id.</summary>
    public static JobEvent? Read(JsonElement line)
    {
        if (line.ValueKind != JsonValueKind.Object) return null;
        var trouble = new EventFields.Trouble();
        var fields = new EventFields(line, trouble);
        var id = fields.Id("id");
        if (trouble.Field is not null) return null;

        var kind = fields.Text("event");
        var at = fields.Instant("at");
        var by = fields.OptionalText("by");
        var happened = trouble.Field is null ? ReadBody(fields, kind, id, at) : null;
        if (happened is not null && trouble.Field is null) return happened with { By = by };

        if (at == default) at = DateTimeOffset.FromUnixTimeMilliseconds(Math.Min(id.Milliseconds, LatestMilliseconds));
        var problem = trouble.Field is null ? null : new Message("job.event-unreadable", id.ToString(), kind, trouble.Field);
        return new UnknownEvent(id, at, kind, problem) { By = by };
    }

    private static readonly long LatestMilliseconds = DateTimeOffset.MaxValue.ToUnixTimeMilliseconds();

    private static JobEvent? ReadBody(EventFields fields, string kind, EventId id, DateTimeOffset at) => kind switch
    {
        EventNames.Opened => new JobOpened(
            id,
            at,
            fields.Text("sheetName"),
            fields.Text("sheet"),
            fields.Text("dataVersion"),
            fields.Text("engineVersion"))
        {
            Complaint = fields.OptionalText("complaint") ?? "",
            Meant = fields.OptionalObject("meant") is { } meant
                ? new ComplaintMeant(meant.Text("load"), meant.Text("is"), meant.Text("in"))
                : null,
            VehicleNotes = fields.OptionalText("vehicleNotes") ?? "",
            Options = ReadOptions(fields.OptionalObject("options")),
            Learned = ReadLearned(fields.OptionalObject("learned")),
        },
        EventNames.Noticed => new ThingNoticed(id, at, fields.Text("name")) { About = fields.OptionalText("about") },
        EventNames.Found => new PartFound(id, at, fields.Text("aid"), fields.Text("found"), fields.Text("part"))
        {
            Typed = fields.Texts("typed"),
            Ohms = fields.OptionalNumber("ohms"),
            Confirmed = fields.Flag("confirmed"),
        },
        EventNames.Reading => new ReadingTaken(id, at, ReadObservation(fields)),
        EventNames.Proof => new ProofTaken(id, at, ReadObservation(fields)) { Proves = fields.OptionalId("proves") },
        EventNames.Withdrawn => new ReadingWithdrawn(id, at, fields.Id("withdraws"))
        {
            Reason = fields.OptionalText("reason"),
        },
        EventNames.Skipped => new CheckSkipped(id, at, fields.Choice("reason", EventNames.SkipReasons))
        {
            Check = fields.OptionalText("check"),
            Place = fields.OptionalText("place"),
            Text = fields.OptionalText("text"),
        },
        EventNames.Note => new NoteWritten(id, at, fields.Text("text")),
        EventNames.Described => new JobDescribed(id, at)
        {
            Vehicle = fields.OptionalText("vehicle"),
            Owner = fields.OptionalText("owner"),
            Worker = fields.OptionalText("worker"),
        },
        EventNames.Repair => new RepairDone(id, at, fields.Text("suspect"), fields.Text("repair"))
        {
            Minutes = fields.OptionalNumber("minutes"),
            Price = fields.OptionalDecimal("price"),
            Currency = fields.OptionalText("currency"),
            Text = fields.OptionalText("text"),
        },
        EventNames.PutBack => new PutBackDone(id, at)
        {
            Items = fields.Texts("items"),
            Minutes = fields.OptionalNumber("minutes"),
        },
        EventNames.HandedOver => new HandedOver(id, at)
        {
            To = fields.OptionalText("to"),
            Text = fields.OptionalText("text"),
        },
        EventNames.Closed => new JobClosed(id, at, fields.Choice("outcome", EventNames.Outcomes))
        {
            Text = fields.OptionalText("text"),
        },
        _ => null,
    };

    private static JobOptions ReadOptions(EventFields? given) => given is not { } fields
        ? new JobOptions()
        : new JobOptions
        {
            ToolsAtHand = fields.Texts("toolsAtHand"),
            UnreachablePlaces = fields.Texts("unreachablePlaces"),
            HelperPresent = fields.Flag("helperPresent"),
            RemoteStarterPresent = fields.Flag("remoteStarterPresent"),
            ValueOfAnHour = fields.OptionalDecimal("valueOfAnHour"),
            Currency = fields.OptionalText("currency"),
            Meter = ReadMeter(fields.OptionalObject("meter")),
            LeadMetres = fields.OptionalNumber("leadMetres"),
            Clamp = fields.OptionalFlag("clamp"),
            TestLamp = fields.OptionalFlag("testLamp"),
            ScanTool = fields.OptionalFlag("scanTool"),
            SpareRelay = fields.OptionalFlag("spareRelay"),
            SmellOfFuelOrImpact = fields.OptionalFlag("smellOfFuelOrImpact"),
            MeterAtHand = ReadMeterAtHand(fields.OptionalObject("meterAtHand")),
        };

    private static HistoryUsed? ReadLearned(EventFields? given) => given is not { } fields
        ? null
        : new HistoryUsed(
            fields.Count("jobs"), fields.Count("circuitJobs"), fields.Number("kindStrength"), fields.Number("circuitStrength"))
        {
            Kinds = fields.Objects("kinds", ReadCount),
            Suspects = fields.Objects("suspects", ReadCount),
        };

    private static CountUsed ReadCount(EventFields fields) =>
        new(fields.Text("name"), fields.Count("jobs"), fields.Number("expected"));

    private static MeterAtHand? ReadMeterAtHand(EventFields? given) => given is not { } fields
        ? null
        : new MeterAtHand(
            fields.Number("inputOhms"),
            fields.Number("lowImpedanceOhms"),
            fields.Number("leadOhms"),
            fields.Number("counts"),
            fields.Number("gainAccuracy"),
            fields.Number("countAccuracy"),
            fields.Number("jackAmps"),
            fields.Number("lampWatts"));

    private static MeterUsed? ReadMeter(EventFields? given) => given is not { } fields
        ? null
        : new MeterUsed(
            fields.Number("inputOhms"), fields.Number("resolution"), fields.Text("accuracy"), fields.Number("leadOhms"));

    private static Observation ReadObservation(EventFields fields) => new(
        fields.Text("check"),
        fields.Text("kind"),
        ReadArrangement(fields),
        fields.Text("instrument"),
        fields.Text("typed"),
        ReadValue(fields))
    {
        Red = fields.OptionalText("red"),
        Black = fields.OptionalText("black"),
        About = fields.OptionalText("about"),
        LampWatts = fields.OptionalNumber("lampWatts"),
        Meter = ReadMeter(fields.OptionalObject("meter")),
        Confirmed = fields.Flag("confirmed"),
    };

    private static ArrangementUsed ReadArrangement(EventFields parent)
    {
        if (parent.OptionalObject("arrangement") is not { } fields)
        {
            return parent.Missing("arrangement", new ArrangementUsed(""));
        }

        return new ArrangementUsed(fields.Text("condition"))
        {
            Unplugged = fields.Texts("unplugged"),
            Removed = fields.Texts("removed"),
            Jumpers = fields.Jumpers("jumpers"),
            Opened = fields.Texts("opened"),
        };
    }

    private static ReadingValue ReadValue(EventFields parent)
    {
        if (parent.OptionalObject("value") is { } fields)
        {
            if (fields.OptionalNumber("number") is { } number)
            {
                return new ReadingParse.Number(
                    number, fields.Choice("quantity", EventNames.Quantities), fields.OptionalNumber("resolution"))
                {
                    Unsteady = fields.Flag("unsteady"),
                };
            }

            if (AnswerWord.Find(fields.OptionalText("word")) is { } word) return new ReadingParse.Word(word);
            if (fields.Flag("overLimit")) return new ReadingParse.OverLimit();
        }

        return parent.Missing("value", new ReadingParse.OverLimit());
    }
}
