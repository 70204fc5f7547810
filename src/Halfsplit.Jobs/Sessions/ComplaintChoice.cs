using Halfsplit.Circuits.Model;
using Halfsplit.Jobs.Events;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Jobs.Sessions;

/// <summary>What the person comes with, where they say it in the sheet's words or not at all.</summary>
public static class ComplaintChoice
{
    public const string Dead = "dead", Weak = "weak";

    /// <summary>
    /// The sheet's first complaint; where it has none, the first load that works in some condition of a healthy car, dead
    /// in the first such condition. Null where nothing ever works.
    /// </summary>
    public static Complaint? Usual(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        return circuit.Complaints.Length > 0 ? circuit.Complaints[0] : Derived(circuit);
    }

    /// <summary>The complaint of this name in the sheet, or null. Case does not matter.</summary>
    public static Complaint? Named(Circuit circuit, string name)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        return circuit.Complaints.FirstOrDefault(c => string.Equals(c.Name, name, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>As the job file keeps it.</summary>
    public static ComplaintMeant ToKeep(Complaint complaint)
    {
        ArgumentNullException.ThrowIfNull(complaint);
        return new ComplaintMeant(complaint.Load, complaint.Is == LoadCondition.Weak ? Weak : Dead, complaint.Condition);
    }

    /// <summary>The complaint of a job: as it was meant, else as the sheet has it by name, else the usual one.</summary>
    public static Complaint? Of(Circuit circuit, JobOpened opened)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(opened);
        return opened.Meant is { } meant
            ? new Complaint(
                opened.Complaint, meant.Load, meant.Is == Weak ? LoadCondition.Weak : LoadCondition.Dead, meant.In)
            : Named(circuit, opened.Complaint) ?? Usual(circuit);
    }

    private static Complaint? Derived(Circuit circuit)
    {
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        foreach (var load in circuit.Parts.OfType<Load>())
        {
            foreach (var condition in circuit.Conditions)
            {
                if (simulator.Simulate(new Arrangement(condition.Name), []).Load(load.Id).Condition == LoadCondition.Works)
                {
                    return new Complaint($"{load.Id} {Dead}", load.Id, LoadCondition.Dead, condition.Name);
                }
            }
        }

        return null;
    }
}
