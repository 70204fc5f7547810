using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

internal sealed class MotorKind() : PartKind<Motor>("motor")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        var (amps, volts) = RatedText.Read(map, "runs", "5.5 A at 13 V", Unit.Ampere, Limits.Amps, defaults.NominalVolts);
        return new Motor(
            notes,
            map.Range("works", Unit.Volt, Limits.Volts),
            amps,
            volts,
            map.Quantity("winding", Unit.Ohm, Limits.Ohms, UsualWinding(amps, volts, defaults)),
            map.OptionalQuantity("starts", Unit.Volt, Limits.Volts));
    }

    protected override void Write(Motor part, MapWriter map, ComponentDefaults defaults)
    {
        RatedText.Write(map, "runs", part.RunAmps, Unit.Ampere, part.RunVolts);
        map.Quantity("winding", part.WindingOhms, Unit.Ohm, UsualWinding(part.RunAmps, part.RunVolts, defaults));
        map.Quantity("starts", part.StartVolts, Unit.Volt);
        map.Range("works", part.WorksVolts, Unit.Volt);
    }

    /// <summary>Held still, a motor draws a few times its running current.</summary>
    private static double UsualWinding(double amps, double volts, ComponentDefaults defaults) =>
        volts / (amps * defaults.MotorStallRatio);
}

internal sealed class StarterKind() : PartKind<Starter>("starter")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        var (amps, volts) = map.Pair(
                "runs", Unit.Ampere, Limits.Amps, "at", Unit.Volt, Limits.Volts, defaults["starter.run-volts"].Value)
            ?? (defaults["starter.run-amps"].Value, defaults["starter.run-volts"].Value);
        return new Starter(
            notes,
            map.Range("works", Unit.Volt, Limits.Volts),
            amps,
            volts,
            Ohms("winding", "starter.winding-ohms"),
            Ohms("pull-in winding", "starter.pull-in-ohms"),
            Ohms("hold-in winding", "starter.hold-in-ohms"),
            map.Quantity("pulls in", Unit.Volt, Limits.Volts, defaults["starter.engage-volts"].Value),
            map.Quantity("drops out", Unit.Volt, Limits.Volts, defaults["starter.release-volts"].Value));

        double Ohms(string key, string name) => map.Quantity(key, Unit.Ohm, Limits.Ohms, defaults[name].Value);
    }

    protected override void Write(Starter part, MapWriter map, ComponentDefaults defaults)
    {
        RatedText.Write(map, "runs", part.RunAmps, Unit.Ampere, part.RunVolts);
        map.Quantity("winding", part.WindingOhms, Unit.Ohm, defaults["starter.winding-ohms"].Value);
        map.Quantity("pull-in winding", part.PullInOhms, Unit.Ohm, defaults["starter.pull-in-ohms"].Value);
        map.Quantity("hold-in winding", part.HoldInOhms, Unit.Ohm, defaults["starter.hold-in-ohms"].Value);
        map.Quantity("pulls in", part.EngageVolts, Unit.Volt, defaults["starter.engage-volts"].Value);
        map.Quantity("drops out", part.ReleaseVolts, Unit.Volt, defaults["starter.release-volts"].Value);
        map.Range("works", part.WorksVolts, Unit.Volt);
    }
}
