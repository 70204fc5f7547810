using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Lint;

/// <summary>Looks a circuit over for what a sheet's grammar cannot see: loose ends, missing fuses, thin wires.</summary>
public static class CircuitLint
{
    /// <summary>Checks a circuit.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="positions">Where its pieces stand, from <see cref="SheetReading.Positions"/>; without them lines are 0.</param>
    /// <returns>Problems in the order of the sheet; empty if there is nothing to say.</returns>
    public static ImmutableArray<SheetProblem> Check(Circuit circuit, SheetPositions? positions = null)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var report = new LintReport(positions ?? SheetPositions.None);
        var draft = new CircuitDraft(
            circuit.Title, circuit.Parts, circuit.Paths, circuit.Places, circuit.Conditions, circuit.Complaints,
            circuit.Cautions, circuit.Summary);
        ReferenceRules.Check(draft, ImmutableHashSet<string>.Empty, report);
        if (report.Problems.Count == 0)
        {
            var graph = new CircuitGraph(circuit);
            LooseEndRules.Check(circuit, graph, report);
            SupplyRules.Check(circuit, graph, report);
            ShortRules.Check(circuit, graph, report);
            ProtectionRules.Check(circuit, graph, report);
            PartRules.Check(circuit, graph, report);
            WireRules.Check(circuit, report);
        }

        return [.. report.Problems.OrderBy(p => p.Line).ThenBy(p => p.Column)];
    }
}
