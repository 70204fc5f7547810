using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting;

/// <summary>Whether switches and outputs that worked a relay's coil would bear what its contact carried.</summary>
internal static class SwitchLimits
{
    /// <param name="relay">The relay that is to go.</param>
    /// <param name="supplied">What its contact feeds.</param>
    /// <param name="feed">The coil's terminal whose feed the loads would take; null where they keep their own.</param>
    /// <param name="back">The coil's terminal whose way to ground the loads would take; null where they keep their own.</param>
    /// <returns>What would have to carry more than it bears; null if nothing would.</returns>
    public static Message? Judge(AdaptingDraft draft, Ways ways, Relay relay, Supplied supplied, TerminalName? feed, TerminalName? back)
    {
        // What lies in the contact's own way carries the current today.
        var today = ways.Between(new TerminalName(relay.Id, "30"), toGround: false).Select(e => e.Part).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return (feed is { } plus ? Over(plus, toGround: false, supplied.Beyond) : null)
            ?? (back is { } minus ? Over(minus, toGround: true, supplied.Loads) : null);

        Message? Over(TerminalName coil, bool toGround, IReadOnlyList<Load> loads)
        {
            var amps = loads.Sum(l => l.RatedAmps);
            var over = ways.Between(coil, toGround)
                .Where(e => e.Part is { } part && !today.Contains(part))
                .Select(e => Limit(draft, ways, e))
                .OfType<(double Amps, Message Said)>()
                .Where(l => l.Amps < amps)
                .Select(l => l.Said)
                .Distinct()
                .ToList();
            return over.Count == 0 ? null
                : new Message(
                    "adapt.over-limit", relay.Id, Math.Round(amps, 1), string.Join(", ", loads.Select(l => l.Id)),
                    over.Aggregate((one, other) => new Message("adapt.bears-and", one, other)));
        }
    }

    private static (double Amps, Message Said)? Limit(AdaptingDraft draft, Ways ways, Edge edge)
    {
        switch (edge.Kind, draft.Find(edge.Part!))
        {
            case (EdgeKind.Contact, Switch choice):
                // No sheet says what a switch bears; it bears at least what it feeds today.
                var amps = Math.Max(draft.Defaults["guessed.switch-amps"].Value, ways.FedBy(choice).Sum(l => l.RatedAmps));
                return (amps, new Message("adapt.bears-switch", Named(choice), Math.Round(amps, 1)));
            case (EdgeKind.Output, Module module) when module.Outputs.FirstOrDefault(o => o.Name == edge.From.Name || o.Name == edge.To.Name) is { } output:
                return (output.LimitAmps, new Message("adapt.bears-output", $"{module.Id}.{output.Name}", output.LimitAmps));
            default:
                return null;
        }
    }

    private static string Named(Part part) => part.Notes.Name is { } name ? $"{part.Id} ({name})" : part.Id;
}
