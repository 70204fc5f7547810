using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Layers;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Symbols;

namespace Halfsplit.Drawing.Svg;

/// <summary>The marks of leads, readings, faults and what was chosen, over everything else.</summary>
internal static class LayerMarks
{
    /// <summary>More numbers than this on one terminal are left to the key.</summary>
    private const int MostNumbers = 2;

    public static void Draw(CircuitLayout layout, DrawingOptions options, Pen pen)
    {
        var points = pen.Marks.DistinctBy(m => m.Terminal).ToDictionary(m => m.Terminal, m => (m.X, m.Y));
        pen.MoveTo(0, 0);
        foreach (var layer in options.Layers)
        {
            switch (layer)
            {
                case LeadsLayer { Probe: var probe }:
                    Lead(pen, points, probe.Red, isRed: true);
                    Lead(pen, points, probe.Black, isRed: false);
                    if (probe.About is { } about)
                    {
                        Around(layout, pen, "hs-about", Shown.SymbolOf(layout.Circuit, about));
                    }

                    break;
                case ReadingsLayer { Readings: var readings }:
                    Readings(layout, pen, points, [.. readings]);
                    break;
                case FaultLayer { Faults: var faults }:
                    foreach (var symbol in faults.Select(f => Shown.SymbolOf(layout.Circuit, f.Part)).Distinct())
                    {
                        if (Around(layout, pen, "hs-fault", symbol) is { } box)
                        {
                            pen.Raw(KeyIcons.Fault(box.X + box.Width - 6, box.Y + 5));
                        }
                    }

                    break;
                case ChosenLayer chosen:
                    foreach (var part in chosen.Parts)
                    {
                        Around(layout, pen, "hs-chosen", Shown.SymbolOf(layout.Circuit, part));
                    }

                    foreach (var terminal in chosen.Terminals.Select(t => Touched(points, t)).OfType<(double X, double Y)>())
                    {
                        pen.Circle("hs-chosen", terminal.X, terminal.Y, 8);
                    }

                    break;
                default:
                    break;
            }
        }
    }

    private static void Lead(Pen pen, Dictionary<TerminalName, (double X, double Y)> points, TerminalName? terminal, bool isRed)
    {
        if (terminal is { } name && Touched(points, name) is { } at)
        {
            pen.Open(isRed ? "hs-lead hs-lead-red" : "hs-lead hs-lead-black", ("data-lead", name.ToString()));
            pen.Raw(KeyIcons.Lead(isRed, at.X, at.Y, 7));
            pen.Close();
        }
    }

    private static void Readings(
        CircuitLayout layout, Pen pen, Dictionary<TerminalName, (double X, double Y)> points, List<ReadingMark> readings)
    {
        var touched = readings
            .SelectMany(r => ((TerminalName?[])[r.Probe.Red, r.Probe.Black]).OfType<TerminalName>().Select(t => (Point: Touched(points, t), r.Number)))
            .Where(t => t.Point is not null)
            .Concat(readings.Where(r => r.Probe.About is not null).Select(r => (Point: Corner(layout, r.Probe.About!), r.Number)))
            .Where(t => t.Point is not null)
            .GroupBy(t => t.Point!.Value);
        foreach (var group in touched)
        {
            var numbers = group.Select(t => t.Number).Distinct().Order().ToList();
            var text = string.Join(',', numbers.Take(MostNumbers)) + (numbers.Count > MostNumbers ? "…" : "");
            pen.Raw(KeyIcons.Reading(text, group.Key.X, group.Key.Y));
        }
    }

    private static (double X, double Y)? Corner(CircuitLayout layout, string about) =>
        BoxOf(layout, Shown.SymbolOf(layout.Circuit, about)) is { } box ? (box.X + 6, box.Y + 5) : null;

    /// <summary>A pin of a fuse or relay is touched where its socket's terminal is drawn.</summary>
    private static (double X, double Y)? Touched(Dictionary<TerminalName, (double X, double Y)> points, TerminalName name) =>
        points.TryGetValue(name, out var at) ? at
        : name.Name.EndsWith('p') && points.TryGetValue(name with { Name = name.Name[..^1] }, out at) ? at : null;

    private static Box? Around(CircuitLayout layout, Pen pen, string style, string symbol)
    {
        if (BoxOf(layout, symbol) is not { } box)
        {
            return null;
        }

        pen.Rect(style, box.X - 3, box.Y - 3, box.Width + 4, box.Height + 6, 5);
        return box;
    }

    /// <summary>The symbol or label of the first fault that is marked; null where there is none.</summary>
    public static Box? FirstFault(CircuitLayout layout, DrawingOptions options) => options.Layers.OfType<FaultLayer>()
        .SelectMany(l => l.Faults)
        .Select(f => BoxOf(layout, Shown.SymbolOf(layout.Circuit, f.Part)))
        .FirstOrDefault(b => b is not null);

    private static Box? BoxOf(CircuitLayout layout, string symbol) => layout.Grid.Graph.Boxes.Find(b =>
        (b is PartBox part && part.Identity == symbol) || (b is LabelBox label && label.Wire.Id == symbol));
}
