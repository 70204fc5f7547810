using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Lint;

/// <summary>Terminals without a wire: errors where the part cannot work without, notes where they may stay free.</summary>
internal static class LooseEndRules
{
    public static void Check(Circuit circuit, CircuitGraph graph, LintReport report)
    {
        foreach (var part in circuit.Parts)
        {
            var terminals = part is Connector
                ? circuit.Terminals.Where(t => t.Part == part.Id).Select(t => t.Name).ToList()
                : [.. part.Terminals];
            var loose = terminals.Where(t => !graph.IsWired(new TerminalName(part.Id, t))).ToList();
            if (part is Metal)
            {
                Metal(circuit, part, loose.Count, report);
            }
            else if (loose.Count == terminals.Count && part is not Battery)
            {
                report.AtKey(ProblemSeverity.Warning, ["parts", part.Id], "lint.never-wired", part.Id);
            }
            else
            {
                foreach (var terminal in loose)
                {
                    var (severity, code) = Judge(part, terminal);
                    report.AtKey(severity, ["parts", part.Id], code, part.Id, terminal);
                }
            }
        }
    }

    private static void Metal(Circuit circuit, Part part, int loose, LintReport report)
    {
        var isUsed = loose == 0 || circuit.Parts.OfType<Ground>().Any(g => g.Metal == part.Id);
        if (!isUsed && part.Id != Model.Metal.Body)
        {
            report.AtKey(ProblemSeverity.Warning, ["parts", part.Id], "lint.never-wired", part.Id);
        }
    }

    private static (ProblemSeverity Severity, string Code) Judge(Part part, string terminal) => part switch
    {
        Relay when terminal is "86" or "85" => (ProblemSeverity.Error, "lint.coil-unwired"),
        Relay when terminal is "87a" or "87b" => (ProblemSeverity.Note, "lint.terminal-unused"),
        Load load when terminal == load.Across.Pos || terminal == load.Across.Neg || load is Starter =>
            (ProblemSeverity.Error, "lint.load-unwired"),
        Load => (ProblemSeverity.Note, "lint.terminal-unused"),
        Battery => (ProblemSeverity.Error, "lint.battery-unwired"),
        Module module when module.Feeds.Contains(terminal) || module.Grounds.Contains(terminal) =>
            (ProblemSeverity.Error, "lint.module-unwired"),
        Module => (ProblemSeverity.Note, "lint.terminal-unused"),
        Switch choice when choice.TerminalNames.Length > 2 => (ProblemSeverity.Note, "lint.terminal-unused"),
        Alternator alternator when terminal == "D+" && alternator.ExcitationAmps == 0 =>
            (ProblemSeverity.Note, "lint.terminal-unused"),
        _ => (ProblemSeverity.Warning, "lint.terminal-unwired"),
    };
}
