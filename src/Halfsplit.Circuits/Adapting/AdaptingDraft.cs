using System.Globalization;
using Halfsplit.Circuits.Adapting.Wiring;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting;

/// <summary>A circuit while one change is made to it.</summary>
internal sealed class AdaptingDraft
{
    public AdaptingDraft(Circuit parent)
    {
        Parent = parent;
        Title = parent.Title;
        Parts = [.. parent.Parts];
        Places = [.. parent.Places];
        Conditions = [.. parent.Conditions];
        Complaints = [.. parent.Complaints];
        Wiring = new WiringEdit(parent);
        Defaults = ComponentDefaults.For(parent.Battery.NominalVolts);
    }

    public Circuit Parent { get; }

    public string Title { get; set; }

    public List<Part> Parts { get; }

    public List<Place> Places { get; }

    public List<Condition> Conditions { get; }

    public List<Complaint> Complaints { get; }

    public WiringEdit Wiring { get; }

    public ComponentDefaults Defaults { get; }

    public List<Message> Assumptions { get; } = [];

    public Part? Find(string id) => Parts.Find(p => p.Id == id);

    public void Assume(string code, params object[] arguments) => Assumptions.Add(new Message(code, arguments));

    /// <summary>A part more; the body that every sheet has anyway stays last.</summary>
    public void Add(Part part) => Parts.Insert(Parts[^1].Id == Metal.Body ? Parts.Count - 1 : Parts.Count, part);

    public void Replace(Part old, Part present) => Parts[Parts.IndexOf(old)] = present;

    /// <summary>Takes a part away, and its name out of the connectors whose half it was; another stands for it where there is one.</summary>
    public void Remove(string id, string? inItsPlace = null)
    {
        Parts.RemoveAll(p => p.Id == id);
        foreach (var connector in Parts.OfType<Connector>().Where(c => c.BelongsToB.Contains(id)).ToList())
        {
            var others = connector.BelongsToB.Remove(id);
            Replace(connector, connector with { BelongsToB = inItsPlace is null ? others : others.Add(inItsPlace) });
        }
    }

    /// <summary>The first of C1, C2 … that no part has.</summary>
    public string FreeId(string prefix)
    {
        for (var n = 1; ; n++)
        {
            var id = prefix + n.ToString(CultureInfo.InvariantCulture);
            if (Find(id) is null)
            {
                return id;
            }
        }
    }

    public BuiltCircuit Build() => CircuitBuilder.Build(new CircuitDraft(
        Title, [.. Parts], Wiring.Paths(Parts), [.. Places], [.. Conditions], [.. Complaints], Parent.Cautions, Parent.Summary));

    /// <summary>Takes away a link at a terminal that went, and what only it led to: fuses, plugs, splices, ground points.</summary>
    public void Prune(TerminalName from)
    {
        foreach (var link in Wiring.LinksAt(from))
        {
            // Taking one link away makes the others' ends stale, and may take them along: each is looked up again.
            if (Wiring.LinksAt(from).Find(l => ReferenceEquals(l.Link, link.Link)) is { } fresh)
            {
                Wiring.Remove(fresh);
                PruneAt(link.There);
            }
        }
    }

    /// <summary>Takes away what is left of no use at a terminal that a wire was moved or taken from.</summary>
    public void PruneAt(TerminalName at)
    {
        var left = Wiring.LinksAt(at).Count;
        switch (Find(at.Part))
        {
            case Splice when left <= 1:
                Prune(at);
                Remove(at.Part);
                break;
            case Ground when left == 0:
                Remove(at.Part);
                break;
            case (Fuse or Breaker or Ptc or Resistor or Diode or Connector) and var part when left == 0:
                var other = Chain.Behind(part, at)!.Value;
                if (Wiring.LinksAt(other).Count <= 1)
                {
                    Prune(other);
                    if (!Wiring.Mentions(part.Id))
                    {
                        Remove(part.Id);
                    }
                }

                break;
            default:
                break;
        }
    }
}
