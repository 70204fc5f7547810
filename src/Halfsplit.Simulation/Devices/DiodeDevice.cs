using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>Conducts above its forward volts, blocks otherwise: diodes, LEDs, suppression diodes.</summary>
/// <param name="branch">From anode to cathode.</param>
/// <param name="forwardVolts">Volts at which it begins to conduct.</param>
internal sealed class DiodeDevice(string part, int branch, double forwardVolts) : Device(part)
{
    private const int Blocking = 0;
    private const int Conducting = 1;
    private const int Normal = 0;
    private const int Open = 1;
    private const int Shorted = 2;

    public int Branch => branch;

    public override DeviceStage Stage => DeviceStage.Fast;

    public override int ParameterCount => 1;

    public override void Prepare(Run run) => Parameters(run)[0] =
        run.IsFaulted(Part, FaultModes.Open) ? Open : run.IsFaulted(Part, FaultModes.Shorted) ? Shorted : Normal;

    public override void Stamp(Run run, Frame frame)
    {
        switch ((int)Parameters(run)[0])
        {
            case Open:
                frame.Set(branch, ElectricalLimits.OpenOhms);
                break;
            case Shorted:
                frame.Set(branch, ElectricalLimits.ShortOhms);
                break;
            default:
                if (run.State[Slot] == Conducting)
                {
                    frame.Set(branch, run.Ohms[branch], -forwardVolts / run.Ohms[branch]);
                }
                else
                {
                    frame.Set(branch, 1 / ElectricalLimits.BlockedSiemens);
                }

                break;
        }
    }

    public override int Next(Run run)
    {
        if (Parameters(run)[0] != Normal)
        {
            return Blocking;
        }

        return run.Across(branch) > forwardVolts ? Conducting : Blocking;
    }
}
