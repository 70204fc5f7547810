using Halfsplit.Circuits.Model;
using Xunit;

namespace Halfsplit.Drawing.Tests.Reading;

/// <summary>What every drawing has to keep, whatever the circuit.</summary>
internal static class Faultless
{
    /// <summary>Everything wrong with a drawing, a sentence each.</summary>
    public static List<string> ProblemsOf(Circuit circuit, string svg)
    {
        var page = new DrawnPage(svg);
        var problems = new List<string>();
        problems.AddRange(circuit.Parts.Where(p => IsWired(circuit, p) && !page.Parts.Contains(p.Id)).Select(p => $"{p.Id} is not drawn"));
        problems.AddRange(circuit.Wires.Where(w => !page.LabelledWires.Contains(w.Id)).Select(w => $"{w.Id} has no label"));
        problems.AddRange(Overlaps(page.Symbols, 0.5).Select(p => $"{p.First.What} lies on {p.Second.What}"));
        problems.AddRange(Overlaps(page.Texts, 1).Select(p => $"\"{p.First.What}\" lies on \"{p.Second.What}\" at {p.First.Left:F0},{p.First.Top:F0}"));
        foreach (var wire in page.Wires.Where(w => !w.IsInSymbol))
        {
            var area = wire.Area with { Left = wire.Area.Left - 0.7, Top = wire.Area.Top - 0.7, Right = wire.Area.Right + 0.7, Bottom = wire.Area.Bottom + 0.7 };
            problems.AddRange(page.Texts.Where(t => t.Overlaps(area, 0.4)).Select(t => $"{wire.Area.What} runs through \"{t.What}\""));
            problems.AddRange(page.Symbols.Where(s => s.Overlaps(area, 1)).Select(s => $"{wire.Area.What} runs through {s.What}"));
        }

        problems.AddRange(Joined(circuit, page));
        return problems;
    }

    public static void Check(Circuit circuit, string svg) => Assert.Empty(ProblemsOf(circuit, svg).Take(8));

    private static bool IsWired(Circuit circuit, Part part) => part is not Metal
        || circuit.Wires.Any(w => w.From.Part == part.Id || w.To.Part == part.Id)
        || circuit.Joints.Any(j => j.First.Part == part.Id || j.Second.Part == part.Id)
        || circuit.Parts.OfType<Ground>().Any(g => g.Metal == part.Id);

    private static IEnumerable<(Area First, Area Second)> Overlaps(List<Area> areas, double tolerance)
    {
        var sorted = areas.OrderBy(a => a.Top).ToList();
        for (var i = 0; i < sorted.Count; i++)
        {
            for (var j = i + 1; j < sorted.Count && sorted[j].Top < sorted[i].Bottom; j++)
            {
                if (sorted[i].Overlaps(sorted[j], tolerance))
                {
                    yield return (sorted[i], sorted[j]);
                }
            }
        }
    }

    /// <summary>The lines join what the circuit joins, and nothing else.</summary>
    private static IEnumerable<string> Joined(Circuit circuit, DrawnPage page)
    {
        var drawn = DrawnNets.OfLines(page);
        var meant = DrawnNets.OfCircuit(circuit, page.Terminals.Keys);
        foreach (var net in meant.GroupBy(t => t.Value).Where(n => n.Select(t => drawn[t.Key]).Distinct().Count() > 1))
        {
            yield return $"{string.Join(", ", net.Select(t => t.Key))} are one in the circuit and not in the drawing";
        }

        foreach (var net in drawn.GroupBy(t => t.Value).Where(n => n.Select(t => meant[t.Key]).Distinct().Count() > 1))
        {
            yield return $"{string.Join(", ", net.Select(t => t.Key))} are one in the drawing and not in the circuit";
        }
    }
}
