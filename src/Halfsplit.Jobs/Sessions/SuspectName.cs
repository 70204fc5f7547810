using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Jobs.Sessions;

/// <summary>A suspect as people read it: its id, the name of its part, and about how bad.</summary>
public static class SuspectName
{
    /// <summary>"K2 contact open (Pump relay)".</summary>
    public static Message Of(Circuit circuit, Suspect suspect)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(suspect);
        if (suspect.IsNone)
        {
            return new Message("suspect.none");
        }

        var text = Of(circuit, suspect.Modes[0]);
        foreach (var mode in suspect.Modes.Skip(1))
        {
            text = new Message("suspect.pair", text, Of(circuit, mode));
        }

        return text;
    }

    /// <summary>The same with the likeliest degree: "G2 resistive (Ground behind the rear seat), about 2 Ω".</summary>
    public static Message WithDegree(Circuit circuit, SuspectOdds suspect)
    {
        ArgumentNullException.ThrowIfNull(suspect);
        var name = Of(circuit, suspect.Suspect);
        return DegreeOf(suspect) is { } degree ? new Message("suspect.degree", name, degree) : name;
    }

    /// <summary>The likeliest degree, "2 Ω"; null for a suspect that has none, and for several faults at once.</summary>
    public static Message? DegreeOf(SuspectOdds suspect)
    {
        ArgumentNullException.ThrowIfNull(suspect);
        var graded = suspect.Faults.FirstOrDefault(f => f.Severity is not null);
        return suspect.Faults.Length != 1 || graded is null ? null : DegreeOf(suspect.Suspect.Modes[0].Unit, graded.Severity!.Value);
    }

    /// <summary>One fault in one degree, as <see cref="WithDegree"/> says a suspect.</summary>
    /// <param name="severity">In the unit of the mode; null for one without a degree.</param>
    public static Message Of(Circuit circuit, FaultMode mode, double? severity)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(mode);
        var name = Of(circuit, mode);
        return severity is { } degree ? new Message("suspect.degree", name, DegreeOf(mode.Unit, degree)) : name;
    }

    private static Message DegreeOf(SeverityUnit unit, double degree) => unit switch
    {
        SeverityUnit.Volts => new Message("degree.volts", Round(degree)),
        SeverityUnit.Ratio => new Message("degree.ratio", Round(degree)),
        _ => Ohms(degree),
    };

    private static Message Of(Circuit circuit, FaultMode mode)
    {
        var wire = circuit.Wires.FirstOrDefault(w => w.Id == mode.Owner);
        var name = wire is not null
            ? wire.Spec.Colour is { } colour ? new Message("suspect.wire-colour", colour) : new Message("suspect.wire")
            : circuit.Find(mode.Owner)?.Notes.Name is { } known ? new Message("part.bare", known) : null;
        return name is null ? new Message("suspect.bare", mode.Id) : new Message("suspect.named", mode.Id, name);
    }

    private static Message Ohms(double ohms) => ohms switch
    {
        >= 1e6 => new Message("degree.megohms", Round(ohms / 1e6)),
        >= 1e3 => new Message("degree.kilohms", Round(ohms / 1e3)),
        >= 1 => new Message("degree.ohms", Round(ohms)),
        _ => new Message("degree.milliohms", Round(ohms * 1e3)),
    };

    /// <summary>Two digits: more is not known.</summary>
    private static Figure Round(double value) => value >= 10 ? new Figure(Math.Round(value), "0") : new Figure(value, "G2");
}
