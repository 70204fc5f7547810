using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting;

/// <summary>
/// Takes a relay out: its loads take the coil's place. What fed the coil feeds them where that is switched and the
/// contact's feed is not; what grounded the coil grounds them where that is switched.
/// </summary>
internal static class RelayRemoval
{
    public static Message? Apply(AdaptingDraft draft, RemoveRelay change)
    {
        if (NameSearch.Part(draft.Parent, change.Relay, out var problem) is not { } part)
        {
            return problem;
        }

        if (part is not Relay relay)
        {
            return new Message("adapt.no-relay", part.Id, string.Join(", ", draft.Parts.OfType<Relay>().Select(r => r.Id)));
        }

        var ways = new Ways(draft.Parent);
        TerminalName At(string terminal) => new(relay.Id, terminal);
        var outs = relay.Terminals.Where(t => t.StartsWith("87", StringComparison.Ordinal) && ways.IsWired(At(t))).ToList();
        if (outs.Contains("87a"))
        {
            return new Message("adapt.relay-breaks", relay.Id);
        }

        if (outs.Count == 0 || !ways.IsWired(At("30")))
        {
            return new Message("adapt.relay-idle", relay.Id);
        }

        if (!ways.IsFed(At("30")) || ways.IsAlwaysGrounded(At("30")) || outs.Any(o => ways.IsAlwaysGrounded(At(o))))
        {
            return new Message("adapt.relay-ground-side", relay.Id);
        }

        var (plus, minus) = ways.IsFed(At("86")) && ways.IsGrounded(At("85")) ? (At("86"), At("85")) : (At("85"), At("86"));
        if (ways.IsFedByGenerator(plus))
        {
            return new Message("adapt.relay-on-generator", relay.Id);
        }

        var isGroundSwitched = !ways.IsAlwaysGrounded(minus);
        var (coilGates, contactGates) = (ways.Gates(plus), ways.Gates(At("30")));
        var keepsFeed = coilGates.IsSubsetOf(contactGates);
        if (!keepsFeed && !contactGates.IsSubsetOf(coilGates))
        {
            return new Message("adapt.two-gates", relay.Id, Names(contactGates.Except(coilGates)), Names(coilGates.Except(contactGates)));
        }

        var supplied = ways.Behind(outs.Select(At));
        if (supplied.Loads.Count + supplied.Others.Count == 0)
        {
            return new Message("adapt.relay-idle", relay.Id);
        }

        if (isGroundSwitched)
        {
            if (supplied.Others.Count > 0)
            {
                return new Message("adapt.feeds-more", relay.Id, Names(supplied.Others));
            }

            if (supplied.Loads.Select(l => LoadPaths.Judge(draft, ways, l)).FirstOrDefault(p => p is not null) is { } cannot)
            {
                return cannot;
            }
        }

        if (!change.DespiteAmps && SwitchLimits.Judge(draft, ways, relay, supplied, keepsFeed ? null : plus, isGroundSwitched ? minus : null) is { } thin)
        {
            return thin;
        }

        Rewire(draft, relay, supplied, (plus, minus), outs, isGroundSwitched, keepsFeed);
        return null;
    }

    private static void Rewire(
        AdaptingDraft draft, Relay relay, Supplied supplied, (TerminalName Plus, TerminalName Minus) coil, List<string> outs,
        bool isGroundSwitched, bool keepsFeed)
    {
        draft.Wiring.PartAt(relay.Id);
        var bridge = NewSplice(draft, relay.Notes.Place);
        TerminalName? back = null;
        if (isGroundSwitched)
        {
            back = NewSplice(draft, relay.Notes.Place);
            foreach (var load in supplied.Loads)
            {
                draft.PruneAt(LoadPaths.MoveReturn(draft, load, back.Value).Ground);
            }

            draft.Wiring.Substitute(coil.Minus, back.Value);
        }
        else
        {
            draft.Prune(coil.Minus);
        }

        var contactFeed = new TerminalName(relay.Id, "30");
        draft.Prune(keepsFeed ? coil.Plus : contactFeed);
        draft.Wiring.Substitute(keepsFeed ? contactFeed : coil.Plus, bridge);
        foreach (var terminal in outs)
        {
            draft.Wiring.Substitute(new TerminalName(relay.Id, terminal), bridge);
        }

        draft.Remove(relay.Id, bridge.Part);
        draft.Assume("adapt.assumed-bridge", relay.Id, bridge.Part);
        if (!keepsFeed)
        {
            LoadPaths.Strengthen(draft, supplied.Beyond, bridge, toGround: false);
        }

        if (back is { } control)
        {
            LoadPaths.Strengthen(draft, supplied.Loads, control, toGround: true);
        }
    }

    internal static TerminalName NewSplice(AdaptingDraft draft, string? place)
    {
        var id = draft.FreeId("SP");
        draft.Add(new Splice(new PartNotes(id, null, place)));
        return new TerminalName(id);
    }

    private static string Names(IEnumerable<string> ids) => string.Join(", ", ids.Order(StringComparer.Ordinal));
}
