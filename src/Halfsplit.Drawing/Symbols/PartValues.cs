using System.Runtime.CompilerServices;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Drawing.Symbols;

/// <summary>
/// What is written beside a symbol beyond its name: rating, ohms, slot. Numbers and units only; the drawing writes them as its
/// language does.
/// </summary>
internal static class PartValues
{
    public static IEnumerable<FormattableString> Of(Part part)
    {
        var slot = part.Notes.Slot is { } named ? $"[{named}]" : "";
        FormattableString? value = part switch
        {
            Battery b => Number(b.NominalVolts, "V"),
            Fuse f => Number(f.RatingAmps, "A"),
            Breaker b => Number(b.RatingAmps, "A"),
            Ptc p => Number(p.TripAmps, "A"),
            Relay r => Ohms(r.CoilOhms),
            Resistor r => Ohms(r.Ohms),
            Sensor { Type: not SensorType.Switch } s => Ohms(s.Ohms),
            Solenoid s => Ohms(s.Ohms),
            Lamp l => Watts([.. l.Filaments.Select(f => (object)f.Watts)]),
            Heater h => Number(h.RatedAmps, "A"),
            Motor m => Number(m.RunAmps, "A"),
            Starter s => Number(s.RunAmps, "A"),
            Alternator a => Number(a.RegulatedVolts, "V"),
            _ => null,
        };
        if (value is not null || slot.Length > 0)
        {
            yield return value is null ? $"{slot}" : slot.Length > 0 ? $"{value} {slot}" : value;
        }
    }

    private static FormattableString Ohms(double ohms) => ohms >= 1000 ? Number(ohms / 1000, "kΩ") : Number(ohms, "Ω");

    private static FormattableString Number(double value, string unit) => $"{value:0.##} {unit}";

    /// <summary>One number for each filament.</summary>
    private static FormattableString Watts(object[] watts) => FormattableStringFactory.Create(
        string.Join(" / ", watts.Select((_, i) => $"{{{i}:0.#}}")) + " W", watts);
}
