using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Simulation.Faults;

/// <summary>Every way every part of a circuit can fail, the degrees scaled to the current each thing carries.</summary>
public static class FaultCatalog
{
    /// <summary>All fault modes, in the order of the network's branches and the sheet's parts.</summary>
    public static ImmutableArray<FaultMode> For(CircuitSimulator simulator)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        var network = simulator.Network;
        var ranges = OhmsRange.Of(simulator);
        var modes = ImmutableArray.CreateBuilder<FaultMode>();
        for (var i = 0; i < network.Branches.Length; i++)
        {
            AddJoint(modes, network, i, ranges[i]);
        }

        foreach (var part in network.Circuit.Parts)
        {
            AddPart(modes, network, part, ranges);
        }

        return modes.ToImmutable();
    }

    private static void AddJoint(
        ImmutableArray<FaultMode>.Builder modes, CircuitNetwork network, int index, OhmsRange range)
    {
        var branch = network.Branches[index];
        var kind = branch.Use switch
        {
            BranchUse.Wire => "wire",
            BranchUse.Cavity => "cavity",
            BranchUse.Socket => "socket",
            BranchUse.GroundPoint => "ground",
            _ => null,
        };
        if (kind is null || branch.From == branch.To)
        {
            return;
        }

        modes.Add(new FaultMode(branch.Target!, FaultModes.Open, kind, branch.Owner, SeverityUnit.None, []));
        modes.Add(new FaultMode(
            branch.Target!, FaultModes.Resistive, kind, branch.Owner, SeverityUnit.Ohms, range.Steps()));
        if (branch.Use == BranchUse.Wire)
        {
            modes.Add(new FaultMode(branch.Target!, FaultModes.ShortToGround, kind, branch.Owner, SeverityUnit.None, []));
            modes.Add(new FaultMode(branch.Target!, FaultModes.ShortToFeed, kind, branch.Owner, SeverityUnit.None, []));
        }
    }

    private static void AddPart(
        ImmutableArray<FaultMode>.Builder modes, CircuitNetwork network, Part part, ImmutableArray<OhmsRange> ranges)
    {
        void Plain(params string[] names)
        {
            foreach (var name in names)
            {
                modes.Add(new FaultMode(part.Id, name, part.Kind, part.Id, SeverityUnit.None, []));
            }
        }

        void Graded(string name, SeverityUnit unit, ImmutableArray<double> severities) =>
            modes.Add(new FaultMode(part.Id, name, part.Kind, part.Id, unit, severities));

        ImmutableArray<double> Steps(BranchUse use)
        {
            for (var i = 0; i < network.Branches.Length; i++)
            {
                if (network.Branches[i].Owner == part.Id && network.Branches[i].Use == use)
                {
                    return ranges[i].Steps();
                }
            }

            return new OhmsRange(OhmsRange.Sensing, OhmsRange.Sensing).Steps();
        }

        switch (part)
        {
            case Battery battery:
                var rest = battery.RestVolts;
                // So near to each other that what a battery rests at in one car and another fills the gaps.
                ImmutableArray<double> shares = [0.2, 0.26, 0.33, 0.4, 0.46, 0.52, 0.58, 0.64, 0.7, 0.75, 0.8, 0.84, 0.88, 0.92];
                Graded(FaultModes.Discharged, SeverityUnit.Volts, [.. shares.Select(s => s * rest)]);
                Graded(FaultModes.Weak, SeverityUnit.Ohms, [0.03, 0.06, 0.1, 0.2, 0.5, 1, 3]);
                break;
            case Alternator:
                Plain(FaultModes.NoOutput);
                break;
            case Fuse or Breaker or Ptc or Diode or Resistor:
                Plain(FaultModes.Open);
                if (part is Diode)
                {
                    Plain(FaultModes.Shorted);
                }

                break;
            case Connector:
                Plain(FaultModes.Loose);
                break;
            case Relay:
                Plain(FaultModes.CoilOpen, FaultModes.CoilShorted, FaultModes.Stuck, FaultModes.Welded, FaultModes.ContactOpen);
                Graded(FaultModes.ContactResistive, SeverityUnit.Ohms, Steps(BranchUse.RelayContact));
                break;
            case Switch change:
                Plain(FaultModes.ContactOpen);
                Plain(change.OpensByItself ? FaultModes.Tripped : FaultModes.StuckAtRest);
                Graded(FaultModes.ContactResistive, SeverityUnit.Ohms, Steps(BranchUse.SwitchContact));
                break;
            case Module module:
                Plain(FaultModes.Dead);
                foreach (var output in module.Outputs)
                {
                    foreach (var name in (string[])[FaultModes.OutputOff, FaultModes.NotCommanded, FaultModes.OutputOn])
                    {
                        modes.Add(new FaultMode(
                            $"{module.Id}.{output.Name}", name, part.Kind, part.Id, SeverityUnit.None, []));
                    }
                }

                break;
            case Motor motor:
                Plain(FaultModes.Open, FaultModes.Seized);
                Graded(FaultModes.BrushesWorn, SeverityUnit.Ohms, Steps(BranchUse.Winding));
                Graded(FaultModes.Shorted, SeverityUnit.Ohms, [0.05 * motor.WindingOhms, 0.3 * motor.WindingOhms]);
                Graded(FaultModes.Tight, SeverityUnit.Ratio, [1.5, 1.8, 2.2, 2.7, 3.3, 4, 5]);
                break;
            case Starter:
                Plain(FaultModes.CoilOpen, FaultModes.Stuck, FaultModes.ContactOpen, FaultModes.Seized);
                Graded(FaultModes.ContactResistive, SeverityUnit.Ohms, Steps(BranchUse.RelayContact));
                break;
            case Lamp { Filaments.Length: > 1 } lamp:
                foreach (var filament in lamp.Filaments)
                {
                    modes.Add(new FaultMode(
                        $"{lamp.Id}.{filament.Terminal}", FaultModes.Open, part.Kind, part.Id, SeverityUnit.None, []));
                }

                break;
            case Lamp or Led:
                Plain(FaultModes.Open);
                break;
            case Heater heater:
                Plain(FaultModes.Open);
                Graded(FaultModes.Shorted, SeverityUnit.Ohms, [0.02 * heater.Ohms]);
                break;
            case Solenoid solenoid:
                Plain(FaultModes.Open, FaultModes.Stuck);
                Graded(FaultModes.Shorted, SeverityUnit.Ohms, [0.05 * solenoid.Ohms]);
                break;
            case Sensor:
                Plain(FaultModes.Open);
                Graded(FaultModes.Shorted, SeverityUnit.Ohms, [1]);
                break;
            default:
                break;
        }
    }
}
