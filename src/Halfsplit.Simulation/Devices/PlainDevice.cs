using System.Collections.Immutable;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>All branches that are a resistance and nothing else.</summary>
internal sealed class PlainDevice(ImmutableArray<int> branches) : Device("")
{
    public override DeviceStage Stage => DeviceStage.Fixed;

    public override void Stamp(Run run, Frame frame)
    {
        foreach (var branch in branches)
        {
            frame.Set(branch, run.Ohms[branch]);
        }
    }
}
