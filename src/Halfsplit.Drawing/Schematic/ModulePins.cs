using Halfsplit.Circuits.Model;

namespace Halfsplit.Drawing.Schematic;

/// <summary>Which pins of a module take current in, at its top, and which give it out, at its bottom.</summary>
internal static class ModulePins
{
    /// <summary>Outputs, inputs and buses, and whether the module ties each to its feed rather than to its ground.</summary>
    public static IEnumerable<(string Name, bool PullsUp)> Signals(Module module) =>
        module.Outputs.Select(o => (o.Name, o.Side == OutputSide.High))
            .Concat(module.Inputs.Select(i => (i.Name, i.PullVolts > 0)))
            .Concat(module.Buses.Select(b => (b, true)));

    /// <summary>Feeds and what is tied to ground take current in.</summary>
    public static Side SideOf(Module module, string terminal) =>
        module.Feeds.Contains(terminal) ? Side.Top
        : module.Grounds.Contains(terminal) ? Side.Bottom
        : Signals(module).First(s => s.Name == terminal).PullsUp ? Side.Bottom : Side.Top;
}
