using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Lint;

/// <summary>
/// Names that must name something: places, metals, conditions, loads, settings, inputs. A circuit that breaks one of
/// these is no circuit, so the sheet reader asks them too.
/// </summary>
internal static class ReferenceRules
{
    /// <param name="broken">Parts that could not be read whole; nothing is said of them.</param>
    public static void Check(CircuitDraft draft, IReadOnlySet<string> broken, LintReport report)
    {
        var parts = draft.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var known = new HashSet<string>(broken, StringComparer.Ordinal);
        known.UnionWith(parts.Keys);
        Batteries(draft, broken, report);
        foreach (var part in draft.Parts.Where(p => !broken.Contains(p.Id)).TakeWhile(_ => !report.IsFull))
        {
            Notes(draft, part, report);
            Names(part, parts, known, report);
        }

        WirePlaces(draft, report);
        ConditionRules.Check(draft, parts, broken, report);
        foreach (var complaint in draft.Complaints.TakeWhile(_ => !report.IsFull))
        {
            Complaints(draft, complaint, parts, broken, report);
        }
    }

    private static void Batteries(CircuitDraft draft, IReadOnlySet<string> broken, LintReport report)
    {
        var batteries = draft.Parts.OfType<Battery>().ToList();
        if (batteries.Count == 0 && broken.Count == 0)
        {
            report.AtKey(ProblemSeverity.Error, ["parts"], "lint.no-battery");
        }

        foreach (var second in batteries.Skip(1))
        {
            report.AtKey(ProblemSeverity.Error, ["parts", second.Id], "lint.two-batteries", second.Id, batteries[0].Id);
        }
    }

    private static void Notes(CircuitDraft draft, Part part, LintReport report)
    {
        if (part.Notes.Place is { } place && draft.Places.All(p => p.Name != place))
        {
            report.AtValue(
                ProblemSeverity.Error, ["parts", part.Id, "place"], "lint.unknown-place", place,
                Spelling.Hint(place, draft.Places.Select(p => p.Name)));
        }

        if (part.Id == Metal.Body && part is not Metal)
        {
            report.AtKey(ProblemSeverity.Error, ["parts", part.Id], "lint.body-not-metal");
        }
    }

    private static void Names(Part part, Dictionary<string, Part> parts, HashSet<string> known, LintReport report)
    {
        switch (part)
        {
            case Ground ground when ground.Metal != Metal.Body
                && (parts.TryGetValue(ground.Metal, out var metal) ? metal is not Metal : !known.Contains(ground.Metal)):
                report.AtValue(
                    ProblemSeverity.Error, ["parts", part.Id, "on"], "lint.unknown-metal", ground.Metal,
                    Spelling.Hint(ground.Metal, parts.Values.OfType<Metal>().Select(m => m.Id).Append(Metal.Body)));
                break;
            case Connector connector:
                foreach (var other in connector.BelongsToB.Where(b => !known.Contains(b)).TakeWhile(_ => !report.IsFull))
                {
                    report.AtValue(
                        ProblemSeverity.Error, ["parts", part.Id, "b"], "lint.unknown-b", part.Id, other,
                        Spelling.Hint(other, parts.Keys));
                }

                break;
            case Module module:
                foreach (var output in module.Outputs)
                {
                    foreach (var need in output.Needs.Where(n => module.Inputs.All(i => i.Name != n)).TakeWhile(_ => !report.IsFull))
                    {
                        report.AtValue(
                            ProblemSeverity.Error, ["parts", part.Id, "outputs", output.Name, "needs"], "lint.unknown-input",
                            output.Name, need, part.Id, Spelling.Hint(need, module.Inputs.Select(i => i.Name)));
                    }
                }

                break;
            default:
                break;
        }
    }

    private static void WirePlaces(CircuitDraft draft, LintReport report)
    {
        for (var p = 0; p < draft.Paths.Length && !report.IsFull; p++)
        {
            for (var i = 0; i < draft.Paths[p].Items.Length; i++)
            {
                if (draft.Paths[p].Items[i] is PathWire { Place: { } place } && draft.Places.All(x => x.Name != place))
                {
                    report.AtKey(
                        ProblemSeverity.Error, WiringReader.Key(p, i), "lint.unknown-place", place,
                        Spelling.Hint(place, draft.Places.Select(x => x.Name)));
                }
            }
        }
    }

    private static void Complaints(
        CircuitDraft draft, Complaint complaint, Dictionary<string, Part> parts, IReadOnlySet<string> broken, LintReport report)
    {
        if (complaint.Load.Length > 0 && !broken.Contains(complaint.Load)
            && (!parts.TryGetValue(complaint.Load, out var load) || load is not Load))
        {
            report.AtValue(
                ProblemSeverity.Error, ["complaints", complaint.Name, "load"], "lint.unknown-load", complaint.Load,
                Spelling.Hint(complaint.Load, parts.Values.OfType<Load>().Select(l => l.Id)));
        }

        if (complaint.Condition.Length > 0 && !draft.Conditions.Any(c => c.Name == complaint.Condition))
        {
            report.AtValue(
                ProblemSeverity.Error, ["complaints", complaint.Name, "in"], "lint.unknown-condition", complaint.Condition,
                Spelling.Hint(complaint.Condition, draft.Conditions.Select(c => c.Name)));
        }
    }
}
