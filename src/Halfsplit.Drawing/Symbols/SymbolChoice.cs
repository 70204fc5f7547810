using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;

namespace Halfsplit.Drawing.Symbols;

/// <summary>Which symbol a part gets.</summary>
internal static class SymbolChoice
{
    public static PartBox For(Part part, Potentials potentials) => part switch
    {
        Battery battery => new BatteryBox(battery),
        Splice or Metal or Ground => new BarBox(part),
        Relay relay => new RelayBox(relay, potentials),
        Switch change when SwitchBox.CanDraw(change) => new SwitchBox(change, potentials),
        Lamp { Filaments.Length: > 1 } lamp => new LampBox(lamp, potentials),
        Module module => new PinBox(part, t => ModulePins.SideOf(module, t)),
        _ when part.Terminals.Length == 2 => new TwoPoleBox(part, potentials),
        _ => new PinBox(part, t => potentials.Of(new(part.Id, t)) > Middle(part, potentials) ? Side.Top : Side.Bottom),
    };

    private static double Middle(Part part, Potentials potentials)
    {
        var shares = part.Terminals.Select(t => potentials.Of(new(part.Id, t))).ToList();
        return (shares.Max() + shares.Min()) / 2;
    }
}
