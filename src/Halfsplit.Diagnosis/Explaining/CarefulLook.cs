using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>
/// A quick look at a check, but with the meter's own load on volts: a wire that floats and one that lies at the body read
/// alike without it, and not with it.
/// </summary>
internal static class CarefulLook
{
    /// <summary>As rough as the quick look's.</summary>
    private const double RoughVolts = 0.04, RoughShare = 0.02;

    public static Outlook Of(
        Forecaster forecaster, Screening screening, Check check, Hypothesis car, ImmutableArray<Repair> repairs)
    {
        if (check.Subject != CheckSubject.Number || check.Probe.Instrument != Instrument.Volts || car.IsNone)
        {
            var one = new Outlook[1];
            screening.Look(check, [car], repairs, one);
            return one[0];
        }

        var read = forecaster.MeanOf(car, check, repairs);
        return read.Abstains != Abstention.None
            ? Outlook.Broad
            : new Outlook(read.Value, RoughVolts + (RoughShare * Math.Abs(read.Value)), 0, default, false);
    }
}
