using Halfsplit.Circuits.Messages;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>Puts measurements, roles and details into words.</summary>
public static class PinText
{
    /// <summary>What to do with the leads.</summary>
    public static Message Of(PinTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        return (test.Setting, test.Power) switch
        {
            (PinSetting.Power, _) => new Message("pins.power", test.First, test.Second),
            (PinSetting.Volts, _) when test.Condition is { } condition => new Message("pins.volts-in", test.First, condition),
            (PinSetting.Volts, _) => new Message("pins.volts", test.First),
            (_, { } power) => new Message("pins.ohms-with-power", test.First, test.Second, power.Plus, power.Minus),
            _ when test.Second == PinTest.Body => new Message("pins.ohms-body", test.First),
            _ => new Message("pins.ohms", test.First, test.Second),
        };
    }

    /// <summary>A role of a relay's pin in words; a function that a person named stays as it is.</summary>
    public static object Of(PinRole role) => role.Role switch
    {
        RelayPuzzle.Coil or RelayPuzzle.CoilPlus or RelayPuzzle.CoilMinus or RelayPuzzle.Common or RelayPuzzle.Make or RelayPuzzle.Break
            or RelayPuzzle.Nowhere or RelayPuzzle.Closed or CavityPuzzle.Empty => new Message($"pins.role-{role.Role}"),
        _ => role.Role,
    };

    /// <summary>An assignment, pin by pin.</summary>
    public static Message Of(PinOdds assignment)
    {
        ArgumentNullException.ThrowIfNull(assignment);
        return assignment.Roles.Length == 0
            ? new Message("pins.none")
            : assignment.Roles.Select(r => new Message("pins.is", r.Pin, Of(r))).Aggregate((left, right) => new Message("pins.and", left, right));
    }

    /// <summary>What a measurement should show, in short: "12.4 V", "85 ohm", "OL".</summary>
    public static Message Of(PinForecast forecast)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        object shown = forecast switch
        {
            { IsLive: true } => new Message("pins.shows-live"),
            { Expected: PinExpectation.Near { InDecades: true } near } => new Message("pins.shows-ohms", new Figure(Math.Pow(10, near.Mean), "G3")),
            { Expected: PinExpectation.Near near } => new Message("pins.shows-volts", new Figure(near.Mean, "0.0")),
            _ when ReferenceEquals(forecast.Expected, PinExpectation.Open) => new Message("pins.shows-open"),
            _ => new Message("pins.shows-anything"),
        };
        return forecast.Condition is { } condition ? new Message("pins.shows-in", shown, condition) : new Message("pins.shows-rest", shown);
    }

    public static Message Detail(string detail) => new($"pins.detail-{detail}");
}
