using System.Text.Json;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Pins;

namespace Halfsplit.Cli.Output;

/// <summary>What <c>pins --json</c> says.</summary>
public static class PinsJson
{
    private const int Shown = 50;

    public static void Write(Utf8JsonWriter json, Terminal terminal, SheetPins pins, PinSearch search)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(pins);
        ArgumentNullException.ThrowIfNull(search);
        json.WriteString("part", pins.Part.Id);
        json.WriteString("rest", pins.Rest);
        json.Texts("conditions", pins.Conditions);
        json.Texts("cavities", pins.Puzzle.Pins);
        json.Array("functions", pins.Functions, function =>
        {
            json.WriteString("name", function.Name);
            json.WriteString("terminal", function.Terminal?.ToString());
            json.Array("shows", function.Forecasts, forecast => Forecast(json, forecast));
        });
        json.Array("alike", pins.Alike, alike =>
        {
            json.Texts("functions", alike.Names);
            json.WriteString("partedIn", alike.PartedIn);
        });
        json.Texts("readings", search.Readings.Select(r => r.Test.Id));
        json.Texts("misfits", search.Misfits.Select(r => r.Test.Id));
        json.WriteNumber("possible", search.Possible);
        json.Array("assignments", search.Assignments.Take(Shown), assignment => Assignment(json, assignment));
        if (search.Settled is { } settled)
        {
            json.Object("settled", () => Assignment(json, settled));
        }
        else
        {
            json.WriteNull("settled");
        }

        if (search.Next is { } next)
        {
            json.Object("next", () =>
            {
                json.WriteString("reading", next.Id);
                json.WriteString("text", terminal.Say(PinText.Of(next)));
            });
        }
        else
        {
            json.WriteNull("next");
        }
    }

    private static void Assignment(Utf8JsonWriter json, PinOdds assignment)
    {
        json.Odds("odds", assignment.Odds);
        json.Array("pins", assignment.Roles, role =>
        {
            json.WriteString("cavity", role.Pin);
            json.WriteString("function", role.Role);
        });
    }

    private static void Forecast(Utf8JsonWriter json, PinForecast forecast)
    {
        json.WriteString("reading", forecast.Setting == PinSetting.Volts ? "volts" : "ohms");
        json.WriteString("condition", forecast.Condition);
        json.WriteBoolean("live", forecast.IsLive);
        json.WriteBoolean("open", ReferenceEquals(forecast.Expected, PinExpectation.Open));
        var near = forecast.Expected as PinExpectation.Near;
        json.Number("mean", near is null ? null : near.InDecades ? Math.Pow(10, near.Mean) : near.Mean);
        json.Number("spread", near?.Spread);
        json.WriteBoolean("spreadInDecades", near?.InDecades ?? false);
    }
}
