using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>Contacts closed by position; the condition chooses the position.</summary>
internal sealed class SwitchDevice(Switch part, ImmutableArray<(SwitchContact Contact, int Branch)> contacts)
    : Device(part.Id)
{
    public override DeviceStage Stage => DeviceStage.Fixed;

    public override void Stamp(Run run, Frame frame)
    {
        var position = run.IsFaulted(Part, FaultModes.StuckAtRest)
            ? part.RestPosition
            : run.Condition.Settings.GetValueOrDefault(Part, part.RestPosition);
        var closed = run.IsFaulted(Part, FaultModes.Tripped)
            ? []
            : part.Positions.GetValueOrDefault(position, []);
        foreach (var (contact, branch) in contacts)
        {
            frame.Set(branch, closed.Contains(contact) ? run.Ohms[branch] : ElectricalLimits.OpenOhms);
        }
    }
}
