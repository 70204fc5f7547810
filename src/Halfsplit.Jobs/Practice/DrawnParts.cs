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
    public static Circuit Draw(Circuit circuit, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(chance);
        var built = CircuitBuilder.Build(new CircuitDraft(
            circuit.Title,
            [.. circuit.Parts.Select(p => Draw(p, chance))],
            [.. circuit.Paths.Select(p => new WiringPath([.. p.Items.Select(i => Draw(i, chance))]))],
            circuit.Places, circuit.Conditions, circuit.Complaints, circuit.Cautions, circuit.Summary));
        return built.Circuit ?? throw new ArgumentException("The circuit's own wiring can't be built again.", nameof(circuit));
    }

    private static Part Draw(Part part, SeededChance chance) => part switch
    {
        Battery battery => battery with
        {
            RestVolts = battery.RestVolts * (1 + (0.01 * chance.Bell())),
            InternalResistance = battery.InternalResistance * chance.Factor(0.2),
        },
        Relay relay => relay with
        {
            CoilOhms = relay.CoilOhms * chance.Factor(0.05),
            PullInVolts = relay.PullInVolts * chance.Factor(0.06),
            DropOutVolts = relay.DropOutVolts * chance.Factor(0.06),
            ContactOhms = relay.ContactOhms * chance.Factor(0.3),
        },
        Switch change => change with { ContactOhms = change.ContactOhms * chance.Factor(0.3) },
        Motor motor => motor with
        {
            RunAmps = motor.RunAmps * chance.Factor(0.07),
            WindingOhms = motor.WindingOhms * chance.Factor(0.07),
        },
        Lamp lamp => lamp with
        {
            Filaments = [.. lamp.Filaments.Select(f => f with { Watts = f.Watts * chance.Factor(0.04) })],
        },
        Heater heater => heater with { Ohms = heater.Ohms * chance.Factor(0.05) },
        Solenoid solenoid => solenoid with { Ohms = solenoid.Ohms * chance.Factor(0.05) },
        Resistor resistor => resistor with { Ohms = resistor.Ohms * chance.Factor(0.04) },
        _ => part,
    };

    private static PathItem Draw(PathItem item, SeededChance chance) =>
        item is PathWire wire ? wire with { Length = wire.Length * chance.Factor(0.1) } : item;
}
