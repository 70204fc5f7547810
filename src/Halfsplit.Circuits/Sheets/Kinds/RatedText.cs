using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

/// <summary>A rating with the volts it holds at: "5.5 A at 13 V", "55 W at 12 V".</summary>
internal static class RatedText
{
    /// <summary>The rating of a key that must be there; without "at", the usual volts.</summary>
    public static (double Value, double Volts) Read(
        MapReader map, string key, string example, Unit unit, Limits limits, double usualVolts)
    {
        if (map.Entry(key) is null)
        {
            map.Missing(key, $"{key}: {example}");
        }

        return map.Pair(key, unit, limits, "at", Unit.Volt, Limits.Volts, usualVolts) ?? (1, usualVolts);
    }

    public static void Write(MapWriter map, string key, double value, Unit unit, double volts) =>
        map.Text(key, $"{Quantity.Write(value, unit)} at {Quantity.Write(volts, Unit.Volt)}");
}
