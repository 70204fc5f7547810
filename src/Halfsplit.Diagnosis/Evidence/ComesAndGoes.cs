using System.Runtime.InteropServices;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// Faults that come and go: a joint that makes contact at the moment, a reading that jumps while the harness is moved.
/// All odds here are assumptions, no published source.
/// </summary>
internal static class ComesAndGoes
{
    /// <summary>Odds that a bad joint, wire or contact is good just now.</summary>
    private const double Away = 0.2;

    /// <summary>Odds that a reading jumps where such a joint would change it, and where none would.</summary>
    private const double JumpsAtJoint = 0.4;

    private const double JumpsAtContact = 0.25;
    private const double JumpsAtLoad = 0.1;
    private const double JumpsAnyway = 0.01;

    /// <summary>Odds of a jump where nothing definite is known.</summary>
    private const double JumpsForNone = 0.05;

    /// <summary>Volts, ohms or amps by which a fault must change a reading to make it jump, as a share and at least.</summary>
    private const double Share = 0.05;

    private const double Least = 0.05;

    /// <summary>Odds that a fault which can be away comes and goes from one reading to the next, before and after it was seen to be away.</summary>
    private const double Flickers = 0.05, SeenAway = 0.5;

    /// <summary>Share of the readings at which a fault that comes and goes is there.</summary>
    public const double There = 0.6;

    /// <summary>Odds that the fault of this car comes and goes from one reading to the next.</summary>
    /// <param name="seenAway">The load was seen to work in the meantime.</param>
    public static double Flickering(Forecaster forecaster, Hypothesis car, bool seenAway) =>
        !CanBeAway(forecaster, car) ? 0 : seenAway ? SeenAway : Flickers;

    /// <summary>True for a reading said to jump.</summary>
    public static bool IsUnsteady(Observation observation) => observation.Value switch
    {
        ReadingParse.Number number => number.Unsteady,
        ReadingParse.Word { Answer: var word } => word == AnswerWord.Jumps && observation.Check.Subject == CheckSubject.Number,
        _ => false,
    };

    /// <summary>What all readings taken while the load worked say about the car: its fault must be able to be away.</summary>
    public static double LogPrior(Forecaster forecaster, Hypothesis car, IReadOnlyList<Observation> observations)
    {
        for (var i = 0; i < observations.Count; i++)
        {
            if (observations[i].IsFaultAway)
            {
                return CanBeAway(forecaster, car) ? Math.Log(Away) : 0;
            }
        }

        return 0;
    }

    /// <summary>What the car answers, its fault away if it was.</summary>
    public static Forecast Forecast(Forecaster forecaster, Hypothesis car, Observation observation)
    {
        var isAway = observation.IsFaultAway && ShowsState(observation.Check.Subject) && CanBeAway(forecaster, car);
        return forecaster.Of(
            isAway ? Safety.SafetyScreen.HealthyCar() : car, observation.Check, isAway ? [] : observation.RepairsBefore);
    }

    /// <summary>What a car answers whose fault is away.</summary>
    public static Forecast ForecastAway(Forecaster forecaster, Observation observation) =>
        forecaster.Of(Safety.SafetyScreen.HealthyCar(), observation.Check, []);

    /// <summary>Log odds that this reading jumps while the harness is moved.</summary>
    public static double LogUnsteady(Forecaster forecaster, Hypothesis car, Observation observation)
    {
        if (car.IsNone)
        {
            return Math.Log(JumpsForNone);
        }

        var left = Forecaster.Remaining(car.Faults, observation.RepairsBefore);
        var odds = JumpsAnyway;
        foreach (var fault in left)
        {
            odds = Math.Max(odds, OddsOf(forecaster, fault));
        }

        return Math.Log(odds > JumpsAnyway && Changes(forecaster, car, observation) ? odds : JumpsAnyway);
    }

    /// <summary>A break or a bad contact may be good for a while; what is seized, shorted or dead may not.</summary>
    public static bool CanBeAway(Forecaster forecaster, Hypothesis car) =>
        car.Faults.Length > 0 && car.Faults.All(f => OddsOf(forecaster, f) > JumpsAnyway);

    private static double OddsOf(Forecaster forecaster, Fault fault)
    {
        ref var odds = ref CollectionsMarshal.GetValueRefOrAddDefault(forecaster.JumpOdds, (fault.Part, fault.Mode), out var isKnown);
        return isKnown ? odds : odds = Compute(forecaster, fault);
    }

    private static double Compute(Forecaster forecaster, Fault fault)
    {
        var owner = fault.Part.Contains('~', StringComparison.Ordinal)
            ? null
            : forecaster.Network.Circuit.Find(TerminalName.Parse(fault.Part).Part);
        return (fault.Mode, owner) switch
        {
            (FaultModes.Open, Fuse or Lamp or Led) => fault.Part.Contains('.', StringComparison.Ordinal) && owner is Fuse
                ? JumpsAtJoint
                : JumpsAnyway,
            (FaultModes.Open or FaultModes.Resistive, Load) => JumpsAtLoad,
            (FaultModes.Open or FaultModes.Resistive or FaultModes.Loose, _) => JumpsAtJoint,
            (FaultModes.ContactOpen or FaultModes.ContactResistive, _) => JumpsAtContact,
            (FaultModes.BrushesWorn or FaultModes.Stuck or FaultModes.CoilOpen or FaultModes.NotCommanded, _) => JumpsAtLoad,
            _ => JumpsAnyway,
        };
    }

    private static bool Changes(Forecaster forecaster, Hypothesis car, Observation observation)
    {
        var now = forecaster.Of(car, observation.Check, observation.RepairsBefore);
        var healthy = forecaster.Of(Safety.SafetyScreen.HealthyCar(), observation.Check, []);
        return now.IsBroad || healthy.IsBroad
            || Math.Abs(now.Mean - healthy.Mean) > Math.Max(Least, Share * Math.Max(Math.Abs(now.Mean), Math.Abs(healthy.Mean)))
            || Math.Abs(now.OverLimit - healthy.OverLimit) > 0.5;
    }

    /// <summary>What depends on the state of the car; a look at a joint finds it bad although it makes contact.</summary>
    public static bool ShowsState(CheckSubject subject) => subject is not
        (CheckSubject.PinFit or CheckSubject.Wiggle or CheckSubject.BenchRelay or CheckSubject.ScanCode or CheckSubject.FuseLook);
}
