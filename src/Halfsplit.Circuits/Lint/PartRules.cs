using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Lint;

/// <summary>Values of one part that do not fit each other, and parts in each other's way.</summary>
internal static class PartRules
{
    public static void Check(Circuit circuit, CircuitGraph graph, LintReport report)
    {
        var slots = new Dictionary<(string? Place, string Slot), string>();
        foreach (var part in circuit.Parts)
        {
            Values(part, report);
            Polarity(graph, part, report);
            if (part.Notes.Slot is { } slot && !slots.TryAdd((part.Notes.Place, slot), part.Id))
            {
                report.AtValue(
                    ProblemSeverity.Warning, ["parts", part.Id, "slot"], "lint.slot-twice", slot, slots[(part.Notes.Place, slot)]);
            }

            if (part.Notes.Slot is { } wanted && circuit.FindPlace(part.Notes.Place) is { Grid: { } grid } place && grid.Find(wanted) is null)
            {
                report.AtValue(
                    ProblemSeverity.Warning, ["parts", part.Id, "slot"], "lint.slot-not-in-grid", wanted, place.Name,
                    Spelling.Hint(wanted, grid.Named()));
            }

            if (FuelWords.StandsAtFuel(part) && !HasCaution(circuit, part))
            {
                report.AtKey(ProblemSeverity.Warning, ["parts", part.Id], "lint.fuel-caution", part.Id, FuelWords.Caution);
            }
        }

        if (circuit.Conditions.IsEmpty)
        {
            report.AtKey(ProblemSeverity.Warning, ["parts"], "lint.no-conditions");
        }
    }

    private static void Values(Part part, LintReport report)
    {
        switch (part)
        {
            case Relay relay when relay.DropOutVolts >= relay.PullInVolts:
                Volts(part, relay.DropOutVolts, relay.PullInVolts, report);
                break;
            case Starter starter when starter.ReleaseVolts >= starter.EngageVolts:
                Volts(part, starter.ReleaseVolts, starter.EngageVolts, report);
                break;
            case Motor motor when motor.WindingOhms * motor.RunAmps >= motor.RunVolts:
                report.AtValue(
                    ProblemSeverity.Error, ["parts", part.Id, "winding"], "lint.winding", part.Id,
                    Quantity.Write(motor.WindingOhms, Unit.Ohm), Quantity.Write(motor.RunAmps, Unit.Ampere),
                    Quantity.Write(motor.RunVolts, Unit.Volt));
                break;
            default:
                break;
        }
    }

    private static void Volts(Part part, double drop, double pull, LintReport report) =>
        report.AtValue(
            ProblemSeverity.Error, ["parts", part.Id, "drops out"], "lint.drop-out", part.Id,
            Quantity.Write(drop, Unit.Volt), Quantity.Write(pull, Unit.Volt));

    /// <summary>A diode across a coil conducts, and burns, when the coil is fed the wrong way round.</summary>
    private static void Polarity(CircuitGraph graph, Part part, LintReport report)
    {
        var (plus, minus) = part switch
        {
            Relay { Suppression: Suppression.Diode } => ("86", "85"),
            Solenoid { Suppression: Suppression.Diode } => ("pos", "neg"),
            _ => ("", ""),
        };
        if (plus.Length > 0
            && !graph.IsFed(new TerminalName(part.Id, plus))
            && graph.IsFed(new TerminalName(part.Id, minus)))
        {
            report.AtKey(ProblemSeverity.Error, ["parts", part.Id], "lint.diode-backwards", part.Id, plus, minus);
        }
    }

    private static bool HasCaution(Circuit circuit, Part part) =>
        circuit.Cautions
            .Concat(part.Notes.Cautions)
            .Concat(circuit.FindPlace(part.Notes.Place)?.Cautions ?? [])
            .Contains(FuelWords.Caution);
}
