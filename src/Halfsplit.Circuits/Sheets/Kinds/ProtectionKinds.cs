using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

internal sealed class FuseKind() : PartKind<Fuse>("fuse")
{
    /// <summary>Up to here a fuse that does not say its type is a standard blade, above a maxi blade.</summary>
    private const double LargestStandardAmps = 40;

    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        var rating = map.RequiredQuantity("rating", Unit.Ampere, Limits.FuseAmps);
        var type = map.Word(
            "type",
            Usual(rating),
            ("mini", FuseType.BladeMini),
            ("standard", FuseType.BladeStandard),
            ("maxi", FuseType.BladeMaxi),
            ("link", FuseType.Link));
        return new Fuse(notes, rating, type);
    }

    protected override bool Describes(Fuse part) => part.Type != FuseType.Link;

    protected override void Write(Fuse part, MapWriter map, ComponentDefaults defaults)
    {
        map.Quantity("rating", part.RatingAmps, Unit.Ampere);
        if (part.Type != Usual(part.RatingAmps))
        {
            map.Text("type", part.Type switch
            {
                FuseType.BladeMini => "mini",
                FuseType.BladeStandard => "standard",
                _ => "maxi",
            });
        }
    }

    private static FuseType Usual(double rating) =>
        rating <= LargestStandardAmps ? FuseType.BladeStandard : FuseType.BladeMaxi;
}

internal sealed class FusibleLinkKind() : PartKind<Fuse>("fusible link")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) =>
        new Fuse(notes, map.RequiredQuantity("rating", Unit.Ampere, Limits.FuseAmps), FuseType.Link);

    protected override bool Describes(Fuse part) => part.Type == FuseType.Link;

    protected override void Write(Fuse part, MapWriter map, ComponentDefaults defaults) =>
        map.Quantity("rating", part.RatingAmps, Unit.Ampere);
}

internal sealed class BreakerKind() : PartKind<Breaker>("breaker")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) =>
        new Breaker(notes, map.RequiredQuantity("rating", Unit.Ampere, Limits.FuseAmps));

    protected override void Write(Breaker part, MapWriter map, ComponentDefaults defaults) =>
        map.Quantity("rating", part.RatingAmps, Unit.Ampere);
}

internal sealed class PtcKind() : PartKind<Ptc>("ptc")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults) => new Ptc(
        notes,
        map.RequiredQuantity("trips at", Unit.Ampere, Limits.FuseAmps),
        map.Quantity("ohms", Unit.Ohm, Limits.Ohms, defaults.PtcColdOhms));

    protected override void Write(Ptc part, MapWriter map, ComponentDefaults defaults)
    {
        map.Quantity("trips at", part.TripAmps, Unit.Ampere);
        map.Quantity("ohms", part.ColdOhms, Unit.Ohm, defaults.PtcColdOhms);
    }
}
