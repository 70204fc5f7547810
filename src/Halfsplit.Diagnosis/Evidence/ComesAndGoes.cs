using System.Collections.Frozen;
using System.Runtime.InteropServices;
using Halfsplit.Circuits.Data;
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
/// All odds are those of <c>data/comes-and-goes.csv</c>.
/// </summary>
internal static class ComesAndGoes
{
    private static readonly FrozenDictionary<string, double> Table =
        DataFile.Numbers(typeof(ComesAndGoes).Assembly, "comes-and-goes.csv");

    private static readonly double Away = Table["away"];
    private static readonly double JumpsAtJoint = Table["jumps-at-joint"];
    private static readonly double JumpsAtContact = Table["jumps-at-contact"];
    private static readonly double JumpsAtLoad = Table["jumps-at-load"];
    private static readonly double JumpsAnyway = Table["jumps-anyway"];
    private static readonly double JumpsForNone = Table["jumps-for-none"];
    private static readonly double Share = Table["changes-share"];
    private static readonly double Least = Table["changes-least"];
    private static readonly double Flickers = Table["flickers"];
    private static readonly double SeenAway = Table["flickers-seen-away"];

    /// <summary>Share of the readings at which a fault that comes and goes is there.</summary>
    public static double There { get; } = Table["there"];

    /// <summary>Odds from which a person is told that the fault seems to come and go.</summary>
    public static double SaidFrom { get; } = Table["said-from"];

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
    /// <param name="column">The answers to the observation's check.</param>
    public static Forecast Forecast(Forecaster forecaster, Hypothesis car, Observation observation, ForecastColumn column)
    {
        var isAway = observation.IsFaultAway && ShowsState(observation.Check.Subject) && CanBeAway(forecaster, car);
        return forecaster.Of(
            isAway ? Safety.SafetyScreen.HealthyCar() : car, column, isAway ? [] : observation.RepairsBefore);
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
