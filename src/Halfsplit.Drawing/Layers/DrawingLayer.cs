using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Drawing.Layers;

/// <summary>Something laid over a circuit. Immutable; what it names and the circuit does not have is left out.</summary>
public abstract record DrawingLayer;

/// <summary>
/// The car in one condition: volts at the terminals, amps on the wires, the current's path as thick as its amps, relays and
/// switches as they stand, blown fuses.
/// </summary>
/// <param name="Point">A settled car of the same circuit.</param>
public sealed record PredictionLayer(OperatingPoint Point) : DrawingLayer;

/// <summary>The odds of suspects, at their parts and wires; those of one part are added up.</summary>
/// <param name="Suspects">With "none of these" or without.</param>
public sealed record SuspectLayer(ImmutableArray<SuspectOdds> Suspects) : DrawingLayer;

/// <summary>Where the leads of a check go, or which part or wire it is about.</summary>
public sealed record LeadsLayer(Probe Probe) : DrawingLayer;

/// <summary>The readings taken so far, numbered in their order.</summary>
public sealed record ReadingsLayer(ImmutableArray<ReadingMark> Readings) : DrawingLayer;

/// <summary>One reading on the drawing.</summary>
/// <param name="Number">As it is called in the list of readings: 1, 2, 3.</param>
/// <param name="Probe">Where the leads were, or what was looked at.</param>
/// <param name="Text">What was read, as a person writes it: "12.4 V".</param>
public sealed record ReadingMark(int Number, Probe Probe, string Text);

/// <summary>Where the fault is.</summary>
/// <param name="Faults">Parts, wires, cavities, sockets or outputs, as <see cref="Fault.Part"/> names them.</param>
public sealed record FaultLayer(ImmutableArray<Fault> Faults) : DrawingLayer;

/// <summary>The parts and terminals to bring out, as one tapped by a person.</summary>
public sealed record ChosenLayer(ImmutableArray<string> Parts, ImmutableArray<TerminalName> Terminals) : DrawingLayer;
