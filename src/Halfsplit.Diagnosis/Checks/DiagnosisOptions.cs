using System.Collections.Immutable;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Checks;

/// <summary>What the person has at hand.</summary>
/// <param name="Helper">Somebody can turn the key.</param>
/// <param name="LeadMetres">Longest test lead.</param>
/// <param name="Tools">Tools at hand; places that need others are out of reach. Empty: all usual hand tools.</param>
/// <param name="HasClamp">A DC clamp ammeter.</param>
/// <param name="HasTestLamp">A test lamp and lamps to load a connector with.</param>
/// <param name="HasScanTool">A tool that reads codes and commanded states.</param>
/// <param name="HasSpareRelay">A known good relay with the same pins.</param>
/// <param name="SmellOfFuelOrImpact">Fuel is smelt or the car was hit: nothing may bypass a cut-off.</param>
/// <param name="Meter">The meter used.</param>
/// <param name="Economy">What minutes and wrong repairs cost.</param>
/// <param name="PlanningNodes">How many situations the planner may look into for one decision.</param>
/// <param name="CarsKept">Settled cars kept for re-use; null for what a browser's memory bears. Answers do not depend on it.</param>
/// <param name="RemoteStarter">A push button to clip between battery plus and the starter solenoid: one person cranks from beside the meter.</param>
public sealed record DiagnosisOptions(
    bool Helper = false,
    double LeadMetres = 5,
    ImmutableArray<string> Tools = default,
    bool HasClamp = true,
    bool HasTestLamp = true,
    bool HasScanTool = false,
    bool HasSpareRelay = false,
    bool SmellOfFuelOrImpact = false,
    Meter? Meter = null,
    Planning.Economy? Economy = null,
    int PlanningNodes = 3000,
    int? CarsKept = null,
    bool RemoteStarter = false)
{
    public static DiagnosisOptions Default { get; } = new();

    public Planning.Economy EconomyInUse => Economy ?? Planning.Economy.Default;

    public Meter MeterInUse => Meter ?? Simulation.Instruments.Meter.Default;
}
