using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

/// <summary>The key <c>suppression</c>: none, diode, resistor, or "resistor 680 ohm" where the ohms count.</summary>
internal static class SuppressionText
{
    private const string Key = "suppression";

    /// <summary>For a coil whose resistor has known ohms; without a resistor they are 0.</summary>
    public static (Suppression Suppression, double Ohms) ReadWithOhms(MapReader map, ComponentDefaults defaults)
    {
        if (map.Text(Key) is { } text && text.StartsWith("resistor ", StringComparison.Ordinal))
        {
            var ohms = map.Parse(map.Entry(Key)!.Value.Value, text[9..], Unit.Ohm, Limits.Ohms);
            return (Suppression.Resistor, ohms ?? defaults.RelaySuppressionOhms);
        }

        var suppression = Read(map);
        return (suppression, suppression == Suppression.Resistor ? defaults.RelaySuppressionOhms : 0);
    }

    public static Suppression Read(MapReader map) => map.Word(
        Key,
        Suppression.None,
        ("none", Suppression.None),
        ("resistor", Suppression.Resistor),
        ("diode", Suppression.Diode));

    public static void Write(MapWriter map, Suppression suppression, double? ohms = null)
    {
        var resistor = ohms is { } value ? $"resistor {Quantity.Write(value, Unit.Ohm)}" : "resistor";
        switch (suppression)
        {
            case Suppression.Resistor:
                map.Text(Key, resistor);
                break;
            case Suppression.Diode:
                map.Text(Key, "diode");
                break;
            default:
                break;
        }
    }
}
