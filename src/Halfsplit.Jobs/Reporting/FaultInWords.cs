using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Jobs.Reporting;

/// <summary>What is wrong, said to somebody who knows no names of suspects.</summary>
internal static class FaultInWords
{
    /// <summary>"Ground behind the rear seat (G2): too much resistance in the connection, about 2 Ω".</summary>
    public static Message Of(Circuit circuit, SuspectOdds suspect)
    {
        var text = Of(circuit, suspect.Suspect);
        return SuspectName.DegreeOf(suspect) is { } degree ? new Message("suspect.degree", text, degree) : text;
    }

    private static Message Of(Circuit circuit, Suspect suspect)
    {
        if (suspect.IsNone)
        {
            return new Message("fault.none");
        }

        var text = Of(circuit, suspect.Modes[0]);
        foreach (var mode in suspect.Modes.Skip(1))
        {
            text = new Message("suspect.pair", text, Of(circuit, mode));
        }

        return text;
    }

    private static Message Of(Circuit circuit, FaultMode mode) => new("fault.of", Thing(circuit, mode.Part), Kind(mode));

    private static Message Kind(FaultMode mode) => mode.Mode switch
    {
        FaultModes.Open when mode.Kind is "fuse" or "fusible link" => new Message("fault.blown"),
        FaultModes.Open when mode.Kind is "lamp" => new Message("fault.burnt-out"),
        FaultModes.Open when mode.Kind is "motor" or "heater" or "solenoid" or "sounder" => new Message("fault.open-inside"),
        var name => new Message($"fault.{name}"),
    };

    /// <summary>The thing by its name first: an owner knows the fuel pump, and not M1.</summary>
    public static Message Thing(Circuit circuit, string target) =>
        circuit.Find(target)?.Notes is { Name: { } name } ? new Message("part.named", name, target) : Describe.Target(circuit, target);

    /// <summary>A point for a lead in few words: "Pump connector, C3.4b".</summary>
    public static Message Point(Circuit circuit, TerminalName terminal) => circuit.Find(terminal.Part) switch
    {
        Battery => new Message(terminal.Name == "neg" ? "point.battery-negative" : "point.battery-positive", terminal),
        Metal when terminal.Part == Metal.Body => new Message("point.body", terminal),
        { Notes.Name: { } name } => new Message("point.named", terminal, name),
        _ => new Message("part.bare", terminal),
    };
}
