using System.Globalization;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Drawing.Symbols;

/// <summary>What is written beside a symbol beyond its name: rating, ohms, slot. Numbers and units only.</summary>
internal static class PartValues
{
    public static IEnumerable<string> Of(Part part)
    {
        var slot = part.Notes.Slot is { } named ? $"[{named}]" : "";
        var value = part switch
        {
            Battery b => Number(b.NominalVolts, "V"),
            Fuse f => Number(f.RatingAmps, "A"),
            Breaker b => Number(b.RatingAmps, "A"),
            Ptc p => Number(p.TripAmps, "A"),
            Relay r => Ohms(r.CoilOhms),
            Resistor r => Ohms(r.Ohms),
            Sensor { Type: not SensorType.Switch } s => Ohms(s.Ohms),
            Solenoid s => Ohms(s.Ohms),
            Lamp l => string.Join(" / ", l.Filaments.Select(f => f.Watts.ToString("0.#", CultureInfo.InvariantCulture))) + " W",
            Heater h => Number(h.RatedAmps, "A"),
            Motor m => Number(m.RunAmps, "A"),
            Starter s => Number(s.RunAmps, "A"),
            Alternator a => Number(a.RegulatedVolts, "V"),
            _ => "",
        };
        yield return value.Length > 0 && slot.Length > 0 ? $"{value} {slot}" : value + slot;
    }

    private static string Ohms(double ohms) => ohms >= 1000 ? Number(ohms / 1000, "kΩ") : Number(ohms, "Ω");

    private static string Number(double value, string unit) => value.ToString("0.##", CultureInfo.InvariantCulture) + " " + unit;
}
