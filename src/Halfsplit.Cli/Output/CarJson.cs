using System.Text.Json;
using Halfsplit.Cli.Cars;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Output;

/// <summary>A simulated car as JSON.</summary>
public static class CarJson
{
    public static void Write(Utf8JsonWriter json, string sheet, SimulatedSetup setup, CarReport car, ShownReading? reading)
    {
        json.WriteString("sheet", sheet);
        Arrangement(json, setup.Arrangement, setup.Arrangement.Opened);
        json.Texts("faults", setup.Faults.Select(f => f.ToString()));
        json.WriteBoolean("steady", car.Point.IsSteady);
        json.Texts("chatter", car.Point.Chatter);
        json.WriteString("unsettled", car.Point.Unsettled);
        json.Object("volts", () =>
        {
            foreach (var (terminal, volts) in car.Volts)
            {
                json.Number(terminal.ToString(), volts);
            }
        });
        json.Object("amps", () =>
        {
            foreach (var (part, amps) in car.Amps)
            {
                json.Number(part, amps);
            }
        });
        json.Object("wireAmps", () =>
        {
            foreach (var (wire, amps) in car.WireAmps)
            {
                json.Number(wire.Id, amps);
            }
        });
        States(json, car);
        if (reading is null)
        {
            json.WriteNull("reading");
        }
        else
        {
            json.Object("reading", () => Reading(json, reading));
        }
    }

    /// <summary>The arrangement, in the shape of <c>next --json</c>.</summary>
    public static void Arrangement(Utf8JsonWriter json, Arrangement arrangement, IEnumerable<string> opened) =>
        json.Object("arrangement", () =>
        {
            json.WriteString("condition", arrangement.Condition);
            json.Texts("unplugged", arrangement.Unplugged);
            json.Texts("removed", arrangement.Removed);
            json.WriteStartArray("jumpers");
            foreach (var jumper in arrangement.Jumpers)
            {
                json.WriteStartArray();
                json.WriteStringValue(jumper.From.ToString());
                json.WriteStringValue(jumper.To.ToString());
                json.WriteEndArray();
            }

            json.WriteEndArray();
            json.Texts("opened", opened);
        });

    private static void States(Utf8JsonWriter json, CarReport car)
    {
        json.Object("relays", () =>
        {
            foreach (var (relay, pulledIn, volts) in car.Relays)
            {
                json.Object(relay.Id, () =>
                {
                    json.WriteString("state", pulledIn ? "pulled-in" : "at-rest");
                    json.Number("coilVolts", volts);
                });
            }
        });
        json.Object("fuses", () =>
        {
            foreach (var (fuse, blown, amps) in car.Fuses)
            {
                json.Object(fuse.Id, () =>
                {
                    json.WriteString("state", blown ? "blown" : "whole");
                    json.Number("amps", amps);
                });
            }
        });
        json.Object("modules", () =>
        {
            foreach (var (module, awake, outputs) in car.Modules)
            {
                json.Object(module.Id, () =>
                {
                    json.WriteBoolean("awake", awake);
                    json.Object("outputs", () =>
                    {
                        foreach (var (output, driving) in outputs)
                        {
                            json.WriteString(output, driving ? "on" : "off");
                        }
                    });
                });
            }
        });
        json.Object("loads", () =>
        {
            foreach (var (load, state) in car.Loads)
            {
                json.Object(load.Id, () =>
                {
                    json.WriteString("state", CarReport.Word(state.Condition));
                    json.Number("volts", state.Volts);
                    json.Number("amps", state.Amps);
                    json.WriteBoolean("stalled", state.Stalled);
                });
            }
        });
    }

    private static void Reading(Utf8JsonWriter json, ShownReading reading)
    {
        json.WriteString("instrument", reading.Probe.Instrument.Name());
        json.WriteString("red", reading.Probe.Red?.ToString());
        json.WriteString("black", reading.Probe.Black?.ToString());
        json.WriteString("about", reading.Probe.About);
        json.Number("value", reading.Value);
        json.WriteString("unit", reading.Quantity switch
        {
            Quantity.Ohms => "ohm",
            Quantity.Amperes => "A",
            Quantity.Duty => "1",
            _ => "V",
        });
        json.Number("resolution", reading.Resolution);
        json.WriteString("shown", reading.Shown);
        json.WriteBoolean("overLimit", reading.IsOverLimit);
        json.WriteString("word", reading.Word is { } word ? AnswerWords.English.TextOf(word) : null);
        json.Number("loadedAmps", reading.Prediction.LoadedAmps);
        json.Number("sourceOhms", reading.Prediction.SourceOhms);
        json.WriteString("abstains", reading.Abstains is { } why ? CliTexts.Catalog.Say(why) : null);
    }
}
