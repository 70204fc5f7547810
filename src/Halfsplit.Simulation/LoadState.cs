using Halfsplit.Circuits.Model;

namespace Halfsplit.Simulation;

/// <summary>How a load fares.</summary>
/// <param name="Condition">Works, weak or dead.</param>
/// <param name="Volts">Volts across it.</param>
/// <param name="Amps">Amps through it.</param>
/// <param name="Stalled">A motor that is fed and does not turn.</param>
/// <param name="Share">What decides, as a share of what full work takes: from 1 on it works. 0 where it is dead.</param>
public readonly record struct LoadState(LoadCondition Condition, double Volts, double Amps, bool Stalled, double Share = 0);
