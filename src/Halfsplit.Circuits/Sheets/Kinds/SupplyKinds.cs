using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

internal sealed class BatteryKind() : PartKind<Battery>("battery")
{
    /// <summary>Nominal volts a vehicle's low-voltage battery can have.</summary>
    public static Limits Nominal { get; } = new(6, 48);

    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) => new Battery(
        notes,
        map.Quantity("nominal", Unit.Volt, Nominal, 12),
        map.Quantity("rests at", Unit.Volt, Limits.Volts, defaults.BatteryRestVolts),
        map.Quantity("internal resistance", Unit.Ohm, Limits.Ohms, defaults.BatteryInternalOhms));

    protected override void Write(Battery part, MapWriter map, ComponentDefaults defaults)
    {
        map.Quantity("nominal", part.NominalVolts, Unit.Volt, 12);
        map.Quantity("rests at", part.RestVolts, Unit.Volt, defaults.BatteryRestVolts);
        map.Quantity("internal resistance", part.InternalResistance, Unit.Ohm, defaults.BatteryInternalOhms);
    }
}

internal sealed class AlternatorKind() : PartKind<Alternator>("alternator")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) => new Alternator(
        notes,
        map.Quantity("holds", Unit.Volt, Limits.Volts, defaults.AlternatorRegulatedVolts),
        map.Quantity("limit", Unit.Ampere, Limits.Amps, defaults.AlternatorMaximumAmps),
        map.Quantity("internal resistance", Unit.Ohm, Limits.Ohms, defaults.AlternatorOutputOhms),
        map.Quantity("excitation", Unit.Ampere, Limits.AmpsOrZero, defaults.AlternatorExcitationAmps));

    protected override void Write(Alternator part, MapWriter map, ComponentDefaults defaults)
    {
        map.Quantity("holds", part.RegulatedVolts, Unit.Volt, defaults.AlternatorRegulatedVolts);
        map.Quantity("limit", part.MaximumAmps, Unit.Ampere, defaults.AlternatorMaximumAmps);
        map.Quantity("internal resistance", part.OutputResistance, Unit.Ohm, defaults.AlternatorOutputOhms);
        map.Quantity("excitation", part.ExcitationAmps, Unit.Ampere, defaults.AlternatorExcitationAmps);
    }
}
