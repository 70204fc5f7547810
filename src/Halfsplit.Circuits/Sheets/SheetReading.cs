using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Sheets;

/// <summary>What came of reading a sheet.</summary>
/// <param name="Circuit">The circuit; null if there is any error.</param>
/// <param name="Problems">Every problem found, in the order of the sheet.</param>
/// <param name="Positions">Where in the text the circuit's pieces stand.</param>
public sealed record SheetReading(
    Circuit? Circuit, ImmutableArray<SheetProblem> Problems, SheetPositions Positions);
