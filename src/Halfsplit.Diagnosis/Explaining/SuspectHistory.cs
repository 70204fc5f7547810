using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>How a suspect came by its odds, reading by reading.</summary>
/// <param name="Weight">Its share among all ways this circuit can fail, by the failure weights and the surroundings alone.</param>
/// <param name="AfterComplaint">Its odds once the complaint is known and nothing else: what does not cause it is out.</param>
/// <param name="Steps">The readings in the order in which they were taken.</param>
public sealed record SuspectHistory(
    Suspect Suspect, double Weight, double AfterComplaint, ImmutableArray<HistoryStep> Steps)
{
    /// <summary>What was noticed or found on the bench, in the order in which it was said; the readings come on top of it.</summary>
    public ImmutableArray<NoticedStep> Noticed { get; init; } = [];

    /// <summary>The odds now.</summary>
    public double Odds => Steps.Length > 0 ? Steps[^1].After : Noticed.Length > 0 ? Noticed[^1].Final : AfterComplaint;

    /// <summary>How many times likelier against the rest the complaint made it; under 1: less likely.</summary>
    public double ComplaintFactor => HistoryStep.FactorOf(Weight, AfterComplaint);
}

/// <summary>What one thing noticed, or one result from the bench, did to one suspect.</summary>
/// <param name="Entry">Its name in the job.</param>
/// <param name="Without">The odds that everything else gives.</param>
/// <param name="Final">The odds with everything.</param>
public sealed record NoticedStep(string Entry, Noticed What, double Without, double Final)
{
    /// <summary>How many times likelier against all others it makes the suspect; under 1: less likely.</summary>
    public double Factor => HistoryStep.FactorOf(Without, Final);
}

/// <summary>What one reading did to one suspect.</summary>
/// <param name="Entry">The reading's name in the job.</param>
/// <param name="Before">Odds before it.</param>
/// <param name="After">Odds after it.</param>
/// <param name="Final">The odds with all readings.</param>
/// <param name="Without">The odds that all other readings together give, this one left out: whatever the order.</param>
public sealed record HistoryStep(string Entry, Check Check, double Before, double After, double Without, double Final)
{
    private const double MostFactor = 1e6;

    /// <summary>How many times likelier against all others this reading made it, in the order taken; under 1: less likely.</summary>
    public double Factor => FactorOf(Before, After);

    /// <summary>The suspect was not looked at before: a pair of faults that joined because no single one fits.</summary>
    public bool Joined => Before == 0 && After > 0;

    /// <summary>The same, with this reading taken as the last of all.</summary>
    public double FactorAsLast => FactorOf(Without, Final);

    /// <summary>The ratio of odds against the rest, within a million either way.</summary>
    internal static double FactorOf(double before, double after)
    {
        static double Against(double odds) => Math.Max(odds, 1e-12) / Math.Max(1 - odds, 1e-12);
        return Math.Clamp(Against(after) / Against(before), 1 / MostFactor, MostFactor);
    }
}
