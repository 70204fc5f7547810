using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Adapting;

/// <summary>Puts a connector or a splice into a wire.</summary>
internal static class WireInsertion
{
    /// <summary>Shorter pieces are none: a sheet's lengths go down to a millimetre.</summary>
    private const int Decimals = 3;

    public static Message? Connector(AdaptingDraft draft, InsertConnector change) => Insert(
        draft, change.Wire, change.Id, "C", change.Name, change.Place, change.Share,
        notes => new Connector(notes, [], false), id => [new(id, "1a"), new(id, "1b")]);

    public static Message? Splice(AdaptingDraft draft, InsertSplice change) => Insert(
        draft, change.Wire, change.Id, "SP", change.Name, change.Place, change.Share,
        notes => new Splice(notes), id => [new(id)]);

    private static Message? Insert(
        AdaptingDraft draft, string wireName, string? wanted, string prefix, string? name, PlaceChoice? where, double? share,
        Func<PartNotes, Part> make, Func<string, TerminalName[]> terminals)
    {
        if (NameSearch.Wire(draft.Parent, wireName, out var problem) is not { } wire
            || NameSearch.NewId(draft, wanted, prefix, out problem) is not { } id
            || Halves(draft, wire, share, out problem) is not var (before, behind)
            || !At(draft, wire, id, where, out var place, out problem))
        {
            return problem;
        }

        var plain = name?.Trim();
        draft.Add(make(new PartNotes(id, string.IsNullOrEmpty(plain) ? null : plain, place)));
        draft.Wiring.Insert(wire.Spec, terminals(id), before, behind);
        return null;
    }

    /// <summary>The pieces of the wire before and behind; both guesses where nobody knows the share.</summary>
    private static (PathWire Before, PathWire Behind)? Halves(AdaptingDraft draft, Wire wire, double? share, out Message? problem)
    {
        if (share is <= 0 or >= 1 or double.NaN)
        {
            problem = new Message("adapt.bad-share");
            return null;
        }

        var written = wire.Spec.LengthWritten;
        var digits = Quantity.NumberLength(written);
        var unit = written[digits..];
        var whole = double.Parse(written[..digits], CultureInfo.InvariantCulture);
        var first = Math.Round(whole * (share ?? 0.5), Decimals);
        var second = Math.Round(whole - first, Decimals);
        PathWire? Piece(double length)
        {
            var text = length.ToString("R", CultureInfo.InvariantCulture) + unit;
            return Quantity.TryParse(text, Unit.Metre, Limits.Metres, out var metres, out _)
                ? wire.Spec with { Length = metres, LengthWritten = text, LengthGuessed = wire.Spec.LengthGuessed || share is null }
                : null;
        }

        if (Piece(first) is not { } before || Piece(second) is not { } behind)
        {
            problem = new Message("adapt.too-short", wire.Id, written);
            return null;
        }

        problem = null;
        if (share is null)
        {
            draft.Assume("adapt.assumed-middle", wire.Id, before.LengthWritten, behind.LengthWritten);
        }

        // A wire's own name stays with its first piece: no two wires share one.
        return (before, behind with { Name = null });
    }

    /// <summary>Where it is; what nobody knows is taken from what the wire goes to.</summary>
    private static bool At(AdaptingDraft draft, Wire wire, string id, PlaceChoice? where, out string? place, out Message? problem)
    {
        problem = null;
        if (where is not null)
        {
            place = PlaceChanges.Find(draft, where, out problem)?.Name;
            return place is not null;
        }

        place = wire.Spec.Place ?? draft.Find(wire.To.Part)?.Notes.Place ?? draft.Find(wire.From.Part)?.Notes.Place;
        draft.Assume(place is null ? "adapt.assumed-no-place" : "adapt.assumed-place-of", id, place ?? "");
        return true;
    }
}
