using System.Text.Json;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Output;

/// <summary>What <c>next --json</c> says: all that an outside simulator needs to do the check. The shape is a contract.</summary>
public static class NextJson
{
    private const int Asked = 1000;

    public static void Write(Utf8JsonWriter json, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(session);
        var isDone = session.IsDone;
        var next = session.Next;
        json.WriteBoolean("done", isDone);
        if (isDone || next.Check is null)
        {
            json.WriteNull("check");
        }
        else
        {
            json.Object("check", () => Check(json, session, next.Check, next));
        }

        Suspects(json, "suspects", session.Investigation.Suspects);
        if (session.Finding is { } finding)
        {
            json.Object("finding", () => Finding(json, session, finding));
        }
        else
        {
            json.WriteNull("finding");
        }

        json.WriteString("reason", Say(next.Reason));
        WhyJson.Plan(json, isDone ? null : next.Plan);
        WhyJson.Compared(json, isDone ? null : session.Compared);
        TroubleJson.Write(json, session);
        json.Array("alternatives", isDone ? [] : next.Alternatives, ranked =>
        {
            json.WriteString("id", ranked.Check.Id);
            json.WriteString("title", Say(CheckTitle.Of(session.Circuit, ranked.Check)));
            json.WriteNumber("minutes", ranked.Effort.Minutes);
            json.Number("bits", ranked.Bits);
        });
        json.Texts("problems", session.Problems.Select(Say));
    }

    public static void Suspects(Utf8JsonWriter json, string name, IEnumerable<SuspectOdds> suspects) =>
        json.Array(name, suspects, suspect =>
        {
            json.WriteString("id", suspect.Suspect.Id);
            json.WriteString("fault", suspect.Faults.Length == 0 ? null : string.Join(' ', suspect.Faults));
            json.Texts("faults", suspect.Faults.Select(f => f.ToString()));
            json.WriteString("part", suspect.Suspect.IsNone ? null : suspect.Suspect.Modes[0].Owner);
            json.Number("severity", suspect.Severity);
            json.Odds("odds", suspect.Odds);
        });

    private static void Check(Utf8JsonWriter json, JobSession session, Check check, NextStep next)
    {
        var investigation = session.Investigation;
        json.WriteString("id", check.Id);
        json.WriteString("kind", JobSession.KindName(check.Kind));
        json.WriteString("title", Say(CheckTitle.Of(session.Circuit, check)));
        CarJson.Arrangement(json, check.Arrangement, session.Position.After(session.Circuit, check).Arrangement.Opened);
        json.WriteString("instrument", check.Probe.Instrument.Name());
        json.WriteString("red", check.Probe.Red?.ToString());
        json.WriteString("black", check.Probe.Black?.ToString());
        json.WriteString("about", check.Probe.About);
        Meter(json, session.MeterFor(check));
        json.Texts("answers", Answers(check, investigation));
        json.Number("minutes", next.Effort?.Minutes);
        json.Number("riskMinutes", Risk.MinutesOf(session.Circuit, check));
        json.Texts("steps", next.Effort?.Steps.Select(Say) ?? []);
        json.Texts("cautions", next.Cautions.Select(Say));
        json.Array("expected", check.Kind is CheckKind.Repair or CheckKind.PutBack ? [] : investigation.Expected(check, Asked), reading =>
        {
            json.WriteString("suspect", reading.Suspect?.Suspect.Id);
            json.Number("mean", reading.Mean);
            json.Number("spread", reading.Spread);
            if (reading.Word is { } word)
            {
                json.Texts("words", [Text(session, check, word)]);
            }
            else
            {
                json.WriteNull("words");
            }
        });
    }

    private static void Meter(Utf8JsonWriter json, MeterReport? meter)
    {
        if (meter is null)
        {
            json.WriteNull("meter");
            return;
        }

        json.Object("meter", () =>
        {
            json.Number("inputOhms", meter.InputOhms);
            json.Number("resolution", meter.Resolution);
            json.WriteString("accuracy", meter.Accuracy);
            json.Number("leadOhms", meter.LeadOhms);
            if (meter.LampWatts is { } watts)
            {
                json.Number("lampWatts", watts);
            }
        });
    }

    /// <summary>What <c>record</c> takes here.</summary>
    public static IEnumerable<string> Answers(Check check, Investigation investigation)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(investigation);
        var expected = investigation.Expect(check);
        if (expected.Quantity is not null)
        {
            yield return "a number with a unit";
        }

        if (expected.Quantity == Quantity.Ohms)
        {
            yield return "OL";
        }

        foreach (var word in expected.Words)
        {
            if (check.Kind is not (CheckKind.Repair or CheckKind.PutBack) || word != AnswerWord.NotSure)
            {
                yield return AnswerWords.English.TextOf(word);
            }
        }
    }

    public static void Finding(Utf8JsonWriter json, JobSession session, Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        Suspects(json, "blamed", finding.Blamed);
        json.Array(
            "restsOn",
            finding.RestsOn.Select(id => session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == id)).OfType<SessionEntry>(),
            entry =>
            {
                json.WriteString("id", entry.Event.Id.ToString());
                json.WriteNumber("number", entry.Number);
                json.WriteString("check", entry.Check?.Id);
                json.WriteString("value", entry.Value is { } value ? EntryText.Value(value) : null);
            });
        Suspects(json, "notCleared", finding.NotCleared);
        json.Object("repair", () =>
        {
            json.WriteString("id", finding.Repair.Id);
            json.WriteString("target", finding.Repair.Target);
            json.WriteString("text", Say(CheckTitle.Repair(session.Circuit, finding.Repair.Id)));
            json.WriteNumber("minutes", finding.Repair.Minutes);
            json.WriteNumber("priceLow", finding.Repair.Price.Low);
            json.WriteNumber("priceHigh", finding.Repair.Price.High);
            json.Texts("renews", finding.Repair.Renews);
        });
        json.Odds("odds", finding.Odds);
        json.WriteBoolean("settled", finding.IsSettled);
        ExplainingJson.NotProven(json, session);
    }

    private static string Text(JobSession session, Check check, string word) => AnswerWord.Find(word) is { } known
        ? AnswerWords.English.TextOf(OfferedWords.For(session.Circuit, check, known))
        : word;

    private static string Say(Message message) => CliTexts.Catalog.Say(message);
}
