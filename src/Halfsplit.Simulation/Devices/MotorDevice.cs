using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>At rest a winding; turning, a conductance and a source. Needs more volts to start than to keep turning.</summary>
internal sealed class MotorDevice(Motor motor, int branch) : Device(motor.Id)
{
    public const int AtRest = 0;
    public const int Forward = 1;
    public const int Backward = 2;
    private const int PulsedForward = 3;
    private const int PulsedBackward = 4;

    public int Branch => branch;

    public override DeviceStage Stage => DeviceStage.Slow;

    public override int ParameterCount => 5;

    public override void Prepare(Run run)
    {
        var p = Parameters(run);
        var tight = run.Severity(Part, FaultModes.Tight) ?? 1;
        var healthy = MotorLaw.Of(motor);
        var law = new MotorLaw(
            run.Ohms[branch], healthy.Friction * tight, healthy.Slope * tight,
            motor.StartVolts is null || tight > 1
                ? healthy.StartVolts * tight * run.Ohms[branch] / motor.WindingOhms
                : motor.StartVolts.Value * run.Ohms[branch] / motor.WindingOhms);
        p[0] = law.Ohms;
        p[1] = law.Friction;
        p[2] = law.Slope;
        p[3] = law.StartVolts;
        p[4] = run.IsFaulted(Part, FaultModes.Seized) || run.IsFaulted(Part, FaultModes.Shorted)
            || law.Ohms >= ElectricalLimits.OpenOhms ? 1 : 0;
    }

    public MotorLaw Law(Run run)
    {
        var p = Parameters(run);
        return new MotorLaw(p[0], p[1], p[2], p[3]);
    }

    public override void Stamp(Run run, Frame frame)
    {
        var state = run.State[Slot];
        if (state == AtRest)
        {
            frame.Set(branch, run.Ohms[branch]);
            return;
        }

        var law = Law(run);
        var source = law.TurningSource * (state is Backward or PulsedBackward ? -1 : 1);
        if (state >= PulsedForward)
        {
            // Behind a pulsed output the mean law holds; the source acts while the output is on.
            source = frame.PulseOff ? 0 : source / run.Frames[0].Weight;
        }

        frame.Conductance[branch] = law.TurningConductance;
        frame.Source[branch] = source;
    }

    public override int Next(Run run)
    {
        var p = Parameters(run);
        if (p[4] != 0)
        {
            return AtRest;
        }

        var volts = run.Across(branch);
        var state = run.State[Slot];
        if (state == AtRest)
        {
            var starts = Math.Abs(volts) >= p[3] * run.ThresholdFactor && volts != 0;
            return !starts ? AtRest : Turning(run, volts > 0);
        }

        // A turning motor whose feed has gone runs down; only from rest may it turn the other way.
        var forward = state is Forward or PulsedForward;
        return (forward ? volts : -volts) >= p[1] * p[0] ? Turning(run, forward) : AtRest;
    }

    public override double Urgency(Run run, int next)
    {
        var p = Parameters(run);
        var threshold = run.State[Slot] == AtRest ? p[3] * run.ThresholdFactor : p[1] * p[0];
        return Past(threshold, Math.Abs(run.Across(branch)));
    }

    private int Turning(Run run, bool forward) => (forward ? Forward : Backward) + (IsPulsed(run) ? 2 : 0);

    public static bool IsTurning(int state) => state != AtRest;

    private bool IsPulsed(Run run)
    {
        if (run.Frames.Length < 2)
        {
            return false;
        }

        var b = run.Network.Branches[branch];
        var on = Math.Abs(run.Frames[0].At(b.From) - run.Frames[0].At(b.To));
        var off = Math.Abs(run.Frames[1].At(b.From) - run.Frames[1].At(b.To));
        return off < 0.3 * on;
    }
}
