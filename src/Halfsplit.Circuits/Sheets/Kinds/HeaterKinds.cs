using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

/// <summary>A heater, or a horn taken as its mean current: given by its watts or by its ohms.</summary>
internal abstract class ResistiveLoadKind(string word, bool sounds) : PartKind<Heater>(word)
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        var works = map.Range("works", Unit.Volt, Limits.Volts);
        var usual = defaults["heater.run-volts"].Value;
        if (map.Entry("ohms") is null)
        {
            var (watts, volts) = RatedText.Read(map, "watts", "120 W at 12 V", Unit.Watt, Limits.Watts, usual);
            return new Heater(notes, works, volts * volts / watts, volts, sounds);
        }

        if (map.Entry("watts") is { } both)
        {
            map.State.Error(both.Key, "sheet.watts-or-ohms", map.Owner);
        }

        return new Heater(
            notes, works,
            map.RequiredQuantity("ohms", Unit.Ohm, Limits.Ohms),
            map.Quantity("at", Unit.Volt, Limits.Volts, usual),
            sounds);
    }

    protected override bool Describes(Heater part) => part.Sounds == sounds;

    protected override void Write(Heater part, MapWriter map, ComponentDefaults defaults)
    {
        // Watts where they are the rounder number and give back the same ohms.
        var watts = Math.Round(part.RunVolts * part.RunVolts / part.Ohms, 3);
        if (Limits.Watts.Contains(watts) && part.RunVolts * part.RunVolts / watts == part.Ohms)
        {
            RatedText.Write(map, "watts", watts, Unit.Watt, part.RunVolts);
        }
        else
        {
            map.Quantity("ohms", part.Ohms, Unit.Ohm);
            map.Quantity("at", part.RunVolts, Unit.Volt, defaults["heater.run-volts"].Value);
        }

        map.Range("works", part.WorksVolts, Unit.Volt);
    }
}

internal sealed class HeaterKind() : ResistiveLoadKind("heater", sounds: false);

internal sealed class SounderKind() : ResistiveLoadKind("sounder", sounds: true);

internal sealed class SolenoidKind() : PartKind<Solenoid>("solenoid")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) => new Solenoid(
        notes,
        map.Range("works", Unit.Volt, Limits.Volts),
        map.Quantity("ohms", Unit.Ohm, Limits.Ohms, defaults["solenoid.ohms"].Value),
        map.Quantity("at", Unit.Volt, Limits.Volts, defaults.NominalVolts),
        map.Quantity("pulls in", Unit.Volt, Limits.Volts, defaults["solenoid.pull-in-volts"].Value),
        SuppressionText.Read(map));

    protected override void Write(Solenoid part, MapWriter map, ComponentDefaults defaults)
    {
        map.Quantity("ohms", part.Ohms, Unit.Ohm, defaults["solenoid.ohms"].Value);
        map.Quantity("at", part.RunVolts, Unit.Volt, defaults.NominalVolts);
        map.Quantity("pulls in", part.PullInVolts, Unit.Volt, defaults["solenoid.pull-in-volts"].Value);
        SuppressionText.Write(map, part.Suppression);
        map.Range("works", part.WorksVolts, Unit.Volt);
    }
}
