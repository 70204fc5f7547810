using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>
/// The law of a tungsten filament: current rises with about the 0.55th power of the volts, so that its resistance rises
/// with the 0.45th, down to a cold floor. Exponent and floor from memory.
/// </summary>
internal static class FilamentLaw
{
    private const double Exponent = 0.45;
    private const double ColdShare = 0.1;

    public static double Ohms(double hotOhms, double ratedVolts, double volts) =>
        hotOhms * Math.Max(ColdShare, Math.Pow(Math.Abs(volts) / ratedVolts, Exponent));

    /// <summary>Siemens for a small change of the volts, as a share of amps over volts.</summary>
    public static double SmallChangeShare(double ratedVolts, double volts) =>
        Math.Pow(Math.Abs(volts) / ratedVolts, Exponent) > ColdShare ? 1 - Exponent : 1;
}

/// <summary>One filament: its ohms follow its volts until they settle.</summary>
internal sealed class LampDevice(string part, int branch, double ratedVolts) : Device(part)
{
    public int Branch => branch;

    public override DeviceStage Stage => DeviceStage.Fast;

    public override int ParameterCount => 1;

    public override void Prepare(Run run) =>
        Parameters(run)[0] = FilamentLaw.Ohms(run.Ohms[branch], ratedVolts, 0);

    public override void Stamp(Run run, Frame frame) =>
        frame.Set(branch, Intact(run) ? Parameters(run)[0] : run.Ohms[branch]);

    public override void Warm(Run before, Run now) => now.Parameters[Offset] = before.Parameters[Offset];

    /// <summary>Moves the filament's ohms to its volts; gives the share of themselves by which they moved.</summary>
    public double Follow(Run run)
    {
        if (!Intact(run))
        {
            return 0;
        }

        ref var ohms = ref run.Parameters[Offset];
        var wanted = FilamentLaw.Ohms(run.Ohms[branch], ratedVolts, run.Across(branch));
        var moved = Math.Abs(wanted - ohms) / ohms;
        ohms = wanted;
        return moved;
    }

    /// <summary>Siemens for a small change of its volts, as a share of amps over volts.</summary>
    public double SmallChangeShare(Run run) =>
        Intact(run) ? FilamentLaw.SmallChangeShare(ratedVolts, run.Across(branch)) : 1;

    private bool Intact(Run run)
    {
        var healthy = run.Network.Branches[branch].Ohms;
        return run.Ohms[branch] > 0.3 * healthy && run.Ohms[branch] < 1e3 * healthy;
    }
}
