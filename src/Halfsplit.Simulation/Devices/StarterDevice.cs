using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>
/// Solenoid with pull-in winding (50 through the motor) and hold-in winding (50 to 31), main contact, cranking motor.
/// Both windings carry full volts until the main contact closes, then only the hold-in winding does. A broken hold-in
/// winding therefore chatters, as in life.
/// </summary>
internal sealed class StarterDevice(Starter starter, int contact, int winding, int pullIn, int holdIn)
    : Device(starter.Id)
{
    /// <summary>Share of the pull at rest that the pull-in winding gives, by the currents of the two; from memory.</summary>
    private const double PullInShare = 0.75;

    private const int Engaged = 1;
    private const int Turning = 2;

    public int Winding => winding;

    public override DeviceStage Stage => DeviceStage.Slow;

    public override int ParameterCount => 3;

    public override void Prepare(Run run)
    {
        var p = Parameters(run);
        p[0] = starter.EngageVolts * run.ThresholdFactor;
        p[1] = starter.ReleaseVolts * run.ThresholdFactor;
        p[2] = run.IsFaulted(Part, FaultModes.Seized) || run.Ohms[winding] >= ElectricalLimits.OpenOhms ? 1 : 0;
    }

    public MotorLaw Law(Run run) =>
        MotorLaw.Of(starter.RunAmps, starter.RunVolts, starter.WindingOhms, null) with { Ohms = run.Ohms[winding] };

    public static bool IsTurning(int state) => (state & Turning) != 0;

    public static bool IsEngaged(int state) => (state & Engaged) != 0;

    public override void Stamp(Run run, Frame frame)
    {
        var state = run.State[Slot];
        frame.Set(pullIn, run.Ohms[pullIn]);
        frame.Set(holdIn, run.Ohms[holdIn]);
        frame.Set(contact, IsEngaged(state) ? run.Ohms[contact] : ElectricalLimits.OpenOhms);
        if (IsTurning(state))
        {
            var law = Law(run);
            frame.Conductance[winding] = law.TurningConductance;
            frame.Source[winding] = law.TurningSource;
        }
        else
        {
            frame.Set(winding, run.Ohms[winding]);
        }
    }

    public override int Next(Run run)
    {
        var p = Parameters(run);
        var state = run.State[Slot];
        var engaged = !run.IsFaulted(Part, FaultModes.Stuck) && Plunger(run) >= (IsEngaged(state) ? p[1] : p[0]);
        var law = Law(run);
        var needed = IsTurning(state) ? law.KeepVolts : law.StartVolts;
        var turning = p[2] == 0 && engaged && IsEngaged(state) && run.Across(winding) >= needed;
        return (engaged ? Engaged : 0) | (turning ? Turning : 0);
    }

    public override double Urgency(Run run, int next)
    {
        var p = Parameters(run);
        var state = run.State[Slot];
        if (IsEngaged(next) != IsEngaged(state))
        {
            return Past(IsEngaged(state) ? p[1] : p[0], Plunger(run));
        }

        var law = Law(run);
        return Past(IsTurning(state) ? law.KeepVolts : law.StartVolts, run.Across(winding));
    }

    /// <summary>
    /// Volts that stand for the plunger's pull. At rest the heavy pull-in winding does most of the work across the wide
    /// gap; with the gap closed the hold-in winding alone suffices, and the pull-in one, now shorted by the main contact,
    /// gives nothing.
    /// </summary>
    private double Plunger(Run run)
    {
        var hold = IsEngaged(run.State[Slot]) ? 1 : 1 - PullInShare;
        return (hold * Pull(run, holdIn)) + (PullInShare * Pull(run, pullIn));
    }

    private static double Pull(Run run, int coil) =>
        run.Ohms[coil] >= ElectricalLimits.OpenOhms ? 0 : Math.Abs(run.Across(coil));
}
