using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>A contact of a relay and when it is closed.</summary>
internal readonly record struct RelayContactBranch(int Branch, bool ClosedWhenPulled);

/// <summary>Pulls in at one voltage, drops out at a lower one; the contacts follow.</summary>
internal sealed class RelayDevice(Relay relay, int coil, int suppression, ImmutableArray<RelayContactBranch> contacts)
    : Device(relay.Id)
{
    public const int AtRest = 0;
    public const int Pulled = 1;

    public int Coil => coil;

    public ImmutableArray<RelayContactBranch> Contacts => contacts;

    public override DeviceStage Stage => DeviceStage.Slow;

    public override int ParameterCount => 3;

    public override void Prepare(Run run)
    {
        var p = Parameters(run);
        p[0] = relay.PullInVolts * run.ThresholdFactor;
        p[1] = relay.DropOutVolts * run.ThresholdFactor;
        p[2] = run.IsFaulted(Part, FaultModes.Stuck) ? 1 : run.IsFaulted(Part, FaultModes.Welded) ? 2 : 0;
    }

    public override void Stamp(Run run, Frame frame)
    {
        var stuck = (int)Parameters(run)[2];
        frame.Set(coil, run.Ohms[coil]);
        if (suppression >= 0)
        {
            frame.Set(suppression, run.Ohms[suppression]);
        }

        var pulled = stuck == 2 || (stuck == 0 && run.State[Slot] == Pulled);
        foreach (var contact in contacts)
        {
            frame.Set(
                contact.Branch,
                contact.ClosedWhenPulled == pulled ? run.Ohms[contact.Branch] : ElectricalLimits.OpenOhms);
        }
    }

    public override int Next(Run run)
    {
        var p = Parameters(run);
        return Pull(run) >= (run.State[Slot] == Pulled ? p[1] : p[0]) ? Pulled : AtRest;
    }

    public override double Urgency(Run run, int next) => Past(Parameters(run)[next == Pulled ? 0 : 1], Pull(run));

    /// <summary>Volts across the coil; a coil with shorted turns has volts but no ampere-turns, an open one neither.</summary>
    private double Pull(Run run) => run.Ohms[coil] < 0.5 * relay.CoilOhms || run.Ohms[coil] >= ElectricalLimits.OpenOhms
        ? 0
        : Math.Abs(run.Across(coil)) * relay.CoilOhms / run.Ohms[coil];
}
