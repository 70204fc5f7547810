using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

internal sealed class SwitchKind() : PartKind<Switch>("switch")
{
    private static readonly ImmutableArray<string> SimpleTerminals = ["1", "2"];

    private static readonly ImmutableSortedDictionary<string, ImmutableArray<SwitchContact>> SimplePositions =
        ImmutableSortedDictionary.Create<string, ImmutableArray<SwitchContact>>(StringComparer.Ordinal)
            .Add("off", [])
            .Add("on", [new SwitchContact("1", "2")]);

    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        var opens = map.YesNo("opens by itself", false);
        var named = map.Texts("terminals");
        var before = map.State.ErrorCount;
        var positions = map.Inner("positions", $"positions of {map.Owner}") is { } inner
            ? Positions(inner)
            : SimplePositions;
        if (map.State.ErrorCount > before)
        {
            // What the other keys say of the positions cannot be judged.
            positions = SimplePositions;
            named = SimpleTerminals;
        }

        var terminals = named.IsEmpty ? Mentioned(map, positions) : named;
        CheckTerminals(map, terminals, positions);
        var rest = map.Text("rest") ?? UsualRest(opens);
        if (!positions.ContainsKey(rest) && map.State.ErrorCount == before)
        {
            map.State.Error(
                map.Entry("rest")?.Value ?? map.Anchor, "sheet.unknown-rest", rest, map.Owner, string.Join(", ", positions.Keys));
        }

        return new Switch(
            notes, terminals, positions, rest,
            map.Quantity("contact", Unit.Ohm, Limits.Ohms, defaults.SwitchContactOhms), opens);
    }

    protected override void Write(Switch part, MapWriter map, ComponentDefaults defaults)
    {
        if (!Same(part.Positions, SimplePositions) || !part.TerminalNames.SequenceEqual(SimpleTerminals))
        {
            map.Texts("terminals", part.TerminalNames);
            var positions = new MapWriter();
            foreach (var (name, contacts) in part.Positions)
            {
                positions.Add(name, MapWriter.ListNode(contacts.Select(c => $"{c.From}-{c.To}")));
            }

            map.Add("positions", positions.Map);
        }

        map.Text("rest", part.RestPosition, UsualRest(part.OpensByItself));
        map.Quantity("contact", part.ContactOhms, Unit.Ohm, defaults.SwitchContactOhms);
        map.YesNo("opens by itself", part.OpensByItself);
    }

    /// <summary>A cut-off is closed until something opens it; any other switch is off until somebody turns it.</summary>
    private static string UsualRest(bool opensByItself) => opensByItself ? "on" : "off";

    private static ImmutableSortedDictionary<string, ImmutableArray<SwitchContact>> Positions(MapReader map)
    {
        var positions = ImmutableSortedDictionary.CreateBuilder<string, ImmutableArray<SwitchContact>>(StringComparer.Ordinal);
        foreach (var entry in map.Rest())
        {
            if (entry.Value is not SheetList list)
            {
                map.State.Error(entry.Value, "sheet.want-contacts", entry.Key.Value);
                continue;
            }

            var contacts = ImmutableArray.CreateBuilder<SwitchContact>();
            foreach (var item in list.Items)
            {
                var ends = (map.TextOf(item, entry.Key.Value) ?? "").Split('-', StringSplitOptions.TrimEntries);
                if (ends.Length == 2 && ends[0] != ends[1] && ends.All(SheetNames.IsTerminal))
                {
                    contacts.Add(new SwitchContact(ends[0], ends[1]));
                }
                else
                {
                    map.State.Error(item, "sheet.want-contacts", entry.Key.Value);
                }
            }

            positions[entry.Key.Value] = contacts.ToImmutable();
        }

        return positions.ToImmutable();
    }

    private static ImmutableArray<string> Mentioned(
        MapReader map, ImmutableSortedDictionary<string, ImmutableArray<SwitchContact>> positions)
    {
        // In the order of the sheet, not of the sorted positions.
        var order = map.Map.Entries.FirstOrDefault(e => e.Key.Value == "positions").Value is SheetMap written
            ? written.Entries.Select(e => e.Key.Value)
            : positions.Keys;
        return [.. order
            .SelectMany(name => positions.GetValueOrDefault(name, []))
            .SelectMany(c => new[] { c.From, c.To })
            .Distinct()];
    }

    private static void CheckTerminals(
        MapReader map,
        ImmutableArray<string> terminals,
        ImmutableSortedDictionary<string, ImmutableArray<SwitchContact>> positions)
    {
        SheetNames.CheckTerminals(map, "terminals", terminals);
        foreach (var contact in positions.Values.SelectMany(c => c))
        {
            foreach (var end in new[] { contact.From, contact.To })
            {
                if (!terminals.Contains(end))
                {
                    map.State.Error(
                        map.Entry("positions")?.Value ?? map.Anchor, "sheet.contact-unknown-terminal", end, string.Join(", ", terminals));
                }
            }
        }

        if (terminals.Length < 2)
        {
            map.State.Error(map.Anchor, "sheet.switch-without-contacts", map.Owner);
        }

        foreach (var terminal in terminals.Where(t => t.Contains('-', StringComparison.Ordinal)))
        {
            map.State.Error(map.Entry("terminals")?.Value ?? map.Anchor, "sheet.switch-terminal-dash", terminal);
        }
    }

    private static bool Same(
        ImmutableSortedDictionary<string, ImmutableArray<SwitchContact>> a,
        ImmutableSortedDictionary<string, ImmutableArray<SwitchContact>> b) =>
        a.Count == b.Count && a.All(p => b.TryGetValue(p.Key, out var other) && p.Value.SequenceEqual(other));
}
