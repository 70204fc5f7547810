using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

internal sealed class RelayKind() : PartKind<Relay>("relay")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        var (suppression, ohms) = SuppressionText.ReadWithOhms(map, defaults);
        return new Relay(
            notes,
            map.Word(
                "contacts",
                RelayContacts.Make,
                ("make", RelayContacts.Make),
                ("break", RelayContacts.Break),
                ("changeover", RelayContacts.Changeover),
                ("twin make", RelayContacts.TwinMake)),
            map.Quantity("coil", Unit.Ohm, Limits.Ohms, defaults.RelayCoilOhms),
            map.Quantity("pulls in", Unit.Volt, Limits.Volts, defaults.RelayPullInVolts),
            map.Quantity("drops out", Unit.Volt, Limits.Volts, defaults.RelayDropOutVolts),
            map.Quantity("contact", Unit.Ohm, Limits.Ohms, defaults.RelayContactOhms),
            suppression,
            ohms);
    }

    protected override void Write(Relay part, MapWriter map, ComponentDefaults defaults)
    {
        map.Text("contacts", part.Contacts switch
        {
            RelayContacts.Make => null,
            RelayContacts.Break => "break",
            RelayContacts.Changeover => "changeover",
            _ => "twin make",
        });
        map.Quantity("coil", part.CoilOhms, Unit.Ohm, defaults.RelayCoilOhms);
        map.Quantity("pulls in", part.PullInVolts, Unit.Volt, defaults.RelayPullInVolts);
        map.Quantity("drops out", part.DropOutVolts, Unit.Volt, defaults.RelayDropOutVolts);
        map.Quantity("contact", part.ContactOhms, Unit.Ohm, defaults.RelayContactOhms);
        SuppressionText.Write(map, part.Suppression, part.SuppressionOhms);
    }
}
