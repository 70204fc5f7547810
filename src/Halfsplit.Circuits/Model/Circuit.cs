using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>
/// What a sheet describes: parts, how they are wired, where they live, what the car can be doing. Immutable.
/// Built by <see cref="CircuitBuilder"/>, which resolves the wiring.
/// </summary>
public sealed record Circuit
{
    private readonly ImmutableDictionary<string, Part> _byId;

    internal Circuit(
        string title,
        ImmutableArray<Part> parts,
        ImmutableArray<WiringPath> paths,
        ImmutableArray<Wire> wires,
        ImmutableArray<Joint> joints,
        ImmutableArray<TerminalName> terminals,
        ImmutableArray<Place> places,
        ImmutableArray<Condition> conditions,
        ImmutableArray<Complaint> complaints,
        ImmutableArray<string> cautions,
        string? summary)
    {
        Title = title;
        Parts = parts;
        Paths = paths;
        Wires = wires;
        Joints = joints;
        Terminals = terminals;
        Places = places;
        Conditions = conditions;
        Complaints = complaints;
        Cautions = cautions;
        Summary = summary;
        _byId = parts.ToImmutableDictionary(p => p.Id, StringComparer.Ordinal);
    }

    public string Title { get; }

    /// <summary>A sentence or two for the person; null if the sheet has none.</summary>
    public string? Summary { get; }

    /// <summary>In the order of the sheet; the body comes last if the sheet does not name it.</summary>
    public ImmutableArray<Part> Parts { get; }

    /// <summary>The wiring as written.</summary>
    public ImmutableArray<WiringPath> Paths { get; }

    /// <summary>Every wire with its ends.</summary>
    public ImmutableArray<Wire> Wires { get; }

    /// <summary>Terminals that touch without a wire between.</summary>
    public ImmutableArray<Joint> Joints { get; }

    /// <summary>Every terminal a lead can touch: connector halves and plug-in pins included.</summary>
    public ImmutableArray<TerminalName> Terminals { get; }

    public ImmutableArray<Place> Places { get; }

    public ImmutableArray<Condition> Conditions { get; }

    /// <summary>What people come with, as the sheet says; may be empty.</summary>
    public ImmutableArray<Complaint> Complaints { get; }

    /// <summary>Cautions for the whole circuit.</summary>
    public ImmutableArray<string> Cautions { get; }

    /// <summary>The battery.</summary>
    public Battery Battery => Parts.OfType<Battery>().First();

    /// <summary>The part of this name, or null.</summary>
    public Part? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>The part of this name.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public Part this[string id] => _byId.TryGetValue(id, out var part)
        ? part
        : throw new KeyNotFoundException($"The circuit has no part {id}.");

    /// <summary>The condition of this name, or null.</summary>
    public Condition? FindCondition(string name) =>
        Conditions.FirstOrDefault(c => string.Equals(c.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The place of this name, or null.</summary>
    public Place? FindPlace(string? name) =>
        name is null ? null : Places.FirstOrDefault(p => p.Name == name);

    /// <summary>The cavities of a connector, in the order the wiring mentions them.</summary>
    public IEnumerable<string> Cavities(string connector) =>
        Terminals.Where(t => t.Part == connector && t.Name.EndsWith('a')).Select(t => t.Name[..^1]);
}
