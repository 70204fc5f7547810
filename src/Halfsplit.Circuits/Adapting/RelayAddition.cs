using Halfsplit.Circuits.Adapting.Wiring;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting;

/// <summary>
/// Puts a relay before a load: its coil takes the load's place, and its contact feeds the load from a permanent feed
/// through a fuse of its own.
/// </summary>
internal static class RelayAddition
{
    /// <summary>Metres of a wire between parts that sit side by side.</summary>
    private const double Shortest = 0.3;

    public static Message? Apply(AdaptingDraft draft, AddRelay change)
    {
        if (NameSearch.FedTerminal(draft.Parent, change.Load, out var problem) is not { } fed
            || NameSearch.NewId(draft, change.Id, "K", out problem) is not { } id)
        {
            return problem;
        }

        var load = (Load)draft.Parent[fed.Part];
        var ways = new Ways(draft.Parent);
        var back = LoadPaths.Return(load);
        var isGroundSwitched = !ways.IsAlwaysGrounded(back);
        if (!ways.IsFed(fed) || !ways.IsGrounded(back))
        {
            return new Message("adapt.not-fed-there", load.Id, fed.ToString());
        }

        if (isGroundSwitched && LoadPaths.Judge(draft, ways, load) is { Code: not "adapt.already-ground-side" } cannot)
        {
            return cannot;
        }

        if (new[] { fed, back }.FirstOrDefault(t => draft.Wiring.LinksAt(t).Count > 1 && (t == fed || isGroundSwitched)) is { Part: not null } crowded)
        {
            return new Message("adapt.several-at", crowded.ToString());
        }

        string? place = null;
        if (change.Place is { } choice)
        {
            if (PlaceChanges.Find(draft, choice, out problem) is not { } found)
            {
                return problem;
            }

            place = found.Name;
        }

        Rewire(draft, change, load, fed, id, place, isGroundSwitched, ways);
        return null;
    }

    private static void Rewire(
        AdaptingDraft draft, AddRelay change, Load load, TerminalName fed, string id, string? place, bool isGroundSwitched, Ways ways)
    {
        var feed = Chain.From(draft, fed).First;
        var source = Source(draft, ways, place);
        if (place is null)
        {
            place = draft.Find(source.Part)?.Notes.Place ?? draft.Find(feed.There.Part)?.Notes.Place ?? load.Notes.Place;
            draft.Assume(place is null ? "adapt.assumed-no-place" : "adapt.assumed-place-of", id, place ?? "");
        }

        var gauge = LoadPaths.Area(draft, load);
        var name = change.Name?.Trim();
        var values = draft.Defaults;
        draft.Add(new Relay(
            new PartNotes(id, string.IsNullOrEmpty(name) ? null : name, place), RelayContacts.Make, values.RelayCoilOhms,
            values.RelayPullInVolts, values.RelayDropOutVolts, values.RelayContactOhms, Suppression.None, values.RelaySuppressionOhms));
        draft.Assume("adapt.assumed-relay", id, values.RelayCoilOhms);

        // What fed the load feeds the coil; the contact feeds the load. Nobody knows how the wire is divided.
        var (toCoil, toLoad) = feed.Link.Wire is { } wire
            ? Divided(draft, wire, feed.There, new TerminalName(id, "86"), feed.Here)
            : ((PathWire?)null, null);
        draft.Wiring.MoveEnd(feed.Turned, new TerminalName(id, "87"));
        feed.Link.Wire = toLoad;
        draft.Wiring.Add([feed.There, new TerminalName(id, "86")], [new Link(toCoil, false)]);
        var end = Chain.From(draft, LoadPaths.Return(load)).End;
        var ground = LoadPaths.GroundNear(draft, place, isGroundSwitched || draft.Find(end.Part) is not (Ground or Metal or Splice) ? null : end);
        if (isGroundSwitched)
        {
            var back = Chain.From(draft, LoadPaths.Return(load)).First;
            var grounded = back.Link.Wire;
            draft.Wiring.MoveEnd(back.Turned, ground);
            back.Link.Wire = LoadPaths.NewWire(draft, gauge, back.Here, ground);
            draft.Wiring.Add(
                [new TerminalName(id, "85"), back.There], [new Link(grounded is null ? null : grounded with { LengthGuessed = true }, false)]);
        }
        else
        {
            draft.Wiring.Add([new TerminalName(id, "85"), ground], [new Link(LoadPaths.NewWire(draft, LoadPaths.CoilGauge(draft), new(id, "85"), ground), false)]);
        }

        var metres = Feed(draft, load, id, source, gauge, place);
        var toGround = LoadPaths.NewWire(draft, gauge, new(id, "85"), ground).LengthWritten;
        draft.Assume("adapt.assumed-new-wires", id, ground.ToString(), metres, toGround);
    }

    /// <summary>The pieces of a wire with a relay between them: by how far apart the places are, and no shorter than that.</summary>
    private static (PathWire ToCoil, PathWire ToLoad) Divided(AdaptingDraft draft, PathWire wire, TerminalName feed, TerminalName relay, TerminalName load)
    {
        var (near, far) = (LoadPaths.MetresApart(draft, feed, relay), LoadPaths.MetresApart(draft, relay, load));
        double Piece(double apart) => near + far > 0 ? Math.Max(Math.Max(apart, Shortest), wire.Length * apart / (near + far)) : wire.Length;
        return (LoadPaths.WithLength(wire, Piece(near)), LoadPaths.WithLength(wire with { Name = null }, Piece(far)));
    }

    /// <summary>The contact's feed: a fuse at the source, and a wire.</summary>
    /// <returns>The wire's length.</returns>
    private static string Feed(AdaptingDraft draft, Load load, string relay, TerminalName source, WireGauge gauge, string? place)
    {
        var amps = load.RatedAmps * draft.Defaults["guessed.fuse-over-load"].Value;
        var sold = new[] { FuseType.BladeStandard, FuseType.BladeMaxi, FuseType.Link }
            .SelectMany(t => FuseTable.Ratings(t).Select(r => (Type: t, Rating: r)))
            .ToList();
        var (type, rating) = sold.Find(f => f.Rating >= amps) is { Rating: > 0 } fit ? fit : sold[^1];
        var fuse = draft.FreeId("F");
        draft.Add(new Fuse(new PartNotes(fuse, null, draft.Find(source.Part)?.Notes.Place ?? place), rating, type));
        var wire = LoadPaths.NewWire(draft, gauge, new(fuse, "2"), new(relay, "30"));
        draft.Wiring.Add(
            [source, new TerminalName(fuse, "1"), new TerminalName(fuse, "2"), new TerminalName(relay, "30")],
            [new Link(null, false), new Link(null, true), new Link(wire, false)]);
        draft.Assume("adapt.assumed-feed", relay, source.ToString(), fuse, rating);
        return wire.LengthWritten;
    }

    /// <summary>Where there are always volts: a splice near the relay, else the first one, else the battery's post.</summary>
    private static TerminalName Source(AdaptingDraft draft, Ways ways, string? place)
    {
        var splices = draft.Parent.Parts.OfType<Splice>().Where(s => ways.IsAlwaysFed(new TerminalName(s.Id))).ToList();
        var splice = splices.Find(s => place is not null && s.Notes.Place == place) ?? splices.FirstOrDefault();
        return splice is null ? new TerminalName(draft.Parent.Battery.Id, "pos") : new TerminalName(splice.Id);
    }
}
