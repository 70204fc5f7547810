using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Jobs.Practice;

namespace Halfsplit.Evaluation.Cars;

/// <summary>
/// A connector in a wire of the car that the sheet does not know. Whoever works by the sheet calls both pieces by the one
/// wire's name, and mends the connector when mending that wire.
/// </summary>
public sealed class ForeignJoint
{
    private ForeignJoint(Circuit circuit, string wire, string connector, ImmutableArray<string> pieces)
    {
        Cavity = $"{connector}.1";
        Circuit = circuit;
        Wire = wire;
        Pieces = pieces;
    }

    /// <summary>The circuit of the car.</summary>
    public Circuit Circuit { get; }

    /// <summary>The wire of the sheet.</summary>
    public string Wire { get; }

    /// <summary>What the car has in its stead: two wires, the connector, its cavity.</summary>
    public ImmutableArray<string> Pieces { get; }

    /// <summary>The cavity that the sheet does not know.</summary>
    public string Cavity { get; }

    /// <summary>Puts a connector into one of the given wires, drawn at random.</summary>
    public static ForeignJoint In(Circuit circuit, IReadOnlyList<string> wires, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(wires);
        ArgumentNullException.ThrowIfNull(chance);
        var name = wires[(int)(chance.Next() * wires.Count)];
        var wire = circuit.Wires.First(w => w.Id == name);
        var place = circuit.Find(wire.From.Part)?.Notes.Place;
        var id = FreeName(circuit);
        var connector = new Connector(new PartNotes(id, null, place), [], false);
        var other = CircuitBuilder.Build(new CircuitDraft(
            circuit.Title, circuit.Parts.Add(connector), [.. circuit.Paths.Select(p => Split(p, wire.Spec, id))],
            circuit.Places, circuit.Conditions, circuit.Complaints, circuit.Cautions)).Circuit!;
        var known = circuit.Wires.Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        return new ForeignJoint(
            other, wire.Id, id, [.. other.Wires.Select(w => w.Id).Where(w => !known.Contains(w)), id, $"{id}.1"]);
    }

    /// <summary>The check as it is done on the car: a clamp goes round a piece of the wire.</summary>
    public Check OnCar(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return check.Probe.About == Wire ? check with { Probe = check.Probe with { About = Pieces[0] } } : check;
    }

    /// <summary>The repair as it is done on the car.</summary>
    public Repair OnCar(Repair repair)
    {
        ArgumentNullException.ThrowIfNull(repair);
        return repair.Target == Wire ? repair with { Covers = repair.Covers.AddRange(Pieces) } : repair;
    }

    /// <summary>What the sheet calls a part of the car.</summary>
    public string OnSheet(string part) => Pieces.Contains(part) ? Wire : part;

    private static string FreeName(Circuit circuit)
    {
        var name = "XF";
        while (circuit.Find(name) is not null)
        {
            name += "F";
        }

        return name;
    }

    private static WiringPath Split(WiringPath path, PathWire wire, string connector)
    {
        for (var i = 0; i < path.Items.Length; i++)
        {
            if (ReferenceEquals(path.Items[i], wire))
            {
                var half = wire with { Length = wire.Length / 2, Name = null };
                return new WiringPath(path.Items.RemoveAt(i)
                    .InsertRange(i, (ImmutableArray<PathItem>)[half, new PathPart(connector, "1a"), new PathPart(connector, "1b"), half with { Length = half.Length }]));
            }
        }

        return path;
    }
}
