using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>
/// Holds its volts between B+ and 31 while the engine turns and its field was excited through D+; at its limit it is a
/// current source. At rest D+ is the field winding to 31.
/// </summary>
/// <param name="output">Branch from B+ to 31.</param>
/// <param name="field">Branch from D+ to 31.</param>
internal sealed class AlternatorDevice(Alternator alternator, int output, int field) : Device(alternator.Id)
{
    private const int Idle = 0;
    private const int Generating = 1;
    private const int AtLimit = 2;

    public override DeviceStage Stage => DeviceStage.Slow;

    public override int ParameterCount => 1;

    public override void Prepare(Run run) =>
        Parameters(run)[0] = run.Condition.EngineTurns && !run.IsFaulted(Part, FaultModes.NoOutput) ? 1 : 0;

    public override void Stamp(Run run, Frame frame)
    {
        frame.Set(field, run.Ohms[field]);
        switch (run.State[Slot])
        {
            case Generating:
                frame.Set(output, run.Ohms[output], -alternator.RegulatedVolts / run.Ohms[output]);
                frame.Set(field, run.Ohms[field], -alternator.RegulatedVolts / run.Ohms[field]);
                break;
            case AtLimit:
                frame.Set(output, 1 / ElectricalLimits.BlockedSiemens, -alternator.MaximumAmps);
                frame.Set(field, run.Ohms[field], -alternator.RegulatedVolts / run.Ohms[field]);
                break;
            default:
                frame.Set(output, 1 / ElectricalLimits.BlockedSiemens);
                break;
        }
    }

    public override int Next(Run run)
    {
        if (Parameters(run)[0] == 0 || run.Ohms[output] >= ElectricalLimits.OpenOhms)
        {
            return Idle;
        }

        var given = -run.Amps(output);
        return run.State[Slot] switch
        {
            Idle => alternator.ExcitationAmps <= 0 || run.Amps(field) >= alternator.ExcitationAmps ? Generating : Idle,
            Generating => given > alternator.MaximumAmps ? AtLimit : Generating,
            _ => run.Across(output) > alternator.RegulatedVolts ? Generating : AtLimit,
        };
    }
}
