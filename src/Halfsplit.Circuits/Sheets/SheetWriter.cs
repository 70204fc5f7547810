using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Kinds;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets;

/// <summary>
/// Writes a circuit as a sheet that reads back as the same circuit. What equals its default is left out; comments of
/// a sheet it was read from are not part of a circuit and so are not written.
/// </summary>
public static class SheetWriter
{
    public static string Write(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        return SheetPrinter.Print(Tree(circuit));
    }

    /// <summary>What is written, before it is text.</summary>
    internal static SheetMap Tree(Circuit circuit)
    {
        var top = new MapWriter();
        top.Text("sheet", SheetReader.Version.ToString(CultureInfo.InvariantCulture));
        top.Text("title", circuit.Title);
        top.Text("summary", circuit.Summary);
        top.Texts("cautions", circuit.Cautions);
        Each(top, "conditions", circuit.Conditions, c => c.Name, Condition);
        Each(top, "places", circuit.Places, p => p.Name, Place);
        Each(top, "complaints", circuit.Complaints, c => c.Name, Complaint);
        var defaults = ComponentDefaults.For(circuit.Battery.NominalVolts);
        Each(top, "parts", Said(circuit.Parts), p => p.Id, (p, map) => Part(p, map, defaults));
        top.Texts("wiring", [.. circuit.Paths.Select(Path)]);
        return top.Map;
    }

    /// <summary>A path as the sheet has it.</summary>
    public static string Path(WiringPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return string.Join(" -> ", path.Items.Select(item => item switch
        {
            PathWire wire => WireText.Write(wire),
            PathPart { Terminal: { } terminal } part => $"{part.Part}.{terminal}",
            PathPart part => part.Part,
            _ => throw new InvalidOperationException("A path has wires and parts only."),
        }));
    }

    /// <summary>Every part with what a sheet says of it.</summary>
    internal static ImmutableArray<(string Id, SheetMap Map)> PartMaps(Circuit circuit)
    {
        var defaults = ComponentDefaults.For(circuit.Battery.NominalVolts);
        return [.. Said(circuit.Parts).Select(part =>
        {
            var map = new MapWriter();
            Part(part, map, defaults);
            return (part.Id, map.Map);
        })];
    }

    /// <summary>All but the body that every sheet has anyway, which stands last.</summary>
    private static ImmutableArray<Part> Said(ImmutableArray<Part> parts) =>
        parts[^1] is Metal
        {
            Id: Metal.Body,
            Notes: { Name: null, Place: null, Slot: null, Price: null, Cautions.IsEmpty: true, Probe: true },
        }
            ? parts[..^1]
            : parts;

    private static void Condition(Condition condition, MapWriter map)
    {
        map.Text("after", condition.After);
        foreach (var (what, value) in condition.Settings)
        {
            map.Text(what, value);
        }

        map.Quantity("takes", condition.TakesMinutes, Unit.Minute, 0);
        map.Quantity("lasts", condition.LastsSeconds, Unit.Second);
        map.Quantity("starter draws", condition.StarterAmps, Unit.Ampere);
        map.Quantity("alternator holds", condition.AlternatorVolts, Unit.Volt);
        map.YesNo("engine turns", condition.EngineTurns, condition.AlternatorVolts is not null);
        map.Texts("needs", condition.Needs);
    }

    private static void Place(Place place, MapWriter map)
    {
        map.Quantity("open", place.OpenMinutes, Unit.Minute, 0);
        map.Texts("tools", place.Tools);
        map.Texts("cautions", place.Cautions);
        map.Text("environment", place.Environment switch
        {
            PlaceEnvironment.Wet => "wet",
            PlaceEnvironment.Hot => "hot",
            _ => null,
        });
        map.Quantity("reach", place.Reach, Unit.Metre, 1);
        if (place.Grid is { } grid)
        {
            var inner = new MapWriter();
            inner.Text("seen", grid.Seen);
            inner.Texts("rows", [.. grid.Rows.Select(r => string.Join(' ', r))]);
            map.Add("grid", inner.Map);
        }
    }

    private static void Complaint(Complaint complaint, MapWriter map)
    {
        map.Text("load", complaint.Load);
        map.Text("is", complaint.Is == LoadCondition.Weak ? "weak" : "dead");
        map.Text("in", complaint.Condition);
    }

    private static void Part(Part part, MapWriter map, ComponentDefaults defaults)
    {
        var kind = PartKinds.Of(part);
        map.Text("kind", kind.Word);
        map.Text("name", part.Notes.Name);
        kind.Write(part, map, defaults);
        map.Text("place", part.Notes.Place);
        map.Text("slot", part.Notes.Slot);
        map.Range("price", part.Notes.Price, Unit.None);
        map.Texts("cautions", part.Notes.Cautions);
        map.YesNo("probe", part.Notes.Probe, true);
    }

    private static void Each<T>(
        MapWriter top, string key, IEnumerable<T> items, Func<T, string> name, Action<T, MapWriter> write)
    {
        var all = new MapWriter();
        foreach (var item in items)
        {
            var inner = new MapWriter();
            write(item, inner);
            all.Add(name(item), inner.Map);
        }

        if (all.Map.Entries.Count > 0)
        {
            top.Add(key, all.Map);
        }
    }
}
