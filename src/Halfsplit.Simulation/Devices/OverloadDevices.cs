using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>A device that opens when a current lasts too long.</summary>
internal abstract class OverloadDevice(string part, int branch) : Device(part)
{
    protected const int Whole = 0;
    protected const int Gone = 1;

    public int Branch => branch;

    public override DeviceStage Stage => DeviceStage.Melting;

    /// <summary>Seconds until it goes at the present current; infinity if never.</summary>
    public abstract double SecondsLeft(Run run);

    /// <summary>Ohms once it has gone.</summary>
    protected virtual double GoneOhms => ElectricalLimits.OpenOhms;

    public static bool IsGone(int state) => state == Gone;

    public override void Stamp(Run run, Frame frame) =>
        frame.Set(branch, run.State[Slot] == Gone ? GoneOhms : run.Ohms[branch]);

    public void Go(Run run) => run.State[Slot] = Gone;

    protected double PresentAmps(Run run) =>
        run.State[Slot] == Gone || run.Ohms[branch] >= ElectricalLimits.OpenOhms ? 0 : Math.Abs(run.Amps(branch));
}

/// <summary>A fuse or fusible link: goes by time and current and stays gone until it is replaced.</summary>
internal sealed class FuseDevice(Fuse fuse, int branch) : OverloadDevice(fuse.Id, branch)
{
    public override double SecondsLeft(Run run)
    {
        var percent = 100 * PresentAmps(run) / fuse.RatingAmps;
        if (percent < 100)
        {
            return double.PositiveInfinity;
        }

        var seconds = FuseTable.MeltSeconds(fuse.Type, percent);
        return Math.Sqrt(seconds.Low * seconds.High) * run.ThresholdFactor * run.ThresholdFactor;
    }
}

/// <summary>A thermal breaker: opens like a fuse, closes again when the car leaves the condition.</summary>
internal sealed class BreakerDevice(Breaker breaker, int branch) : OverloadDevice(breaker.Id, branch)
{
    public override double SecondsLeft(Run run) =>
        PresentAmps(run) < 1.35 * breaker.RatingAmps ? double.PositiveInfinity : 10 * run.ThresholdFactor;

    public override int Carry(int state) => Whole;
}

/// <summary>A resettable protector: goes high-ohmic above its trip current, resets when the car leaves the condition.</summary>
internal sealed class PtcDevice(Ptc ptc, int branch, double trippedOhms) : OverloadDevice(ptc.Id, branch)
{
    protected override double GoneOhms => trippedOhms;

    public override double SecondsLeft(Run run) =>
        PresentAmps(run) < ptc.TripAmps ? double.PositiveInfinity : 5 * run.ThresholdFactor;

    public override int Carry(int state) => Whole;
}
