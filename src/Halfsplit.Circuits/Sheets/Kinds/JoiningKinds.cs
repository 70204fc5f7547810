using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

internal sealed class SpliceKind() : PartKind<Splice>("splice")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) => new Splice(notes);

    protected override void Write(Splice part, MapWriter map, ComponentDefaults defaults) { }
}

internal sealed class MetalKind() : PartKind<Metal>("metal")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) => new Metal(notes);

    protected override void Write(Metal part, MapWriter map, ComponentDefaults defaults) { }
}

internal sealed class GroundKind() : PartKind<Ground>("ground")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) =>
        new Ground(notes, map.Text("on") ?? Metal.Body);

    protected override void Write(Ground part, MapWriter map, ComponentDefaults defaults) =>
        map.Text("on", part.Metal, Metal.Body);
}

internal sealed class ConnectorKind() : PartKind<Connector>("connector")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) =>
        new Connector(notes, map.Texts("b"), map.YesNo("sealed", false));

    protected override void Write(Connector part, MapWriter map, ComponentDefaults defaults)
    {
        if (part.BelongsToB is [var single])
        {
            map.Text("b", single);
        }
        else
        {
            map.Texts("b", part.BelongsToB);
        }

        map.YesNo("sealed", part.Sealed);
    }
}

internal sealed class DiodeKind() : PartKind<Diode>("diode")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) =>
        new Diode(notes, map.Quantity("forward", Unit.Volt, Limits.Volts, defaults.DiodeForwardVolts));

    protected override void Write(Diode part, MapWriter map, ComponentDefaults defaults) =>
        map.Quantity("forward", part.ForwardVolts, Unit.Volt, defaults.DiodeForwardVolts);
}
