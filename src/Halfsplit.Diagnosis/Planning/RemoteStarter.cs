using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>
/// A push button between battery plus and the starter solenoid, by which one person cranks from beside the meter. The key
/// stays where it was, so the button stands in for it only where nothing on the sheet tells the two apart.
/// </summary>
internal static class RemoteStarter
{
    /// <summary>Conditions by circuit: asked for with every check whose minutes are counted.</summary>
    private static readonly ConditionalWeakTable<Circuit, FrozenSet<string>> StandsInFor = [];

    /// <summary>
    /// Whether this condition is entered with it. A helper at the key is quicker. Where fuel is smelt nobody makes sparks at the
    /// battery.
    /// </summary>
    public static bool IsUsed(Circuit circuit, DiagnosisOptions options, Condition condition) =>
        options is { RemoteStarter: true, Helper: false, SmellOfFuelOrImpact: false } && StandsIn(circuit, condition);

    /// <summary>Whether it gives the electrical state that the key gives.</summary>
    public static bool StandsIn(Circuit circuit, Condition condition) =>
        condition.StarterAmps is not null && StandsInFor.GetValue(circuit, Conditions).Contains(condition.Name);

    private static FrozenSet<string> Conditions(Circuit circuit) => circuit.Parts.OfType<Starter>().Any()
        ? []
        : circuit.Conditions.Where(c => LeavesTheKey(circuit, c)).Select(c => c.Name).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>
    /// Whether cranking leaves all switches as they were before it. What a module's output does is its own affair: it sees the
    /// engine turn, whoever turns it.
    /// </summary>
    private static bool LeavesTheKey(Circuit circuit, Condition condition)
    {
        if (condition.StarterAmps is null || condition.After is not { } name
            || circuit.FindCondition(name) is not { StarterAmps: null, AlternatorVolts: null, EngineTurns: false } before)
        {
            return false;
        }

        return circuit.Parts.OfType<Switch>().All(s =>
        {
            var shown = Shown(circuit, s);
            return Groups(s, before, shown).SequenceEqual(Groups(s, condition, shown));
        });
    }

    /// <summary>The terminals that carry something on the sheet, or that a lead may be put on.</summary>
    private static ImmutableArray<int> Shown(Circuit circuit, Switch part)
    {
        bool IsWired(TerminalName terminal) =>
            circuit.Wires.Any(w => w.From == terminal || w.To == terminal) || circuit.Joints.Any(j => j.First == terminal || j.Second == terminal);
        return [.. Enumerable.Range(0, part.TerminalNames.Length)
            .Where(i => part.Notes.Probe || IsWired(new TerminalName(part.Id, part.TerminalNames[i])))];
    }

    /// <summary>For each of these terminals the first of them that the position connects it with.</summary>
    private static IEnumerable<int> Groups(Switch part, Condition condition, ImmutableArray<int> shown)
    {
        var group = Enumerable.Range(0, part.TerminalNames.Length).ToArray();
        var position = condition.Settings.GetValueOrDefault(part.Id, part.RestPosition);
        foreach (var contact in part.Positions.GetValueOrDefault(position, []))
        {
            var (from, to) = (group[part.TerminalNames.IndexOf(contact.From)], group[part.TerminalNames.IndexOf(contact.To)]);
            for (var i = 0; i < group.Length; i++)
            {
                group[i] = group[i] == to ? from : group[i];
            }
        }

        return shown.Select(i => shown.First(j => group[j] == group[i]));
    }
}
