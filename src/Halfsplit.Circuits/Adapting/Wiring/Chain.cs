using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting.Wiring;

/// <summary>What belongs to one terminal alone: its links up to where the next one joins.</summary>
/// <param name="Links">From the terminal on; each is seen from the terminal's side. Empty where several links meet at it.</param>
/// <param name="End">Where others join, or where it ends.</param>
internal sealed record Chain(IReadOnlyList<LinkEnd> Links, TerminalName End)
{
    /// <summary>The wire nearest to the terminal, or the nearest link at all.</summary>
    public LinkEnd First => Links.FirstOrDefault(l => l.Link.Wire is not null) ?? Links[0];

    public static Chain From(AdaptingDraft draft, TerminalName terminal)
    {
        var links = new List<LinkEnd>();
        var seen = new HashSet<Link>(ReferenceEqualityComparer.Instance);
        var at = terminal;
        while (true)
        {
            var ways = draft.Wiring.LinksAt(at).Where(l => !seen.Contains(l.Link)).ToList();
            if (ways.Count != 1)
            {
                return new Chain(links, at);
            }

            links.Add(ways[0]);
            seen.Add(ways[0].Link);
            at = ways[0].There;
            if (draft.Find(at.Part) is Splice)
            {
                if (draft.Wiring.LinksAt(at).Count != 2)
                {
                    return new Chain(links, at);
                }
            }
            else if (draft.Wiring.LinksAt(at).Count == 1 && Behind(draft.Find(at.Part), at) is { } other)
            {
                at = other;
            }
            else
            {
                return new Chain(links, at);
            }
        }
    }

    /// <summary>The other side of a part that has but two; null for parts with more, and for those a chain ends at.</summary>
    public static TerminalName? Behind(Part? part, TerminalName at) => part switch
    {
        Connector => at with { Name = at.Name[..^1] + (at.Name[^1] == 'a' ? 'b' : 'a') },
        Fuse or Breaker or Ptc or Resistor or Diode => Other(part, at),
        Switch { Terminals.Length: 2 } => Other(part, at),
        _ => null,
    };

    private static TerminalName Other(Part part, TerminalName at) =>
        at with { Name = part.Terminals[0] == at.Name ? part.Terminals[1] : part.Terminals[0] };
}
