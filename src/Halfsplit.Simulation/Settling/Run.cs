using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Devices;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Simulation.Settling;

/// <summary>
/// One car in one condition: the network's values with faults, arrangement and condition applied, and the state of its
/// devices. The caller's circuit is never changed.
/// </summary>
internal sealed class Run
{
    private readonly double[] _average;

    public Run(
        CircuitNetwork network, Condition condition, Arrangement? arrangement, IReadOnlyList<Fault> faults,
        ReadOnlySpan<Attachment> laidOn, double thresholdFactor)
    {
        Network = network;
        Condition = condition;
        Faults = faults;
        ThresholdFactor = thresholdFactor;
        Seconds = condition.LastsSeconds ?? ElectricalLimits.HeldSeconds;
        Ohms = new double[network.Branches.Length];
        for (var i = 0; i < Ohms.Length; i++)
        {
            Ohms[i] = network.Branches[i].Ohms;
        }

        Attachments = FaultInjection.Apply(this, arrangement, laidOn);
        Parameters = new double[network.ParameterCount];
        State = new int[network.Devices.Length];
        foreach (var device in network.Devices)
        {
            device.Prepare(this);
        }

        var branches = Ohms.Length + Attachments.Length;
        var nodes = network.NodeNames.Length;
        var on = new Frame(branches, nodes, pulseOff: false);
        Frames = Duty is > 0 and < 1
            ? [on, new Frame(branches, nodes, pulseOff: true) { Weight = 1 - Duty }]
            : [on];
        on.Weight = Frames.Length == 2 ? Duty : 1;
        _average = Frames.Length == 1 ? on.Volts : new double[nodes];
        AttachmentOhms = new double[Attachments.Length];
        for (var i = 0; i < Attachments.Length; i++)
        {
            AttachmentOhms[i] = Attachments[i].Ohms;
        }
    }

    public CircuitNetwork Network { get; }
    public Condition Condition { get; }
    public IReadOnlyList<Fault> Faults { get; }

    /// <summary>Multiplies the thresholds of relays and the melting times of fuses: cars differ.</summary>
    public double ThresholdFactor { get; }

    /// <summary>How long the condition lasts, in seconds.</summary>
    public double Seconds { get; }

    /// <summary>Ohms of every branch with faults and arrangement applied.</summary>
    public double[] Ohms { get; }

    public Attachment[] Attachments { get; }

    /// <summary>Ohms of the attachments for the next solution; lamps change theirs.</summary>
    public double[] AttachmentOhms { get; }

    public double[] Parameters { get; }

    /// <summary>One discrete state per device.</summary>
    public int[] State { get; }

    /// <summary>Share of time the pulsed outputs are on; set by the module that drives one.</summary>
    public double Duty { get; set; } = 1;

    public Frame[] Frames { get; }

    public bool IsFaulted(string part, string mode)
    {
        for (var i = 0; i < Faults.Count; i++)
        {
            if (Faults[i].Part == part && Faults[i].Mode == mode)
            {
                return true;
            }
        }

        return false;
    }

    public double? Severity(string part, string mode)
    {
        for (var i = 0; i < Faults.Count; i++)
        {
            if (Faults[i].Part == part && Faults[i].Mode == mode)
            {
                return Faults[i].Severity;
            }
        }

        return null;
    }

    /// <summary>Mean volts of a node over the frames.</summary>
    public double Volts(int node) => node < 0 ? 0 : _average[node];

    /// <summary>Mean volts across a branch.</summary>
    public double Across(int branch)
    {
        var b = Network.Branches[branch];
        return Volts(b.From) - Volts(b.To);
    }

    /// <summary>Mean amps through a branch, from its first node to its second.</summary>
    public double Amps(int branch)
    {
        var amps = 0.0;
        var b = Network.Branches[branch];
        foreach (var frame in Frames)
        {
            amps += frame.Weight
                * ((frame.Conductance[branch] * (frame.At(b.From) - frame.At(b.To))) + frame.Source[branch]);
        }

        return amps;
    }

    /// <summary>
    /// Mean amps through something laid on, from its first node to its second, by the conductance it was solved with:
    /// a lamp's present ohms are already a step ahead.
    /// </summary>
    public double LaidAmps(int attachment)
    {
        var laid = Attachments[attachment];
        return Frames[0].Conductance[Network.Branches.Length + attachment] * (Volts(laid.From) - Volts(laid.To));
    }

    internal void Average()
    {
        if (Frames.Length == 1)
        {
            return;
        }

        Array.Clear(_average);
        foreach (var frame in Frames)
        {
            for (var i = 0; i < _average.Length; i++)
            {
                _average[i] += frame.Weight * frame.Volts[i];
            }
        }
    }
}
