using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>A check that may be asked for, with what is known of it so far in one decision: each is reckoned once.</summary>
/// <param name="minutes">What it takes from where things stand, its risks weighed in.</param>
internal sealed class Candidate(Check check, double minutes)
{
    public Check Check => check;

    public double Minutes => minutes;

    /// <summary>What shares its arrangement and its instrument.</summary>
    public (string Arrangement, Instrument Instrument) Like { get; } = (check.Arrangement.Key, check.Probe.Instrument);

    /// <summary>Bits on a few cars, with rough spreads; NaN until asked for.</summary>
    public double RoughOnFew { get; set; } = double.NaN;

    /// <summary>Bits on all cars, with rough spreads; NaN until asked for.</summary>
    public double Rough { get; set; } = double.NaN;

    /// <summary>What each car answers; null until computed in full.</summary>
    public Outlook[]? Outlooks { get; set; }

    /// <summary>Bits of these answers.</summary>
    public double Bits { get; set; }

    /// <summary>It tells something, and may be done.</summary>
    public bool IsSafe { get; set; }
}
