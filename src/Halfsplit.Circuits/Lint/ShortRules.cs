using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Lint;

/// <summary>The battery's posts must not hang together without a load between, and metal must hang on the negative one.</summary>
internal static class ShortRules
{
    public static void Check(Circuit circuit, CircuitGraph graph, LintReport report)
    {
        if (IsShorted(graph, IsAlwaysClosed))
        {
            report.AtKey(ProblemSeverity.Error, ["parts", circuit.Battery.Id], "lint.short");
        }
        else
        {
            foreach (var condition in circuit.Conditions)
            {
                if (IsShorted(graph, ClosedIn(circuit, condition)))
                {
                    report.AtKey(ProblemSeverity.Error, ["conditions", condition.Name], "lint.short-in", condition.Name);
                }
            }
        }

        Metals(circuit, graph, report);
    }

    private static bool IsAlwaysClosed(Edge edge) =>
        edge.Kind is EdgeKind.Wire or EdgeKind.Touch or EdgeKind.Protection;

    private static bool IsShorted(CircuitGraph graph, Func<Edge, bool> passes) =>
        graph.Reach(graph.Positive, passes).Contains(graph.Negative);

    /// <summary>Edges that conduct in a condition: what always does, and the switches' contacts; relays are not asked.</summary>
    private static Func<Edge, bool> ClosedIn(Circuit circuit, Condition condition)
    {
        var closed = new HashSet<(string Part, string From, string To)>();
        foreach (var choice in circuit.Parts.OfType<Switch>())
        {
            var position = condition.Settings.GetValueOrDefault(choice.Id, choice.RestPosition);
            foreach (var contact in choice.Positions.GetValueOrDefault(position, []))
            {
                closed.Add((choice.Id, contact.From, contact.To));
                closed.Add((choice.Id, contact.To, contact.From));
            }
        }

        return edge => IsAlwaysClosed(edge)
            || (edge.Kind == EdgeKind.Contact && edge.Part is not null && closed.Contains((edge.Part, edge.From.Name, edge.To.Name)));
    }

    private static void Metals(Circuit circuit, CircuitGraph graph, LintReport report)
    {
        foreach (var metal in circuit.Parts.OfType<Metal>())
        {
            var node = new TerminalName(metal.Id);
            var isUsed = graph.Edges(node).Count > 0;
            if (isUsed && !graph.Reach(node, e => e.Kind is not (EdgeKind.Consumer or EdgeKind.Output or EdgeKind.Field or EdgeKind.Generator)).Contains(graph.Negative))
            {
                report.AtKey(ProblemSeverity.Error, ["parts", metal.Id], "lint.metal-untied", metal.Id);
            }
        }

        var written = circuit.Paths.SelectMany(p => p.Items).OfType<PathPart>().Any(p => p.Part == Metal.Body);
        if (!written && circuit.Parts.OfType<Ground>().Any(g => g.Metal == Metal.Body))
        {
            report.AtKey(ProblemSeverity.Note, ["wiring"], "lint.strap-assumed", circuit.Battery.Id);
        }
    }
}
