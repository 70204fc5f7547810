using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Safety;

/// <summary>
/// Refuses checks that could hurt: each is first simulated for the healthy circuit and for every living suspect.
/// </summary>
public sealed class SafetyScreen(Forecaster forecaster, DiagnosisOptions options)
{
    /// <summary>What a fused jumper with clips may carry; its fuse is 30 A. Common practice, no published source.</summary>
    private const double JumperAmps = 30;

    /// <summary>Amps through a test lamp or meter that a module's output must not be asked for.</summary>
    private const double OutputShare = 0.8;

    private static readonly Hypothesis Usual = new(-2, -1, [], 1, 0, null);
    private static readonly Hypothesis Early = Usual with { Index = -3, ThresholdFactor = HypothesisSpace.EarlyThresholds };
    private static readonly Hypothesis Late = Usual with { Index = -4, ThresholdFactor = HypothesisSpace.LateThresholds };

    private readonly Dictionary<string, bool> _known = new(StringComparer.Ordinal);

    /// <summary>True if the check can be offered.</summary>
    public bool Allows(Check check, Partition living, ImmutableArray<Repair> repairs)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(living);
        return Allows(check, living.Cars, repairs);
    }

    /// <summary>The same where only these cars are left.</summary>
    public bool Allows(Check check, IReadOnlyList<Hypothesis> cars, ImmutableArray<Repair> repairs)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(cars);
        if (ForbiddenPlace(check) || LoadsAnOutput(check) || JoinsRestingContact(check))
        {
            return false;
        }

        if (check.Arrangement.Jumpers.Length > 0 && options.SmellOfFuelOrImpact && BypassesCutOff(check))
        {
            return false;
        }

        if (!IsSafeFor(HealthyCar(), check, repairs))
        {
            return false;
        }

        foreach (var car in cars)
        {
            if (!car.IsNone && !IsSafeFor(car, check, repairs))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A car with nothing wrong, for the forecaster; its index collides with no hypothesis.</summary>
    /// <param name="thresholdFactor">One of the three draws of the thresholds.</param>
    public static Hypothesis HealthyCar(double thresholdFactor = 1) => thresholdFactor switch
    {
        1 => Usual,
        < 1 => Early,
        _ => Late,
    };

    private bool IsSafeFor(Hypothesis car, Check check, ImmutableArray<Repair> repairs)
    {
        var needsLook = check.Arrangement.Jumpers.Length > 0
            || check.Probe.Instrument is Instrument.Ohms or Instrument.Continuity or Instrument.AmpsInline or Instrument.TestLamp;
        if (!needsLook)
        {
            return true;
        }

        var point = forecaster.PointOf(car, check, repairs);
        return check.Probe.Instrument switch
        {
            Instrument.Ohms or Instrument.Continuity =>
                forecaster.MeanOf(car, check, repairs).Abstains != Abstention.LiveCircuit,
            Instrument.AmpsInline =>
                Math.Abs(forecaster.MeanOf(car, check, repairs).Value) <= options.MeterInUse.JackAmps,
            _ => true,
        } && BurnsNothing(point, check) && BlowsNothing(car, point, repairs) && MovesNothingElse(point, check);
    }

    /// <summary>Jumpers carry what they bear.</summary>
    private static bool BurnsNothing(OperatingPoint point, Check check)
    {
        foreach (var jumper in check.Arrangement.Jumpers)
        {
            if (Math.Abs(point.LaidAmps(jumper)) > JumperAmps)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>No fuse goes that had not gone before the check.</summary>
    private bool BlowsNothing(Hypothesis car, OperatingPoint point, ImmutableArray<Repair> repairs) =>
        !point.BlownFuses.Except(forecaster.Simulator.Blown(Forecaster.Remaining(car.Faults, repairs))).Any();

    /// <summary>A jumper may run the load complained of, and nothing else that would not run anyway.</summary>
    private bool MovesNothingElse(OperatingPoint point, Check check)
    {
        if (check.Arrangement.Jumpers.Length == 0)
        {
            return true;
        }

        var plain = forecaster.Simulator.Simulate(new Arrangement(check.Arrangement.Condition), []);
        foreach (var load in forecaster.Network.Circuit.Parts.OfType<Load>())
        {
            if (load.Id != forecaster.Load && load is Motor or Starter or Solenoid
                && plain.Load(load.Id).Condition == LoadCondition.Dead
                && point.Load(load.Id).Condition != LoadCondition.Dead)
            {
                return false;
            }
        }

        return true;
    }

    private bool ForbiddenPlace(Check check) => Access
        .PartsOf(forecaster.Network.Circuit, check)
        .Any(p => !p.Notes.Probe || Cautions.ForbidProbing(forecaster.Network.Circuit, p));

    /// <summary>No lamp or jumper on a module's own output, a sensed input or a sensor's supply.</summary>
    private bool LoadsAnOutput(Check check)
    {
        var touched = check.Arrangement.Jumpers.SelectMany(j => new[] { j.From, j.To }).ToList();
        if (check.Probe.Instrument == Instrument.TestLamp)
        {
            touched.Add(check.Probe.Red!.Value);
            touched.Add(check.Probe.Black!.Value);
        }

        if (touched.Count == 0)
        {
            return false;
        }

        var network = forecaster.Network;
        var nominal = network.Circuit.Battery.NominalVolts;
        var amps = check.Probe.Instrument == Instrument.TestLamp ? nominal / check.Probe.LampOhms(options.MeterInUse, nominal) : JumperAmps;
        foreach (var module in network.Circuit.Parts.OfType<Module>())
        {
            var small = module.Outputs.Where(o => o.LimitAmps * OutputShare < amps).Select(o => o.Name)
                .Concat(module.Inputs.Select(i => i.Name));
            if (small.Any(name => touched.Any(t => network.IsFedThroughSmallParts(t, new(module.Id, name)))))
            {
                return true;
            }
        }

        return false;
    }

    private static bool JoinsRestingContact(Check check) =>
        check.Arrangement.Jumpers.Any(j => j.From.Name == "87a" || j.To.Name == "87a");

    private bool BypassesCutOff(Check check)
    {
        if (_known.TryGetValue(check.Arrangement.Key, out var known))
        {
            return known;
        }

        var bypasses = forecaster.Network.Circuit.Parts.OfType<Switch>().Where(s => s.OpensByItself).Any(cutOff =>
            forecaster.Simulator.Simulate(check.Arrangement, [new Fault(cutOff.Id, FaultModes.Tripped)])
                .Load(forecaster.Load).Condition != LoadCondition.Dead);
        return _known[check.Arrangement.Key] = bypasses;
    }
}
