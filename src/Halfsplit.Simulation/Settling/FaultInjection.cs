using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Simulation.Settling;

/// <summary>Applies faults that are plain changes of a branch's ohms, unplugged and removed parts, jumpers and shorts.</summary>
internal static class FaultInjection
{
    /// <summary>Changes <see cref="Run.Ohms"/> and returns what is laid on.</summary>
    public static Attachment[] Apply(Run run, Arrangement? arrangement, ReadOnlySpan<Attachment> laidOn)
    {
        var network = run.Network;
        List<Attachment>? attachments = null;
        foreach (var fault in run.Faults)
        {
            if (fault.Mode is FaultModes.ShortToGround or FaultModes.ShortToFeed)
            {
                Short(network, fault, attachments ??= []);
            }
            else if (fault.Mode == FaultModes.Loose)
            {
                OpenCavities(run, fault.Part);
            }
            else
            {
                Change(run, fault);
            }
        }

        if (arrangement is not null)
        {
            foreach (var connector in arrangement.Unplugged)
            {
                OpenCavities(run, connector);
            }

            foreach (var part in arrangement.Removed)
            {
                OpenAll(run, part, BranchUse.Socket);
            }

            foreach (var jumper in arrangement.Jumpers)
            {
                (attachments ??= []).Add(new Attachment(
                    network.NodeOf(jumper.From), network.NodeOf(jumper.To), ElectricalLimits.JumperOhms));
            }
        }

        if (attachments is null)
        {
            return laidOn.ToArray();
        }

        attachments.AddRange(laidOn);
        return [.. attachments];
    }

    private static void OpenCavities(Run run, string connector) => OpenAll(run, connector, BranchUse.Cavity);

    private static void OpenAll(Run run, string part, BranchUse use)
    {
        var branches = run.Network.Branches;
        for (var i = 0; i < branches.Length; i++)
        {
            if (branches[i].Use == use && branches[i].Owner == part)
            {
                run.Ohms[i] = ElectricalLimits.OpenOhms;
            }
        }
    }

    private static void Short(CircuitNetwork network, Fault fault, List<Attachment> attachments)
    {
        var branches = network.BranchesOf(fault.Part);
        if (branches.Length == 0)
        {
            return;
        }

        // The downstream end of the wire stands for the worn spot: same conductor, same node but for milliohms.
        var node = network.Branches[branches[0]].To;
        var other = fault.Mode == FaultModes.ShortToGround
            ? network.NodeOf(new TerminalName(Metal.Body))
            : network.NodeOf(new TerminalName(network.Circuit.Battery.Id, "pos"));
        attachments.Add(new Attachment(node, other, fault.Severity ?? ElectricalLimits.ShortOhms));
    }

    private static void Change(Run run, Fault fault)
    {
        foreach (var index in run.Network.BranchesOf(fault.Part))
        {
            var use = run.Network.Branches[index].Use;
            ref var ohms = ref run.Ohms[index];
            switch (fault.Mode)
            {
                case FaultModes.Open when use is not (BranchUse.Coil or BranchUse.Suppression):
                case FaultModes.CoilOpen when use == BranchUse.Coil:
                case FaultModes.ContactOpen when use is BranchUse.RelayContact or BranchUse.SwitchContact:
                    ohms = ElectricalLimits.OpenOhms;
                    break;
                case FaultModes.Resistive or FaultModes.BrushesWorn
                    when use is not (BranchUse.Coil or BranchUse.Suppression):
                case FaultModes.ContactResistive when use is BranchUse.RelayContact or BranchUse.SwitchContact:
                    ohms += fault.Severity ?? 1;
                    break;
                case FaultModes.Shorted when use is BranchUse.Winding or BranchUse.Filament or BranchUse.Element:
                case FaultModes.CoilShorted when use == BranchUse.Coil:
                    ohms = fault.Severity ?? 0.1 * ohms;
                    break;
                case FaultModes.Drifted:
                    ohms *= fault.Severity ?? 2;
                    break;
                default:
                    break;
            }
        }
    }
}
