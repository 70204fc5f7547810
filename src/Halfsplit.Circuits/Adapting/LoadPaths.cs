using Halfsplit.Circuits.Adapting.Wiring;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Adapting;

/// <summary>Moves the ends of loads' wires, and makes what then carries their current fit for it.</summary>
internal static class LoadPaths
{
    /// <summary>The load's terminal away from its feed.</summary>
    public static TerminalName Return(Load load) => new(load.Id, load.Across.Neg);

    /// <summary>Why a load's way to ground can't be moved; null where it can.</summary>
    public static Message? Judge(AdaptingDraft draft, Ways ways, Load load)
    {
        var back = Return(load);
        if (load.Terminals.Count(t => t != load.Across.Neg && ways.IsWired(new TerminalName(load.Id, t))) > 1)
        {
            return new Message("adapt.one-ground-for-two", load.Id);
        }

        if (!ways.IsAlwaysGrounded(back))
        {
            return new Message("adapt.already-ground-side", load.Id);
        }

        return draft.Wiring.LinksAt(back).Count == 1 ? null : new Message("adapt.several-at", back.ToString());
    }

    /// <summary>Takes the load's own way to ground to another terminal; it then has a wire of a length nobody knows.</summary>
    /// <returns>Where the way ended before, and the wire that was moved.</returns>
    public static (TerminalName Ground, PathWire Wire) MoveReturn(AdaptingDraft draft, Load load, TerminalName to)
    {
        var chain = Chain.From(draft, Return(load));
        var last = chain.Links[^1];
        draft.Wiring.MoveEnd(last.Turned, to);
        var wire = last.Link.Wire is { } own
            ? WithLength(own, Math.Max(own.Length, MetresApart(draft, last.Here, to)))
            : NewWire(draft, Area(draft, load), last.Here, to);
        last.Link.Wire = wire;
        draft.Assume("adapt.assumed-moved-wire", load.Id, last.Here.ToString(), to.ToString(), wire.LengthWritten);
        return (last.There, wire);
    }

    /// <summary>A wire that the parent has not, as long as it has to be at least and a little more.</summary>
    public static PathWire NewWire(AdaptingDraft draft, WireGauge gauge, TerminalName from, TerminalName to) => WithLength(
        new PathWire(gauge, 0, "", null, null, null, GaugeGuessed: true),
        draft.Defaults["guessed.new-wire-metres"].Value + MetresApart(draft, from, to));

    /// <summary>The wire with another length that nobody measured; as it was where it is no other.</summary>
    public static PathWire WithLength(PathWire wire, double metres)
    {
        metres = metres == wire.Length ? metres : Math.Round(metres, 1);
        return metres == wire.Length
            ? wire with { LengthGuessed = true }
            : wire with { Length = metres, LengthWritten = FormattableString.Invariant($"{metres}m"), LengthGuessed = true };
    }

    /// <summary>How far apart two terminals are at least: by how far the places of their parts are from the battery; 0 where a place is not known.</summary>
    public static double MetresApart(AdaptingDraft draft, TerminalName one, TerminalName other)
    {
        Place? PlaceOf(TerminalName terminal) => draft.Find(terminal.Part)?.Notes.Place is { } name ? draft.Places.Find(p => p.Name == name) : null;
        return PlaceOf(one) is { } here && PlaceOf(other) is { } there ? Math.Abs(here.Reach - there.Reach) : 0;
    }

    /// <summary>The gauge of wires to coils.</summary>
    public static WireGauge CoilGauge(AdaptingDraft draft) => new(draft.Defaults["guessed.coil-wire-area"].Value);

    /// <summary>The thickest gauge of the wires that belong to the load alone.</summary>
    public static WireGauge Area(AdaptingDraft draft, Load load) => load.Terminals
        .SelectMany(t => Chain.From(draft, new TerminalName(load.Id, t)).Links)
        .Select(l => l.Link.Wire?.Gauge)
        .OfType<WireGauge>()
        .MaxBy(g => g.SquareMillimetres) ?? CoilGauge(draft);

    /// <summary>A ground point near a place; else where the load was grounded, else any, else the body.</summary>
    public static TerminalName GroundNear(AdaptingDraft draft, string? place, TerminalName? otherwise = null)
    {
        var points = draft.Parts.OfType<Ground>().ToList();
        var near = place is null ? null : points.Find(g => g.Notes.Place == place);
        return near is not null ? new TerminalName(near.Id)
            : otherwise ?? (points.Count > 0 ? new TerminalName(points[0].Id) : new TerminalName(Metal.Body));
    }

    /// <summary>
    /// Wires, fuses and outputs between a terminal and the battery or ground that now carry these loads' current are
    /// taken to be thick, large and strong enough: the parent's were chosen for a coil.
    /// </summary>
    public static void Strengthen(AdaptingDraft draft, IReadOnlyList<Load> loads, TerminalName start, bool toGround)
    {
        if (loads.Count == 0 || draft.Build().Circuit is not { } circuit)
        {
            return;
        }

        var way = new Ways(circuit).Between(start, toGround);
        var names = string.Join(", ", loads.Select(l => l.Id));
        var gauge = loads.Select(l => Area(draft, l)).MaxBy(g => g.SquareMillimetres)!;
        var thin = way.Select(e => e.Wire).OfType<Wire>().Where(w => w.Spec.Gauge.SquareMillimetres < gauge.SquareMillimetres).ToList();
        foreach (var wire in thin)
        {
            draft.Wiring.Replace(wire.Spec, wire.Spec with { Gauge = gauge, GaugeGuessed = true });
        }

        if (thin.Count > 0)
        {
            draft.Assume(
                "adapt.assumed-thicker", string.Join(", ", thin.Select(w => w.Id)), names,
                WireText.Gauge(thin[0].Spec with { Gauge = gauge, GaugeGuessed = false }));
        }

        var amps = loads.Sum(l => l.RatedAmps) * draft.Defaults["guessed.fuse-over-load"].Value;
        foreach (var fuse in way.Select(e => e.Part is { } id ? draft.Find(id) as Fuse : null).OfType<Fuse>().Distinct().ToList())
        {
            if (fuse.RatingAmps < amps && FuseTable.Ratings(fuse.Type).FirstOrDefault(r => r >= amps) is > 0 and var rating)
            {
                draft.Replace(fuse, fuse with { RatingAmps = rating });
                draft.Assume("adapt.assumed-larger-fuse", fuse.Id, names, rating, fuse.RatingAmps);
            }
        }

        foreach (var edge in way.Where(e => e.Kind == EdgeKind.Output))
        {
            if (draft.Find(edge.Part!) is Module module
                && module.Outputs.FirstOrDefault(o => o.Name == edge.From.Name || o.Name == edge.To.Name) is { } output)
            {
                StrengthenOutput(draft, module, output, loads, names);
            }
        }
    }

    private static void StrengthenOutput(AdaptingDraft draft, Module module, ModuleOutput output, IReadOnlyList<Load> loads, string names)
    {
        var peak = loads.Sum(l => Peak(draft, l)) * draft.Defaults["guessed.output-over-load"].Value;
        if (output.LimitAmps >= peak)
        {
            return;
        }

        var ohms = loads.Min(l => l.RatedVolts) * draft.Defaults["guessed.output-drop-share"].Value / loads.Sum(l => l.RatedAmps);
        var strong = output with { LimitAmps = Math.Ceiling(peak), OnOhms = Math.Min(output.OnOhms, Math.Round(ohms, 4)) };
        draft.Replace(module, module with { Outputs = module.Outputs.Replace(output, strong) });
        draft.Assume("adapt.assumed-output", $"{module.Id}.{output.Name}", names, strong.LimitAmps, new Figure(strong.OnOhms, "G2"));
    }

    /// <summary>The most amps a healthy load draws: a motor held still, a cold filament.</summary>
    private static double Peak(AdaptingDraft draft, Load load) => load switch
    {
        Motor motor => motor.RunVolts / motor.WindingOhms,
        Starter starter => starter.RunVolts / starter.WindingOhms,
        Lamp lamp => lamp.RatedAmps / draft.Defaults.LampColdShare,
        _ => load.RatedAmps,
    };
}
