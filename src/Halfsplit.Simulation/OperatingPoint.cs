using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Devices;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation;

/// <summary>One car in one arrangement, settled: volts, amps and the state of everything.</summary>
public sealed class OperatingPoint
{
    internal OperatingPoint(Run run, SettleOutcome outcome)
    {
        Run = run;
        Chatter = outcome.Chatter;
        Unsettled = outcome.Unsettled;
    }

    internal Run Run { get; }

    public CircuitNetwork Network => Run.Network;

    /// <summary>Parts whose states repeat without end; empty if everything found its state.</summary>
    public ImmutableArray<string> Chatter { get; }

    /// <summary>A part whose law found no fixed point; null if all did.</summary>
    public string? Unsettled { get; }

    public bool IsSteady => Chatter.Length == 0 && Unsettled is null;

    /// <summary>Mean volts of a terminal against the battery's negative post.</summary>
    public double Volts(TerminalName terminal) => Run.Volts(Network.NodeOf(terminal));

    /// <summary>The same for a node of the network; 0 for the reference, which is node −1.</summary>
    public double NodeVolts(int node) => Run.Volts(node);

    /// <summary>Mean amps through a branch, from its first node to its second.</summary>
    public double Amps(int branch) => Run.Amps(branch);

    /// <summary>Mean amps out of the battery's positive post.</summary>
    public double BatteryAmps
    {
        get
        {
            var amps = 0.0;
            for (var i = 0; i < Network.Branches.Length; i++)
            {
                // The battery's source is the one branch of its kind with volts of its own.
                if (Network.Branches[i].Use == BranchUse.Source && Run.Frames[0].Source[i] != 0)
                {
                    amps -= Run.Amps(i);
                }
            }

            return amps;
        }
    }

    /// <summary>Fuses that have gone.</summary>
    public IEnumerable<string> BlownFuses => Network.Devices
        .OfType<FuseDevice>()
        .Where(f => OverloadDevice.IsGone(Run.State[f.Slot]))
        .Select(f => f.Part);

    /// <summary>Mean amps through a wire from its first end to its second; 0 if there is no such wire.</summary>
    public double WireAmps(string wire)
    {
        var found = Network.BranchesOf(wire);
        return found.Length == 0 ? 0 : Run.Amps(found[0]);
    }

    /// <summary>Amps through a jumper that is part of the arrangement; 0 if there is no such jumper.</summary>
    public double LaidAmps(Jumper jumper)
    {
        var from = Network.NodeOf(jumper.From);
        var to = Network.NodeOf(jumper.To);
        for (var i = 0; i < Run.Attachments.Length; i++)
        {
            if (Run.Attachments[i].From == from && Run.Attachments[i].To == to)
            {
                return Run.LaidAmps(i);
            }
        }

        return 0;
    }

    /// <summary>Ohms of a branch in its present state.</summary>
    public double Ohms(int branch) => 1 / Run.Frames[0].Conductance[branch];

    public bool IsPulledIn(string relay) => State<RelayDevice>(relay) == RelayDevice.Pulled;

    /// <summary>A fuse or protector that conducts no more, by overload or of itself.</summary>
    public bool IsBlown(string fuse) => Device<OverloadDevice>(fuse) is { } device
        && (OverloadDevice.IsGone(Run.State[device.Slot]) || Run.Ohms[device.Branch] >= ElectricalLimits.OpenOhms);

    /// <summary>Amps through a fuse.</summary>
    public double FuseAmps(string fuse) => Device<OverloadDevice>(fuse) is { } device ? Run.Amps(device.Branch) : 0;

    public bool IsAwake(string module) => Device<ModuleDevice>(module)?.IsAwake(Run) ?? false;

    public bool IsDriving(string module, string output) => Device<ModuleDevice>(module)?.IsDriving(Run, output) ?? false;

    /// <summary>How a load fares.</summary>
    public LoadState Load(string id) => LoadJudge.Judge(this, (Load)Network.Circuit[id]);

    /// <summary>The terminals between which a load does its work: of a lamp with several filaments those of the one that has most volts.</summary>
    public (TerminalName Feed, TerminalName Return) Driven(Load load)
    {
        ArgumentNullException.ThrowIfNull(load);
        var back = new TerminalName(load.Id, load.Across.Neg);
        return load is Lamp lamp
            ? (lamp.Filaments.Select(f => new TerminalName(lamp.Id, f.Terminal)).MaxBy(t => Math.Abs(Volts(t) - Volts(back))), back)
            : (new TerminalName(load.Id, load.Across.Pos), back);
    }

    /// <summary>True if this is wrong in the car.</summary>
    public bool HasFault(Fault fault) => Run.Faults.Contains(fault);

    /// <summary>True if every relay, motor, fuse and module is in the same state in both.</summary>
    public bool HasSameStates(OperatingPoint other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Run.State.AsSpan().SequenceEqual(other.Run.State);
    }

    internal T? Device<T>(string part) where T : Device
    {
        foreach (var device in Network.Devices)
        {
            if (device is T found && device.Part == part)
            {
                return found;
            }
        }

        return null;
    }

    private int State<T>(string part) where T : Device => Device<T>(part) is { } device ? Run.State[device.Slot] : -1;
}
