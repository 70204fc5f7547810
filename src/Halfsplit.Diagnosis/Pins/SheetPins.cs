using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>What a cavity should show in one way of measuring.</summary>
/// <param name="Condition">For volts, what the car is doing; null for ohms, which are measured at rest.</param>
/// <param name="IsLive">Volts lie there, so ohms would mean nothing.</param>
/// <param name="Expected">From the simulation of the healthy car; <see cref="PinExpectation.Anything"/> where nothing definite can be said.</param>
public sealed record PinForecast(PinSetting Setting, string? Condition, bool IsLive, PinExpectation Expected);

/// <summary>What one cavity of a part is for.</summary>
/// <param name="Name">The terminal of the relay's socket, or the cavity's number on the sheet.</param>
/// <param name="Terminal">Where the sheet has it; null for a cavity with nothing in it.</param>
/// <param name="Forecasts">One for each way of measuring, in the same order for all.</param>
public sealed record PinFunction(string Name, TerminalName? Terminal, ImmutableArray<PinForecast> Forecasts);

/// <summary>Functions that are found together.</summary>
/// <param name="PartedIn">Another condition of the sheet, in which volts would part most pairs of them; null where none parts any.</param>
public sealed record AlikePins(ImmutableArray<string> Names, string? PartedIn);

/// <summary>A relay's socket or a connector of a sheet whose cavities nobody knows.</summary>
/// <param name="Part">The relay pulled out, or the connector unplugged.</param>
/// <param name="Puzzle">Every way to give the functions to the cavities.</param>
/// <param name="Functions">In the order of the sheet.</param>
/// <param name="Alike">Functions that no measurement on offer parts reliably; only groups of two and more.</param>
/// <param name="Conditions">In which volts are measured.</param>
/// <param name="Rest">In which ohms are measured, and the part is taken off.</param>
public sealed record SheetPins(
    Part Part,
    PinPuzzle Puzzle,
    ImmutableArray<PinFunction> Functions,
    ImmutableArray<AlikePins> Alike,
    ImmutableArray<string> Conditions,
    string Rest);
