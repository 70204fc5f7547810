using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Lint;

/// <summary>A fuse protects the wire behind it, and stands between the battery and every load.</summary>
internal static class ProtectionRules
{
    public static void Check(Circuit circuit, CircuitGraph graph, LintReport report)
    {
        var keys = new WireKeys(circuit);
        foreach (var part in circuit.Parts)
        {
            if (part is Fuse or Breaker or Ptc && IsBridged(graph, part))
            {
                report.AtKey(ProblemSeverity.Warning, ["parts", part.Id], "lint.fuse-bridged", part.Id);
            }

            switch (part)
            {
                case Fuse fuse:
                    Rating(fuse, report);
                    Behind(circuit, graph, fuse, fuse.RatingAmps, keys, report);
                    break;
                case Breaker breaker:
                    Behind(circuit, graph, breaker, breaker.RatingAmps, keys, report);
                    break;
                default:
                    break;
            }
        }

        Unfused(circuit, graph, report);
    }

    private static void Rating(Fuse fuse, LintReport report)
    {
        if (!FuseTable.IsStandard(fuse.Type, fuse.RatingAmps))
        {
            report.AtValue(
                ProblemSeverity.Warning, ["parts", fuse.Id, "rating"], "lint.rating-odd", fuse.RatingAmps,
                string.Join(", ", FuseTable.Ratings(fuse.Type).Select(Plain)));
        }
    }

    private static void Behind(
        Circuit circuit, CircuitGraph graph, Part fuse, double rating, WireKeys keys, LintReport report)
    {
        var start = Downstream(graph, fuse);
        var wires = new HashSet<Wire>();
        graph.Reach(
            start,
            e => e.Kind is EdgeKind.Wire or EdgeKind.Touch or EdgeKind.Contact,
            t => IsMetal(circuit, t),
            e =>
            {
                if (e.Wire is not null)
                {
                    wires.Add(e.Wire);
                }
            });
        foreach (var wire in circuit.Wires.Where(wires.Contains))
        {
            var bears = WireTable.BearableAmps(wire.Spec.Gauge.SquareMillimetres);
            if (bears < rating)
            {
                report.AtKey(
                    ProblemSeverity.Warning, keys.Of(wire), "lint.fuse-over-wire", fuse.Id, rating, wire.Id, Plain(Math.Round(bears, 1)));
            }
        }

        var reached = graph.Reach(
            start,
            LetsFaultsThrough,
            t => IsMetal(circuit, t));
        foreach (var load in circuit.Parts.OfType<Load>().Where(l => l.RatedAmps > rating && DrawsThrough(l, reached)))
        {
            report.AtKey(
                ProblemSeverity.Warning, ["parts", load.Id], "lint.load-over-fuse", load.Id, Plain(Math.Round(load.RatedAmps, 2)),
                fuse.Id, rating);
        }
    }

    /// <summary>True if wires join its two sides around it, so that it protects nothing.</summary>
    private static bool IsBridged(CircuitGraph graph, Part fuse)
    {
        var two = new TerminalName(fuse.Id, "2");
        var reached = Joined(new TerminalName(fuse.Id, "1"));
        // A walk ends at the battery's post; a bridge may begin there.
        return reached.Contains(two) || (reached.Contains(graph.Positive) && Joined(graph.Positive).Contains(two));

        HashSet<TerminalName> Joined(TerminalName start) => graph.Reach(start, e => e.Kind is EdgeKind.Wire or EdgeKind.Touch);
    }

    /// <summary>The fuse's side away from the battery: 2, unless it is fed there and not at 1.</summary>
    private static TerminalName Downstream(CircuitGraph graph, Part fuse)
    {
        var (one, two) = (new TerminalName(fuse.Id, "1"), new TerminalName(fuse.Id, "2"));
        bool IsFed(TerminalName t) =>
            graph.Reach(t, e => e.Kind is not (EdgeKind.Consumer or EdgeKind.Field) && e.Part != fuse.Id).Contains(graph.Positive);
        return IsFed(two) && !IsFed(one) ? one : two;
    }

    private static void Unfused(Circuit circuit, CircuitGraph graph, LintReport report)
    {
        var reached = graph.Reach(
            graph.Positive,
            LetsFaultsThrough,
            t => IsMetal(circuit, t));
        foreach (var load in circuit.Parts.OfType<Load>().Where(l => l is not Starter && Touches(l, reached)))
        {
            report.AtKey(ProblemSeverity.Warning, ["parts", load.Id], "lint.unfused", load.Id);
        }
    }

    /// <summary>What hangs on D+ gets no more amps than the diodes before it let through, and needs no fuse towards B+.</summary>
    private static bool LetsFaultsThrough(Edge edge) =>
        edge.Kind is not (EdgeKind.Consumer or EdgeKind.Protection or EdgeKind.Generator);

    /// <summary>A starter's rated amps come through its terminal 30; at 50 it takes those of its solenoid.</summary>
    private static bool DrawsThrough(Load load, HashSet<TerminalName> reached) =>
        load is Starter ? reached.Contains(new TerminalName(load.Id, "30")) : Touches(load, reached);

    private static bool Touches(Load load, HashSet<TerminalName> reached) =>
        load.Terminals.Any(t => reached.Contains(new TerminalName(load.Id, t)));

    private static bool IsMetal(Circuit circuit, TerminalName terminal) =>
        circuit.Find(terminal.Part) is Metal or Ground;

    private static string Plain(double value) => value.ToString("R", System.Globalization.CultureInfo.InvariantCulture);
}
