using System.Collections.Immutable;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Findings;

/// <summary>A suspect with its odds.</summary>
/// <param name="Severity">Likeliest degree, where the mode has one: ohms, volts or a ratio.</param>
/// <param name="Faults">The suspect in its likeliest degree, as faults that can be simulated; empty for "none of these".</param>
public sealed record SuspectOdds(Suspect Suspect, double Odds, double? Severity, ImmutableArray<Fault> Faults);

/// <summary>The conclusion, with its odds and what it rests on. Never a certainty.</summary>
/// <param name="Repair">What to mend or replace next.</param>
/// <param name="Odds">Odds that this repair takes away what is wrong.</param>
/// <param name="Blamed">The suspects that this repair mends, likeliest first.</param>
/// <param name="NotCleared">The suspects it does not mend that the readings leave alive, likeliest first.</param>
/// <param name="RestsOn">Ids of the readings that moved the odds most, strongest first.</param>
/// <param name="IsSettled">False where nothing more could be learnt although the odds are not high.</param>
public sealed record Finding(
    Repair Repair,
    double Odds,
    ImmutableArray<SuspectOdds> Blamed,
    ImmutableArray<SuspectOdds> NotCleared,
    ImmutableArray<string> RestsOn,
    bool IsSettled);
