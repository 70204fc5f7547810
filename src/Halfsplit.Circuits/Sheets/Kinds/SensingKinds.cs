using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

internal sealed class ResistorKind() : PartKind<Resistor>("resistor")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) =>
        new Resistor(notes, map.RequiredQuantity("ohms", Unit.Ohm, Limits.Ohms));

    protected override void Write(Resistor part, MapWriter map, ComponentDefaults defaults) =>
        map.Quantity("ohms", part.Ohms, Unit.Ohm);
}

/// <summary>A sensor; which keys it has depends on its type, the rest of the model's fields keep fixed values.</summary>
internal sealed class SensorKind() : PartKind<Sensor>("sensor")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        if (map.Entry("type") is null)
        {
            map.Missing("type", "type: ntc");
        }

        var type = map.Word(
            "type", SensorType.Switch,
            ("switch", SensorType.Switch), ("ntc", SensorType.Ntc), ("potentiometer", SensorType.Potentiometer));
        var celsius = defaults["sensor.ntc-celsius"].Value;
        var beta = defaults["sensor.ntc-beta"].Value;
        switch (type)
        {
            case SensorType.Ntc:
                var (ohms, at) = map.Pair("ohms", Unit.Ohm, Limits.Ohms, "at", Unit.Celsius, Limits.Celsius, celsius)
                    ?? (defaults["sensor.ntc-ohms"].Value, celsius);
                return new Sensor(notes, type, ohms, at, map.Quantity("beta", Unit.Kelvin, Limits.Kelvin, beta), 0);
            case SensorType.Potentiometer:
                return new Sensor(
                    notes, type,
                    map.Quantity("ohms", Unit.Ohm, Limits.Ohms, defaults["sensor.potentiometer-ohms"].Value),
                    celsius, beta,
                    map.Quantity("position", Unit.Percent, Limits.Share, 0.5));
            default:
                return new Sensor(
                    notes, type,
                    map.Quantity("ohms", Unit.Ohm, Limits.Ohms, defaults["sensor.switch-ohms"].Value),
                    celsius, beta,
                    map.YesNo("closed", false) ? 1 : 0);
        }
    }

    protected override void Write(Sensor part, MapWriter map, ComponentDefaults defaults)
    {
        switch (part.Type)
        {
            case SensorType.Ntc:
                map.Text("type", "ntc");
                map.Text("ohms", $"{Quantity.Write(part.Ohms, Unit.Ohm)} at {Quantity.Write(part.NominalCelsius, Unit.Celsius)}");
                map.Quantity("beta", part.BetaKelvin, Unit.Kelvin, defaults["sensor.ntc-beta"].Value);
                break;
            case SensorType.Potentiometer:
                map.Text("type", "potentiometer");
                map.Quantity("ohms", part.Ohms, Unit.Ohm, defaults["sensor.potentiometer-ohms"].Value);
                map.Quantity("position", part.Position, Unit.Percent, 0.5);
                break;
            default:
                map.Text("type", "switch");
                map.Quantity("ohms", part.Ohms, Unit.Ohm, defaults["sensor.switch-ohms"].Value);
                map.YesNo("closed", part.Position > 0.5);
                break;
        }
    }
}
