using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Simulation.Faults;

/// <summary>Every way every part of a circuit can fail, the degrees scaled to the current each thing carries.</summary>
public static class FaultCatalog
{
    /// <summary>Ohms scale of things that carry no current worth the name.</summary>
    private const double SensingOhms = 1000;

    /// <summary>The highest resistance that still counts as a bad joint and not as an open one.</summary>
    private const double MostOhms = 3e5;

    private const int PointsPerDecade = 4;

    /// <summary>All fault modes, in the order of the network's branches and the sheet's parts.</summary>
    public static ImmutableArray<FaultMode> For(CircuitSimulator simulator)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        var network = simulator.Network;
        var scale = OhmsScale(simulator);
        var modes = ImmutableArray.CreateBuilder<FaultMode>();
        for (var i = 0; i < network.Branches.Length; i++)
        {
            AddJoint(modes, network, i, scale[i]);
        }

        foreach (var part in network.Circuit.Parts)
        {
            AddPart(modes, network, part, scale);
        }

        return modes.ToImmutable();
    }

    /// <summary>
    /// For each branch, the ohms at which the healthy circuit would drop its whole supply across it: supply volts over
    /// the most amps it carries in any condition. Severities are steps around this value.
    /// </summary>
    public static double[] OhmsScale(CircuitSimulator simulator)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        var branches = simulator.Network.Branches;
        var most = new double[branches.Length];
        foreach (var condition in simulator.Network.Circuit.Conditions)
        {
            var point = simulator.Simulate(new Arrangement(condition.Name), []);
            for (var i = 0; i < most.Length; i++)
            {
                most[i] = Math.Max(most[i], Math.Abs(point.Amps(i)));
            }
        }

        var volts = simulator.Network.Circuit.Battery.NominalVolts;
        return [.. most.Select(amps => amps < volts / SensingOhms ? SensingOhms : volts / amps)];
    }

    /// <summary>Half a decade's quarter steps around the scale from a hundredth to ten times, whole decades above.</summary>
    public static ImmutableArray<double> OhmsSteps(double scale)
    {
        var steps = ImmutableArray.CreateBuilder<double>();
        for (var k = -2 * PointsPerDecade; k <= PointsPerDecade; k++)
        {
            steps.Add(scale * Math.Pow(10, k / (double)PointsPerDecade));
        }

        for (var ohms = scale * 100; ohms <= MostOhms; ohms *= 10)
        {
            steps.Add(ohms);
        }

        return steps.ToImmutable();
    }

    private static void AddJoint(
        ImmutableArray<FaultMode>.Builder modes, CircuitNetwork network, int index, double scale)
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
            branch.Target!, FaultModes.Resistive, kind, branch.Owner, SeverityUnit.Ohms, OhmsSteps(scale)));
        if (branch.Use == BranchUse.Wire)
        {
            modes.Add(new FaultMode(branch.Target!, FaultModes.ShortToGround, kind, branch.Owner, SeverityUnit.None, []));
            modes.Add(new FaultMode(branch.Target!, FaultModes.ShortToFeed, kind, branch.Owner, SeverityUnit.None, []));
        }
    }

    private static void AddPart(
        ImmutableArray<FaultMode>.Builder modes, CircuitNetwork network, Part part, double[] scale)
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
                    return OhmsSteps(scale[i]);
                }
            }

            return OhmsSteps(SensingOhms);
        }

        switch (part)
        {
            case Battery battery:
                var rest = battery.RestVolts;
                Graded(FaultModes.Discharged, SeverityUnit.Volts, [0.2 * rest, 0.5 * rest, 0.7 * rest, 0.8 * rest, 0.87 * rest, 0.92 * rest]);
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
