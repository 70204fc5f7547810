using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Adapting;

/// <summary>
/// How two circuits differ, in words: renamed parts, then every section of the sheet in its order, then wires whose values
/// differ, then wires and joints that only one of them has. The same two circuits give the same list everywhere.
/// </summary>
public static class CircuitDifference
{
    private static readonly (string Section, string What)[] Sections =
        [("places", "place"), ("parts", "part"), ("conditions", "condition"), ("complaints", "complaint")];

    /// <summary>What was changed to come from the old circuit to the present one; empty if they are the same.</summary>
    public static ImmutableArray<Message> Between(Circuit old, Circuit present)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(present);
        var found = new List<Message>();
        while (Renamed(old, present) is var (was, now))
        {
            // Under its new name everywhere, so that nothing else of it counts as different.
            var draft = new AdaptingDraft(old);
            if (PartChanges.Rename(draft, new RenamePart(was, now)) is not null || draft.Build().Circuit is not { } renamed)
            {
                break;
            }

            old = renamed;
            found.Add(new Message("diff.part-renamed", was, now));
        }

        var (before, after) = (SheetWriter.Tree(old), SheetWriter.Tree(present));
        foreach (var key in (string[])["title", "summary", "cautions"])
        {
            if (Flow(before, key) is var first && Flow(after, key) is var second && first != second)
            {
                found.Add(new Message("diff.sheet-value", key, first ?? (object)Nothing, second ?? (object)Nothing));
            }
        }

        foreach (var (section, what) in Sections)
        {
            Section(Map(before, section), Map(after, section), what, found);
        }

        Wiring(old, present, found);
        return [.. found];
    }

    private static Message Nothing => new("diff.nothing");

    /// <summary>
    /// A part that is gone and one that is new, of the same kind, where the sheet says the same of both or wires them the
    /// same, and of no other so; null if there is none.
    /// </summary>
    private static (string Was, string Now)? Renamed(Circuit old, Circuit present)
    {
        var (before, after) = (Map(SheetWriter.Tree(old), "parts"), Map(SheetWriter.Tree(present), "parts"));
        var (gone, come) = (Only(before, after), Only(after, before));
        return Alone(gone.Select(g => (g.Name, g.Text)), come.Select(c => (c.Name, c.Text)))
            ?? Alone(gone.Select(g => (g.Name, Wired(old, g.Name))), come.Select(c => (c.Name, Wired(present, c.Name))));
    }

    private static (string Was, string Now)? Alone(IEnumerable<(string Name, string Sign)> gone, IEnumerable<(string Name, string Sign)> come)
    {
        var (left, right) = (gone.ToLookup(g => g.Sign, StringComparer.Ordinal), come.ToLookup(c => c.Sign, StringComparer.Ordinal));
        return left.Where(g => g.Count() == 1 && right[g.Key].Count() == 1)
            .Select(g => ((string, string)?)(g.First().Name, right[g.Key].First().Name))
            .FirstOrDefault();
    }

    /// <summary>A part's kind and the paths it is on, without its name.</summary>
    private static string Wired(Circuit circuit, string part) => string.Join('\n', circuit.Paths
        .Where(p => p.Items.Any(i => i is PathPart at && at.Part == part))
        .Select(p => Course(new WiringPath([.. p.Items.Select(i => i is PathPart at && at.Part == part ? at with { Part = "" } : i)])))
        .Order(StringComparer.Ordinal)
        .Prepend(circuit[part].Kind));

    private static List<(string Name, string Text)> Only(SheetMap of, SheetMap without) => [.. of.Entries
        .Where(e => without.Entries.All(w => w.Key.Value != e.Key.Value))
        .Select(e => (e.Key.Value, SheetPrinter.Flow(e.Value)))];

    private static void Section(SheetMap before, SheetMap after, string what, List<Message> found)
    {
        foreach (var entry in before.Entries)
        {
            var name = entry.Key.Value;
            if (after.Entries.FirstOrDefault(e => e.Key.Value == name).Value is not SheetMap present)
            {
                found.Add(new Message($"diff.{what}-removed", name));
                continue;
            }

            foreach (var (key, first, second) in Values((SheetMap)entry.Value, present, ""))
            {
                found.Add(new Message($"diff.{what}-value", name, key, first ?? (object)Nothing, second ?? (object)Nothing));
            }
        }

        foreach (var (name, text) in Only(after, before))
        {
            found.Add(new Message($"diff.{what}-added", name, text));
        }
    }

    /// <summary>Values that differ, with the keys that lead to them.</summary>
    private static IEnumerable<(string Key, string? Old, string? Present)> Values(SheetMap old, SheetMap present, string above)
    {
        foreach (var key in old.Entries.Concat(present.Entries).Select(e => e.Key.Value).Distinct())
        {
            SheetNode? In(SheetMap map) => map.Entries.FirstOrDefault(e => e.Key.Value == key).Value;
            if (In(old) is SheetMap first && In(present) is SheetMap second)
            {
                foreach (var inner in Values(first, second, $"{above}{key} "))
                {
                    yield return inner;
                }
            }
            else if (Flow(old, key) is var was && Flow(present, key) is var now && was != now)
            {
                yield return (above + key, was, now);
            }
        }
    }

    /// <summary>Wires by their ends, then terminals that touch: a path that was cut differs where it was cut alone.</summary>
    private static void Wiring(Circuit old, Circuit present, List<Message> found)
    {
        var left = old.Wires.ToList();
        var added = new List<Wire>();
        foreach (var wire in present.Wires)
        {
            var ends = Ends(wire.From, wire.To);
            var same = left.FindIndex(w => Ends(w.From, w.To) == ends);
            if (same < 0)
            {
                added.Add(wire);
                continue;
            }

            Values(left[same].Spec, wire, found);
            left.RemoveAt(same);
        }

        found.AddRange(left.Select(w => new Message("diff.wire-removed", Line(w))));
        found.AddRange(added.Select(w => new Message("diff.wire-added", Line(w))));
        var touching = old.Joints.Select(j => Ends(j.First, j.Second)).ToList();
        var touches = present.Joints.Select(j => Ends(j.First, j.Second)).ToList();
        found.AddRange(touching.Except(touches).Select(e => new Message("diff.joint-removed", $"{e.Item1}", $"{e.Item2}")));
        found.AddRange(touches.Except(touching).Select(e => new Message("diff.joint-added", $"{e.Item1}", $"{e.Item2}")));
    }

    private static (TerminalName, TerminalName) Ends(TerminalName one, TerminalName other) => one < other ? (one, other) : (other, one);

    private static string Line(Wire wire) => SheetWriter.Path(new WiringPath([Point(wire.From), wire.Spec, Point(wire.To)]));

    private static PathPart Point(TerminalName at) => new(at.Part, at.Name.Length == 0 ? null : at.Name);

    private static void Values(PathWire was, Wire present, List<Message> found)
    {
        var wire = present.Spec;
        void Tell(string code, string? first, string? second)
        {
            if (first != second)
            {
                found.Add(new Message(code, present.Id, first ?? (object)Nothing, second ?? (object)Nothing));
            }
        }

        Tell("diff.wire-gauge", WireText.Gauge(was), WireText.Gauge(wire));
        Tell("diff.wire-length", WireText.Length(was), WireText.Length(wire));
        Tell("diff.wire-colour", was.Colour, wire.Colour);
        Tell("diff.wire-place", was.Place, wire.Place);
        Tell("diff.wire-name", was.Name, wire.Name);
    }

    /// <summary>What a path goes by, whatever its wires are.</summary>
    private static string Course(WiringPath path) =>
        string.Join(" -> ", path.Items.Select(i => i is PathPart part ? $"{part.Part}.{part.Terminal}" : "wire"));

    private static SheetMap Map(SheetMap top, string key) =>
        top.Entries.FirstOrDefault(e => e.Key?.Value == key).Value as SheetMap ?? new SheetMap(default, []);

    private static string? Flow(SheetMap map, string key) =>
        map.Entries.FirstOrDefault(e => e.Key?.Value == key).Value is { } node ? SheetPrinter.Flow(node) : null;
}
