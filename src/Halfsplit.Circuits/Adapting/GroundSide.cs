using Halfsplit.Circuits.Adapting.Wiring;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Adapting;

/// <summary>
/// Moves the contact that switches a load from its feed to its ground: the feed is joined where the contact was, and
/// every load behind it returns through the contact.
/// </summary>
internal static class GroundSide
{
    public static Message? Apply(AdaptingDraft draft, SwitchGroundSide change)
    {
        if (NameSearch.FedTerminal(draft.Parent, change.Load, out var problem) is not { } fed)
        {
            return problem;
        }

        var ways = new Ways(draft.Parent);
        var load = (Load)draft.Parent[fed.Part];
        if (ways.IsAlwaysFed(fed))
        {
            return new Message(
                ways.IsAlwaysGrounded(LoadPaths.Return(load)) ? "adapt.nothing-switches" : "adapt.already-ground-side", load.Id);
        }

        var controls = ways.NearestControls(fed);
        var switching = controls.Select(c => c.Part!).Distinct().Order(StringComparer.Ordinal).ToList();
        if (switching.Count != 1)
        {
            return switching.Count == 0
                ? new Message("adapt.nothing-switches", load.Id)
                : new Message("adapt.several-switch", load.Id, string.Join(", ", switching));
        }

        var control = controls[0];
        if (control.Kind == EdgeKind.Output)
        {
            return new Message("adapt.output-keeps-side", load.Id, control.From.ToString());
        }

        var contact = draft.Parent[control.Part!];
        if (controls.Count > 1 || IsShared(ways, contact))
        {
            return new Message("adapt.contact-shared", load.Id, contact.Id);
        }

        var supplied = ways.Behind([control.From]);
        if (supplied.Others.Count > 0)
        {
            return new Message("adapt.feeds-more", contact.Id, string.Join(", ", supplied.Others));
        }

        if (supplied.Loads.Select(l => LoadPaths.Judge(draft, ways, l)).FirstOrDefault(p => p is not null) is { } cannot)
        {
            return cannot;
        }

        Rewire(draft, contact, supplied.Loads, control);
        return null;
    }

    /// <summary>Other contacts of the same part hang on what would be moved.</summary>
    private static bool IsShared(Ways ways, Part part)
    {
        var contacts = part is Relay
            ? part.Terminals.Where(t => t is not ("86" or "85"))
            : part.Terminals;
        return contacts.Count(t => ways.IsWired(new TerminalName(part.Id, t))) > 2;
    }

    private static void Rewire(AdaptingDraft draft, Part contact, IReadOnlyList<Load> loads, Edge control)
    {
        var (near, far) = (control.From, control.To);
        draft.Wiring.PartAt(contact.Id);
        var bridge = RelayRemoval.NewSplice(draft, contact.Notes.Place);
        draft.Wiring.Substitute(near, bridge);
        draft.Wiring.Substitute(far, bridge);
        draft.Assume("adapt.assumed-feed-joined", contact.Id, bridge.Part);
        var moved = loads.Select(l => LoadPaths.MoveReturn(draft, l, near)).ToList();
        var gauge = moved.Select(m => m.Wire.Gauge).MaxBy(g => g.SquareMillimetres)!;
        var ground = LoadPaths.GroundNear(draft, contact.Notes.Place, moved[0].Ground);
        var wire = LoadPaths.NewWire(draft, gauge, far, ground);
        draft.Wiring.Add([far, ground], [new Link(wire, false)]);
        foreach (var (left, _) in moved)
        {
            draft.PruneAt(left);
        }

        draft.Assume("adapt.assumed-ground-wire", far.ToString(), ground.ToString(), WireText.Gauge(wire with { GaugeGuessed = false }), wire.LengthWritten);
    }
}
