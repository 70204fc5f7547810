using System.Globalization;
using System.Text;
using System.Text.Json;
using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.BrowserSmoke;

/// <summary>
/// What the browser is asked to do, and the desktop beside it: a whole job on a shipped sheet, a hidden bad ground, from
/// the complaint to the proven repair. The test compares the two answers, so the answer must not depend on the machine,
/// the time or the culture.
/// </summary>
public static class SmokeJob
{
    private const int MostMoves = 40;

    /// <summary>Runs the engine and returns its answer as one JSON object.</summary>
    public static string Run()
    {
        var texts = new TextCatalog(Language.English, CircuitTexts.Source, DiagnosisTexts.Source);
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            // Words come from embedded resources, which trimming must leave in.
            json.WriteString("message", texts.Say(new Message("wiring.unknown-part", "K1")));
            json.WriteString("nachricht", texts.In(Language.German).Say(new Message("wiring.unknown-part", "K1")));
            json.WriteString("antwort", AnswerWords.In(Language.German).TextOf(AnswerWord.NoBeep));
            json.WriteStartArray("moves");
            var proven = Play(ShippedSheets.Load("pump-feed"), new Fault("G2", FaultModes.Resistive, 15), json);
            json.WriteEndArray();
            json.WriteBoolean("proven", proven);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static bool Play(Circuit circuit, Fault fault, Utf8JsonWriter json)
    {
        var complaint = circuit.Complaints[0];
        var investigation = Investigation.Open(circuit, complaint);
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        List<Fault> faults = [fault];
        for (var move = 0; move < MostMoves; move++)
        {
            var step = investigation.Next();
            if (step.Check is not { } check)
            {
                return step.IsProven;
            }

            var answer = Answer(simulator, faults, check);
            json.WriteStringValue($"{check.Id} => {answer}");
            investigation.Record(move.ToString(CultureInfo.InvariantCulture), check, answer);
        }

        return false;
    }

    private static ReadingValue Answer(CircuitSimulator simulator, List<Fault> faults, Check check)
    {
        if (check.Subject == CheckSubject.Repair)
        {
            faults.RemoveAll(f => f.Part == check.Probe.About);
            return new ReadingParse.Word(AnswerWord.Done);
        }

        if (check.Subject == CheckSubject.LoadWork)
        {
            var fares = simulator.Simulate(check.Arrangement, faults).Load(check.Probe.About!).Condition;
            return new ReadingParse.Word(check.Answers[fares switch
            {
                LoadCondition.Works => 0,
                LoadCondition.Weak => 1,
                _ => 2,
            }][0]);
        }

        if (check.Subject != CheckSubject.Number || check.Probe.Instrument != Instrument.Volts)
        {
            return new ReadingParse.Word(AnswerWord.NotSure);
        }

        var volts = simulator.Read(check.Arrangement, faults, check.Probe).Value;
        return new ReadingParse.Number(Math.Round(volts, 2), Quantity.Volts, 0.01);
    }
}
