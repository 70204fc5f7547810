using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>A resistor that is not a load of its own (a fan's series resistor); resistor packs are several of these.</summary>
public sealed record Resistor(PartNotes Notes, double Ohms) : Part(Notes)
{
    public override string Kind => "resistor";
    public override ImmutableArray<string> Terminals => ["1", "2"];
}

/// <summary>What a sensor is inside.</summary>
public enum SensorType { Switch, Ntc, Potentiometer }

/// <summary>A sensor: a switch (1, 2), an NTC (1, 2) or a potentiometer (supply, signal, ground).</summary>
/// <param name="Ohms">NTC: ohms at <paramref name="NominalCelsius"/>; potentiometer: end to end; switch: closed contact.</param>
/// <param name="NominalCelsius">Temperature at which <paramref name="Ohms"/> holds, °C.</param>
/// <param name="BetaKelvin">NTC material constant, K.</param>
/// <param name="Position">Potentiometer: share of travel, 0 to 1; switch: 1 closed, 0 open; NTC: unused.</param>
public sealed record Sensor(
    PartNotes Notes, SensorType Type, double Ohms, double NominalCelsius, double BetaKelvin, double Position)
    : Part(Notes)
{
    public override string Kind => "sensor";

    public override ImmutableArray<string> Terminals =>
        Type == SensorType.Potentiometer ? ["supply", "signal", "ground"] : ["1", "2"];

    public override (string In, string Out)? PassThrough =>
        Type == SensorType.Potentiometer ? null : ("1", "2");
}
