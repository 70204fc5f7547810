using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// Probabilities of answers in words, from the simulated state of the car. How well people see, hear and feel is an
/// assumption throughout.
/// </summary>
internal static class WordForecasts
{
    /// <summary>Watts in a joint from which a hand feels it; common practice, no published source.</summary>
    internal const double WarmWatts = 1.5;

    public static ImmutableArray<double> Of(
        Forecaster forecaster, Hypothesis car, Check check, OperatingPoint point, ImmutableArray<Repair> repairs)
    {
        var about = check.Probe.About!;
        var faults = Forecaster.Remaining(car.Faults, repairs);
        return check.Subject switch
        {
            CheckSubject.LoadWork or CheckSubject.WorkHot or CheckSubject.WorkAgain => Work(point.Load(about), point.IsSteady, check.Answers.Length),
            CheckSubject.RelayClick => Two(
                !point.IsSteady ? 0.9 : point.IsPulledIn(about) && !Has(faults, about, FaultModes.Welded, FaultModes.Stuck) ? 0.94 : 0.05),
            CheckSubject.FuseLook => Two(Has(faults, about, FaultModes.Open) ? 0.15 : point.IsBlown(about) ? 0.03 : 0.97),
            CheckSubject.PinFit => Two(Fits(faults, about)),
            CheckSubject.JointHeat => Two(1 - Normal.Step((Heat(point, about) - WarmWatts) / 0.4)),
            CheckSubject.Wiggle => Two(Holds(faults, about)),
            CheckSubject.ScanCommand => Two(IsCommanded(point, faults, about) ? 0.95 : 0.05),
            CheckSubject.ScanCode => Two(StoresCode(forecaster, faults, about) ? 0.85 : 0.06),
            CheckSubject.BenchRelay => Two(PassesBench(faults, about)),
            CheckSubject.SwapRelay => Two(CuredBySwap(forecaster, car, check, repairs) ? 0.97 : 0.02),
            _ => [1],
        };
    }

    /// <summary>
    /// Odds that a load which is not dead does its work fully in this car and to these eyes: parts, supply and eyes differ, one standard
    /// deviation of the share by which it is judged; an assumption.
    /// </summary>
    public static double FullWork(LoadState state) => Normal.Below((state.Share - 1) / EyesSpread);

    private const double EyesSpread = 0.05;

    /// <summary>True for looks at a load: where it stops to do its work lies somewhere inside a cell of severity.</summary>
    public static bool TurnsOnDegree(CheckSubject subject) =>
        subject is CheckSubject.LoadWork or CheckSubject.WorkHot or CheckSubject.WorkAgain;

    /// <summary>Beeps below a threshold that lies somewhere between the published ones.</summary>
    public static ImmutableArray<double> Buzzer(double ohms)
    {
        var beeps = 1 - (Math.Log(Math.Max(ohms, 1e-3) / Meter.BuzzerLowOhms) / Math.Log(Meter.BuzzerHighOhms / Meter.BuzzerLowOhms));
        return Two(Math.Clamp(beeps, 0.005, 0.995));
    }

    /// <summary>Bright, dim or dark by the share of the nominal volts across the lamp.</summary>
    public static ImmutableArray<double> Glow(double share)
    {
        var bright = Normal.Step((share - 0.75) / 0.04);
        var dark = Normal.Step((0.15 - share) / 0.03);
        var dim = Math.Max(0.005, 1 - bright - dark);
        return [bright / (bright + dim + dark), dim / (bright + dim + dark), dark / (bright + dim + dark)];
    }

    private static ImmutableArray<double> Work(LoadState state, bool steady, int groups)
    {
        ImmutableArray<double> heard = !steady ? [0.1, 0.3, 0.4, 0.2]
            : state.Condition != LoadCondition.Dead ? WorksOrWeak(FullWork(state))
            : state.Stalled ? [0.01, 0.03, 0.56, 0.40] : [0.005, 0.015, 0.96, 0.02];

        // Where humming cannot be told, what hums counts as dead.
        return groups == heard.Length ? heard : [heard[0], heard[1], heard[2] + heard[3]];
    }

    private static ImmutableArray<double> WorksOrWeak(double full)
    {
        ReadOnlySpan<double> works = [0.96, 0.03, 0.008, 0.002], weak = [0.08, 0.84, 0.06, 0.02];
        var heard = new double[works.Length];
        for (var i = 0; i < heard.Length; i++)
        {
            heard[i] = (full * works[i]) + ((1 - full) * weak[i]);
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(heard);
    }

    private static bool Has(ImmutableArray<Fault> faults, string part, params ReadOnlySpan<string> modes)
    {
        foreach (var fault in faults)
        {
            if (fault.Part == part && modes.Contains(fault.Mode))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsJointOf(Fault fault, string part) =>
        (fault.Part == part || fault.Part.StartsWith(part + ".", StringComparison.Ordinal))
        && fault.Mode is FaultModes.Open or FaultModes.Resistive or FaultModes.Loose;

    private static double Fits(ImmutableArray<Fault> faults, string part)
    {
        foreach (var fault in faults)
        {
            if (IsJointOf(fault, part))
            {
                return fault.Mode == FaultModes.Loose ? 0.05 : 0.4;
            }
        }

        return 0.94;
    }

    private static double Holds(ImmutableArray<Fault> faults, string part)
    {
        foreach (var fault in faults)
        {
            if (IsJointOf(fault, part))
            {
                return fault.Mode == FaultModes.Loose ? 0.2 : 0.6;
            }
        }

        return 0.98;
    }

    private static double Heat(OperatingPoint point, string part)
    {
        var most = 0.0;
        var branches = point.Network.Branches;
        for (var i = 0; i < branches.Length; i++)
        {
            if (branches[i].Owner == part && branches[i].Use is BranchUse.Cavity or BranchUse.GroundPoint)
            {
                var amps = point.Amps(i);
                most = Math.Max(most, amps * amps * point.Ohms(i));
            }
        }

        return most;
    }

    private static bool IsCommanded(OperatingPoint point, ImmutableArray<Fault> faults, string output)
    {
        var name = TerminalName.Parse(output);
        return point.IsAwake(name.Part)
            && !Has(faults, output, FaultModes.NotCommanded)
            && (point.IsDriving(name.Part, name.Name) || Has(faults, output, FaultModes.OutputOff));
    }

    /// <summary>
    /// A module that watches its output while it is off sees a broken control circuit: the volts there are not those of
    /// the healthy car, in some condition that leaves the output off.
    /// </summary>
    private static bool StoresCode(Forecaster forecaster, ImmutableArray<Fault> faults, string output)
    {
        const double Differs = 2;
        var name = TerminalName.Parse(output);
        foreach (var condition in forecaster.Network.Circuit.Conditions)
        {
            var arrangement = new Arrangement(condition.Name);
            var healthy = forecaster.Simulator.Simulate(arrangement, []);
            if (!healthy.IsAwake(name.Part) || healthy.IsDriving(name.Part, name.Name))
            {
                continue;
            }

            var point = forecaster.Simulator.Simulate(arrangement, faults);
            if (point.IsAwake(name.Part) && Math.Abs(point.Volts(name) - healthy.Volts(name)) > Differs)
            {
                return true;
            }
        }

        return false;
    }

    private static double PassesBench(ImmutableArray<Fault> faults, string relay)
    {
        foreach (var fault in faults)
        {
            if (fault.Part != relay)
            {
                continue;
            }

            // The bench's buzzer passes contacts that drop volts under load: that is its blind spot.
            return fault.Mode == FaultModes.ContactResistive ? Buzzer(fault.Severity ?? 1)[0] : 0.03;
        }

        return 0.98;
    }

    private static bool CuredBySwap(
        Forecaster forecaster, Hypothesis car, Check check, ImmutableArray<Repair> repairs)
    {
        var relay = check.Probe.About!;
        var left = Forecaster.Remaining(car.Faults, repairs);
        var others = left.Where(f => f.Part != relay).ToImmutableArray();
        if (others.Length == left.Length)
        {
            return false;
        }

        return forecaster.Simulator
            .Simulate(new Arrangement(check.Arrangement.Condition), others, new SimulationOptions(car.ThresholdFactor))
            .Load(forecaster.Load).Condition == LoadCondition.Works;
    }

    private static ImmutableArray<double> Two(double first) => [first, 1 - first];
}
