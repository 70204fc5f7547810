using Halfsplit.Circuits.Model;

namespace Halfsplit.Simulation;

/// <summary>How a load fares.</summary>
/// <param name="Condition">Works, weak or dead.</param>
/// <param name="Volts">Volts across it.</param>
/// <param name="Amps">Amps through it.</param>
/// <param name="Stalled">A motor that is fed and does not turn.</param>
public readonly record struct LoadState(LoadCondition Condition, double Volts, double Amps, bool Stalled);
