using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>
/// Open-circuit volts behind an internal resistance, behind a larger one while it is charged; held at charging volts while
/// an outside alternator runs.
/// </summary>
/// <param name="source">Branch from the positive post to the reference.</param>
/// <param name="starterLoad">Branch of a starter that is not a part of the sheet.</param>
internal sealed class BatteryDevice(Battery battery, int source, int starterLoad) : Device(battery.Id)
{
    /// <summary>Volts at the posts at which a condition's "starter draws" holds; common practice, no published source.</summary>
    private const double CrankingShare = 10.5 / 12;

    private const int Giving = 0;
    private const int Taking = 1;

    private readonly double _chargingOhms = ComponentDefaults.For(battery.NominalVolts).BatteryChargingOhms;

    public override DeviceStage Stage => DeviceStage.Fast;

    public override int ParameterCount => 3;

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

        p[2] = run.Condition.AlternatorVolts is null ? _chargingOhms : 0;
    }

    public override void Stamp(Run run, Frame frame)
    {
        var p = Parameters(run);
        var ohms = p[1] + (run.State[Slot] == Taking ? p[2] : 0);
        frame.Set(source, ohms, -p[0] / ohms);
        frame.Conductance[starterLoad] =
            run.Condition.StarterAmps is { } amps ? amps / (CrankingShare * battery.NominalVolts) : 0;
    }

    public override int Next(Run run)
    {
        var p = Parameters(run);
        return p[2] > 0 && run.Across(source) > p[0] ? Taking : Giving;
    }
}
