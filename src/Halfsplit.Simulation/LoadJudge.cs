using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Devices;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Simulation;

/// <summary>Says whether a load works, is weak or is dead: a range of volts across it and of amps through it.</summary>
internal static class LoadJudge
{
    /// <summary>Below this share of rated volts a lamp or heater counts as dead to a person; common practice, no published source.</summary>
    private const double DeadShare = 0.25;

    /// <summary>Below this share of the current its volts should drive, a load is not taking its current.</summary>
    private const double AmpsShare = 0.6;

    public static LoadState Judge(OperatingPoint point, Load load) => load switch
    {
        Motor motor => Turning(point, motor),
        Starter starter => Cranking(point, starter),
        Solenoid solenoid => Pulling(point, solenoid),
        _ => Glowing(point, load),
    };

    /// <summary>Share of the rated current from which a motor that stands still is fed: an open winding carries none.</summary>
    private const double StalledShare = 0.3;

    private static LoadState Turning(OperatingPoint point, Motor motor)
    {
        var device = point.Device<MotorDevice>(motor.Id)!;
        var volts = point.Run.Across(device.Branch);
        var amps = point.Run.Amps(device.Branch);
        var turning = MotorDevice.IsTurning(point.Run.State[device.Slot]);
        if (!turning)
        {
            return new LoadState(LoadCondition.Dead, volts, amps, Math.Abs(amps) > StalledShare * motor.RatedAmps);
        }

        var share = device.Law(point.Run).BackEmf(Math.Abs(volts)) / MotorLaw.Of(motor).BackEmf(motor.Works.Low);
        return new LoadState(AtLeastWeak(share), volts, amps, false, share);
    }

    private static LoadState Cranking(OperatingPoint point, Starter starter)
    {
        var device = point.Device<StarterDevice>(starter.Id)!;
        var volts = point.Run.Across(device.Winding);
        var amps = point.Run.Amps(device.Winding);
        var state = point.Run.State[device.Slot];
        if (!StarterDevice.IsTurning(state))
        {
            return new LoadState(LoadCondition.Dead, volts, amps, StarterDevice.IsEngaged(state));
        }

        var share = volts / starter.Works.Low;
        return new LoadState(AtLeastWeak(share), volts, amps, false, share);
    }

    private static LoadState Pulling(OperatingPoint point, Solenoid solenoid)
    {
        // Behind a pulsed output it moves with every pulse: what counts are the volts while the output is on.
        var branch = point.Network.BranchesOf(solenoid.Id)[0];
        var on = point.Run.Frames[0];
        var ends = point.Network.Branches[branch];
        var volts = on.At(ends.From) - on.At(ends.To);
        var amps = on.Conductance[branch] * volts;
        var moves = !point.Run.IsFaulted(solenoid.Id, FaultModes.Stuck)
            && Math.Abs(amps) * solenoid.Ohms >= solenoid.PullInVolts
            && Math.Abs(amps) < 3 * Math.Abs(volts) / solenoid.Ohms;
        var share = moves ? Math.Abs(volts) / solenoid.Works.Low : 0;
        return new LoadState(moves ? AtLeastWeak(share) : LoadCondition.Dead, volts, amps, false, share);
    }

    private static LoadState Glowing(OperatingPoint point, Load load)
    {
        if (load is Lamp { Filaments.Length: > 1 } lamp)
        {
            return BestFilament(point, lamp);
        }

        var (volts, amps) = Across(point, load);
        return Glowing(load, volts, amps, load.RatedVolts / load.RatedAmps);
    }

    private static LoadState BestFilament(OperatingPoint point, Lamp lamp)
    {
        var best = new LoadState(LoadCondition.Dead, 0, 0, false);
        foreach (var filament in lamp.Filaments)
        {
            var volts = point.Volts(new(lamp.Id, filament.Terminal)) - point.Volts(new(lamp.Id, lamp.Common));
            var branch = point.Network.BranchesOf($"{lamp.Id}.{filament.Terminal}")[0];
            var amps = point.Run.Amps(branch);
            var glow = Glowing(lamp, volts, amps, lamp.LampVolts * lamp.LampVolts / filament.Watts);
            if (glow.Condition >= best.Condition && Math.Abs(volts) >= Math.Abs(best.Volts))
            {
                best = glow;
            }
        }

        return best;
    }

    private static LoadCondition AtLeastWeak(double share) => share >= 1 ? LoadCondition.Works : LoadCondition.Weak;

    private static LoadState Glowing(Load load, double volts, double amps, double hotOhms)
    {
        var size = Math.Abs(volts);
        var expected = load is Lamp lamp
            ? size / FilamentLaw.Ohms(hotOhms, lamp.LampVolts, size)
            : load is Led led ? Math.Max(0, size - led.ForwardVolts) / (hotOhms * (1 - (led.ForwardVolts / led.RunVolts))) : size / hotOhms;
        if (size < DeadShare * load.RatedVolts || Math.Abs(amps) < AmpsShare * expected || expected <= 0)
        {
            return new LoadState(LoadCondition.Dead, volts, amps, false);
        }

        var share = size / load.Works.Low;
        return new LoadState(AtLeastWeak(share), volts, amps, false, share);
    }

    private static (double Volts, double Amps) Across(OperatingPoint point, Load load)
    {
        var branch = point.Network.BranchesOf(load.Id)[0];
        return (point.Run.Across(branch), point.Run.Amps(branch));
    }
}
