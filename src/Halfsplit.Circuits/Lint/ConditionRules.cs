using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Lint;

/// <summary>What conditions may say: settings of switches and outputs that exist, predecessors without a circle.</summary>
internal static class ConditionRules
{
    private static readonly string[] Words = ["after", "takes", "lasts", "starter draws", "alternator holds", "engine turns", "needs"];

    public static void Check(
        CircuitDraft draft, Dictionary<string, Part> parts, IReadOnlySet<string> broken, LintReport report)
    {
        var names = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var condition in draft.Conditions.TakeWhile(_ => !report.IsFull))
        {
            if (!names.TryAdd(condition.Name, condition.Name))
            {
                report.AtKey(
                    ProblemSeverity.Error, ["conditions", condition.Name], "lint.condition-twice", condition.Name, names[condition.Name]);
            }

            foreach (var (what, value) in condition.Settings.TakeWhile(_ => !report.IsFull))
            {
                Setting(condition, what, value, parts, broken, report);
            }

            if (condition.After is { } after && draft.Conditions.All(c => c.Name != after))
            {
                report.AtValue(
                    ProblemSeverity.Error, ["conditions", condition.Name, "after"], "lint.unknown-condition", after,
                    Spelling.Hint(after, draft.Conditions.Select(c => c.Name)));
            }
            else if (InCircle(draft, condition))
            {
                report.AtValue(
                    ProblemSeverity.Error, ["conditions", condition.Name, "after"], "lint.condition-circle", condition.Name);
            }

            foreach (var load in condition.Needs)
            {
                if (draft.Parts.OfType<Load>().All(l => l.Id != load) && !broken.Contains(load))
                {
                    report.AtValue(
                        ProblemSeverity.Error, ["conditions", condition.Name, "needs"], "lint.unknown-needed-load", load,
                        Spelling.Hint(load, draft.Parts.OfType<Load>().Select(l => l.Id)));
                }
            }

            if (condition.AlternatorVolts is not null && draft.Parts.OfType<Alternator>().Any())
            {
                report.AtKey(
                    ProblemSeverity.Error, ["conditions", condition.Name, "alternator holds"], "lint.given-and-part",
                    "alternator holds", draft.Parts.OfType<Alternator>().First().Id);
            }

            if (condition.StarterAmps is not null && draft.Parts.OfType<Starter>().Any())
            {
                report.AtKey(
                    ProblemSeverity.Error, ["conditions", condition.Name, "starter draws"], "lint.given-and-part",
                    "starter draws", draft.Parts.OfType<Starter>().First().Id);
            }
        }
    }

    private static void Setting(
        Condition condition, string what, string value, Dictionary<string, Part> parts, IReadOnlySet<string> broken, LintReport report)
    {
        string[] path = ["conditions", condition.Name, what];
        var name = TerminalName.Parse(what);
        if (broken.Contains(name.Part))
        {
            return;
        }

        parts.TryGetValue(name.Part, out var part);
        if (part is Switch choice && name.Name.Length == 0)
        {
            if (!choice.Positions.ContainsKey(value))
            {
                report.AtValue(
                    ProblemSeverity.Error, path, "lint.unknown-position", choice.Id, value,
                    string.Join(", ", choice.Positions.Keys), Spelling.Hint(value, choice.Positions.Keys));
            }
        }
        else if (part is Module module && module.Outputs.FirstOrDefault(o => o.Name == name.Name) is { } output)
        {
            var on = output.Side == OutputSide.Low ? "low" : "high";
            var share = output.Drive == OutputDrive.Pulsed
                && Quantity.TryParse(value, Unit.Percent, Limits.Share, out _, out _);
            if (value != on && value != "off" && !share)
            {
                var allowed = output.Drive == OutputDrive.Pulsed ? $"{on}, off, 60 %" : $"{on}, off";
                report.AtValue(ProblemSeverity.Error, path, "lint.unknown-command", what, value, allowed);
            }
        }
        else
        {
            var known = parts.Values.OfType<Switch>().Select(s => s.Id)
                .Concat(parts.Values.OfType<Module>().SelectMany(m => m.Outputs.Select(o => $"{m.Id}.{o.Name}")))
                .Concat(Words);
            report.AtKey(ProblemSeverity.Error, path, "lint.unknown-setting", what, Spelling.Hint(what, known));
        }
    }

    /// <summary>True for the first condition of a circle, so that each circle is reported once.</summary>
    private static bool InCircle(CircuitDraft draft, Condition start)
    {
        var first = draft.Conditions.IndexOf(start);
        var current = start;
        for (var steps = 0; steps < draft.Conditions.Length; steps++)
        {
            var before = draft.Conditions.FirstOrDefault(c => c.Name == current.After);
            if (before is null || draft.Conditions.IndexOf(before) < first)
            {
                return false;
            }

            if (before.Name == start.Name)
            {
                return true;
            }

            current = before;
        }

        return false;
    }
}
