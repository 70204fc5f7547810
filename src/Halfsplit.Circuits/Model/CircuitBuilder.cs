using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>Everything a sheet says, before its wiring is resolved.</summary>
public sealed record CircuitDraft(
    string Title,
    ImmutableArray<Part> Parts,
    ImmutableArray<WiringPath> Paths,
    ImmutableArray<Place> Places,
    ImmutableArray<Condition> Conditions,
    ImmutableArray<Complaint> Complaints,
    ImmutableArray<string> Cautions,
    string? Summary = null);

/// <summary>A circuit, or the mistakes in its wiring.</summary>
public sealed record BuiltCircuit(Circuit? Circuit, ImmutableArray<WiringProblem> Problems);

/// <summary>Resolves a draft's wiring into a circuit.</summary>
public static class CircuitBuilder
{
    /// <summary>The strap every car has; assumed where the sheet ties the body to nothing. Common practice, no published source.</summary>
    private static readonly PathWire AssumedStrap = new(new WireGauge(16), 0.4, "0.4m", "BK", null, null);

    /// <summary>
    /// Builds the circuit. Part names must be unique and one battery present (the sheet reader sees to it).
    /// </summary>
    /// <exception cref="ArgumentException">Duplicate part names, or no battery.</exception>
    public static BuiltCircuit Build(CircuitDraft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        var battery = draft.Parts.OfType<Battery>().FirstOrDefault()
            ?? throw new ArgumentException("A circuit needs a battery.", nameof(draft));
        var parts = draft.Parts;
        if (parts.All(p => p.Id != Metal.Body))
        {
            parts = parts.Add(new Metal(new PartNotes(Metal.Body)));
        }

        var resolver = new WiringResolver(parts);
        for (var i = 0; i < draft.Paths.Length; i++)
        {
            resolver.Add(i, draft.Paths[i]);
        }

        if (resolver.Problems.Length > 0)
        {
            return new BuiltCircuit(null, resolver.Problems);
        }

        var body = new TerminalName(Metal.Body);
        if (!resolver.Wires.Any(w => w.From == body || w.To == body)
            && !resolver.Joints.Any(j => j.First == body || j.Second == body))
        {
            resolver.Add(-1, new WiringPath(
                [new PathPart(Metal.Body, null), AssumedStrap, new PathPart(battery.Id, "neg")]));
        }

        var terminals = ImmutableArray.CreateBuilder<TerminalName>();
        foreach (var part in parts)
        {
            foreach (var name in part.Terminals)
            {
                terminals.Add(new TerminalName(part.Id, name));
            }

            if (part.IsPluggable)
            {
                foreach (var name in part.Terminals)
                {
                    terminals.Add(new TerminalName(part.Id, name + "p"));
                }
            }

            terminals.AddRange(resolver.Halves.Where(h => h.Part == part.Id));
        }

        return new BuiltCircuit(
            new Circuit(
                draft.Title, parts, draft.Paths, resolver.Wires, resolver.Joints, terminals.ToImmutable(),
                draft.Places, draft.Conditions, draft.Complaints, draft.Cautions, draft.Summary),
            []);
    }
}
