using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Lint;

/// <summary>Every load, coil and module needs a way to the feed and a way to ground, whatever the switches do.</summary>
internal static class SupplyRules
{
    public static void Check(Circuit circuit, CircuitGraph graph, LintReport report)
    {
        foreach (var part in circuit.Parts.TakeWhile(_ => !report.IsFull))
        {
            switch (part)
            {
                case Relay:
                    Consumer(graph, part, "86", "85", "lint.coil", report);
                    break;
                case Load load:
                    foreach (var terminal in load.Terminals.Where(t => t != load.Across.Neg))
                    {
                        Consumer(graph, part, terminal, load.Across.Neg, "lint.load", report);
                    }

                    break;
                case Module module:
                    Rails(graph, module, report);
                    break;
                default:
                    break;
            }
        }
    }

    private static void Consumer(CircuitGraph graph, Part part, string one, string other, string code, LintReport report)
    {
        var (first, second) = (new TerminalName(part.Id, one), new TerminalName(part.Id, other));
        if (!graph.IsWired(first) || !graph.IsWired(second)
            || (graph.IsFed(first) && graph.IsGrounded(second)) || (graph.IsGrounded(first) && graph.IsFed(second)))
        {
            return;
        }

        if (HasWayThroughLoads(graph, first, second))
        {
            // In series with another load, as a charge lamp with its regulator: odd, not wrong.
            report.AtKey(ProblemSeverity.Warning, ["parts", part.Id], "lint.through-load", part.Id);
        }
        else
        {
            var missing = graph.IsFed(first) || graph.IsFed(second) ? "-no-ground" : "-no-feed";
            report.AtKey(ProblemSeverity.Error, ["parts", part.Id], code + missing, part.Id, one, other);
        }
    }

    private static bool HasWayThroughLoads(CircuitGraph graph, TerminalName first, TerminalName second)
    {
        var a = graph.Reach(first, e => e.Part != first.Part && e.Kind != EdgeKind.Generator);
        var b = graph.Reach(second, e => e.Part != first.Part && e.Kind != EdgeKind.Generator);
        return (a.Contains(graph.Positive) && b.Contains(graph.Negative))
            || (a.Contains(graph.Negative) && b.Contains(graph.Positive));
    }

    private static void Rails(CircuitGraph graph, Module module, LintReport report)
    {
        foreach (var feed in module.Feeds.Select(f => new TerminalName(module.Id, f)))
        {
            if (graph.IsWired(feed) && !graph.IsFed(feed))
            {
                report.AtKey(ProblemSeverity.Error, ["parts", module.Id], "lint.module-no-feed", feed.ToString());
            }
        }

        foreach (var ground in module.Grounds.Select(g => new TerminalName(module.Id, g)))
        {
            if (graph.IsWired(ground) && !graph.IsGrounded(ground))
            {
                report.AtKey(ProblemSeverity.Error, ["parts", module.Id], "lint.module-no-ground", ground.ToString());
            }
        }
    }
}
