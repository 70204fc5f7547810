using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;

namespace Halfsplit.Diagnosis.Checks;

/// <summary>Messages that name parts, wires, terminals and suspects the way a person knows them.</summary>
public static class Describe
{
    /// <summary>"K2 (pump relay)", or the bare name.</summary>
    public static Message Part(Circuit circuit, string id)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        return circuit.Find(id)?.Notes is { } notes
            ? notes switch
            {
                { Name: { } name, Slot: { } slot } => new Message("part.named-slot", id, name, slot),
                { Name: { } name } => new Message("part.named", id, name),
                { Slot: { } slot } => new Message("part.slot", id, slot),
                _ => new Message("part.bare", id),
            }
            : new Message("part.bare", id);
    }

    /// <summary>"K2 (pump relay, slot R4: top row, fourth from the left)"; as <see cref="Part"/> where the sheet has no grid.</summary>
    public static Message Seated(Circuit circuit, string id)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var part = circuit.Find(id);
        return (SlotWords.Seat(circuit, part), part?.Notes) switch
        {
            ({ } seat, { Name: { } name, Slot: { } slot }) => new Message("part.named-seat", id, name, slot, SlotWords.Say(seat)),
            ({ } seat, { Slot: { } slot }) => new Message("part.seat", id, slot, SlotWords.Say(seat)),
            _ => Part(circuit, id),
        };
    }

    /// <summary>A part, wire, cavity or socket, by its name in faults.</summary>
    public static Message Target(Circuit circuit, string target)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(target);
        if (circuit.Wires.FirstOrDefault(w => w.Id == target) is { } wire)
        {
            return new Message(
                "wire.between", wire.From, wire.To, wire.Spec.Colour ?? "?", wire.Spec.Gauge.SquareMillimetres);
        }

        if (target.EndsWith(Repairs.Repair.SocketSuffix, StringComparison.Ordinal))
        {
            return new Message("socket.whole", Part(circuit, target[..^Repairs.Repair.SocketSuffix.Length]));
        }

        if (circuit.Find(target) is not null)
        {
            return Part(circuit, target);
        }

        var name = TerminalName.Parse(target);
        return circuit.Find(name.Part) switch
        {
            Connector => new Message("cavity.of", name.Name, Part(circuit, name.Part)),
            Relay or Fuse => new Message("socket.of", name.Name, Part(circuit, name.Part)),
            Module => new Message("output.of", name.Name, Part(circuit, name.Part)),
            _ => new Message("part.bare", target),
        };
    }

    /// <summary>A terminal as a place for a lead, with its part and place.</summary>
    public static Message Terminal(Circuit circuit, TerminalName terminal, Arrangement arrangement)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(arrangement);
        var part = circuit.Find(terminal.Part);
        var place = part?.Notes.Place is { } p ? new Message("terminal.at", p) : new Message("terminal.here");
        var text = part switch
        {
            Battery => terminal.Name == "neg" ? "terminal.battery-negative" : "terminal.battery-positive",
            Metal => terminal.Part == Metal.Body ? "terminal.body" : "terminal.metal",
            Fuse when terminal.Name.EndsWith('p') && !arrangement.Removed.Contains(terminal.Part) => "terminal.tab",
            Connector when arrangement.Unplugged.Contains(terminal.Part) => "terminal.half",
            Connector => "terminal.back-probe",
            Relay or Fuse when terminal.Name.EndsWith('p') => "terminal.pin",
            Relay or Fuse => "terminal.socket",
            _ => "terminal.plain",
        };
        // Of a part that is out, the step that took it out has said where it sits.
        var named = arrangement.Removed.Contains(terminal.Part) ? Part(circuit, terminal.Part) : Seated(circuit, terminal.Part);
        return new Message(text, terminal, named, place);
    }
}
