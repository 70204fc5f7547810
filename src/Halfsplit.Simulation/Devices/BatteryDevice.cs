using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>Open-circuit volts behind an internal resistance; held at charging volts while an outside alternator runs.</summary>
/// <param name="source">Branch from the positive post to the reference.</param>
/// <param name="starterLoad">Branch of a starter that is not a part of the sheet.</param>
internal sealed class BatteryDevice(Battery battery, int source, int starterLoad) : Device(battery.Id)
{
    /// <summary>Volts at the posts at which a condition's "starter draws" holds; common practice, no published source.</summary>
    private const double CrankingShare = 10.5 / 12;

    public override DeviceStage Stage => DeviceStage.Fixed;

    public override int ParameterCount => 2;

    public override void Prepare(Run run)
    {
        var p = Parameters(run);
        p[0] = run.Severity(Part, FaultModes.Discharged) ?? battery.RestVolts;
        p[1] = run.Severity(Part, FaultModes.Weak) ?? battery.InternalResistance;
        if (run.IsFaulted(Part, FaultModes.Discharged))
        {
            // A discharged battery is also a weak one: its resistance rises as it empties. From memory.
            p[1] *= Math.Max(1, 1 + (2 * (battery.RestVolts - p[0]) / (battery.RestVolts / 6)));
        }

        if (run.Condition.AlternatorVolts is { } held)
        {
            p[0] = held;
            p[1] = ElectricalLimits.HeldOhms;
        }
    }

    public override void Stamp(Run run, Frame frame)
    {
        var p = Parameters(run);
        frame.Set(source, p[1], -p[0] / p[1]);
        frame.Conductance[starterLoad] =
            run.Condition.StarterAmps is { } amps ? amps / (CrankingShare * battery.NominalVolts) : 0;
    }
}
