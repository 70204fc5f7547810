using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Jobs.Practice;

/// <summary>
/// One car of a sheet: the same parts, each a little off its value. The spreads are rough; common practice, no published
/// source.
/// </summary>
public static class DrawnParts
{
    /// <summary>A circuit with drawn values. Its wiring and names are those of the sheet.</summary>
    /// <param name="wider">Multiplies every spread; 1 for the usual.</param>
    public static Circuit Draw(Circuit circuit, SeededChance chance, double wider = 1)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(chance);
        var built = CircuitBuilder.Build(new CircuitDraft(
            circuit.Title,
            [.. circuit.Parts.Select(p => Draw(p, chance, wider))],
            [.. circuit.Paths.Select(p => new WiringPath([.. p.Items.Select(i => Draw(i, chance, wider))]))],
            circuit.Places, circuit.Conditions, circuit.Complaints, circuit.Cautions, circuit.Summary));
        return built.Circuit ?? throw new ArgumentException("The circuit's own wiring can't be built again.", nameof(circuit));
    }

    private static Part Draw(Part part, SeededChance chance, double wider) => part switch
    {
        Battery battery => battery with
        {
            RestVolts = battery.RestVolts * (1 + (0.01 * wider * chance.Bell())),
            InternalResistance = battery.InternalResistance * chance.Factor(0.2 * wider),
        },
        Relay relay => relay with
        {
            CoilOhms = relay.CoilOhms * chance.Factor(0.05 * wider),
            PullInVolts = relay.PullInVolts * chance.Factor(0.06 * wider),
            DropOutVolts = relay.DropOutVolts * chance.Factor(0.06 * wider),
            ContactOhms = relay.ContactOhms * chance.Factor(0.3 * wider),
        },
        Switch change => change with { ContactOhms = change.ContactOhms * chance.Factor(0.3 * wider) },
        Motor motor => motor with
        {
            RunAmps = motor.RunAmps * chance.Factor(0.07 * wider),
            WindingOhms = motor.WindingOhms * chance.Factor(0.07 * wider),
        },
        Lamp lamp => lamp with
        {
            Filaments = [.. lamp.Filaments.Select(f => f with { Watts = f.Watts * chance.Factor(0.04 * wider) })],
        },
        Heater heater => heater with { Ohms = heater.Ohms * chance.Factor(0.05 * wider) },
        Solenoid solenoid => solenoid with { Ohms = solenoid.Ohms * chance.Factor(0.05 * wider) },
        Resistor resistor => resistor with { Ohms = resistor.Ohms * chance.Factor(0.04 * wider) },
        _ => part,
    };

    private static PathItem Draw(PathItem item, SeededChance chance, double wider) =>
        item is PathWire wire ? wire with { Length = wire.Length * chance.Factor(0.1 * wider) } : item;
}
