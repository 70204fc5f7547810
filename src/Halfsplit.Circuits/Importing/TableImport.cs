using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Importing;

/// <summary>
/// Makes a sheet of a plain table of wires, as a harness maker or a spreadsheet has it: from, to, gauge, colour, length. What the
/// table does not say is inferred by common practice or assumed, and every time it is said so; nothing is filled in silently.
/// </summary>
public static class TableImport
{
    private const string Unknown = "unknown", Off = "key off", On = "switched on";

    /// <summary>Reads the tables from the bytes of their files, in UTF-8, UTF-16 with its mark, or Windows-1252.</summary>
    /// <param name="wires">The table of wires.</param>
    /// <param name="parts">A table of parts; null where there is none.</param>
    /// <param name="title">The sheet's title.</param>
    public static TableImported Read(byte[] wires, byte[]? parts, string title)
    {
        ArgumentNullException.ThrowIfNull(wires);
        var (wiresText, wiresGuessed) = TableBytes.Decode(wires);
        var (partsText, partsGuessed) = parts is null ? (null, false) : TableBytes.Decode(parts);
        var made = Read(wiresText, partsText, title);
        var guessed = ((TableKind Table, bool IsGuessed)[])[(TableKind.Wires, wiresGuessed), (TableKind.Parts, partsGuessed)];
        return made with
        {
            Remarks = [.. guessed.Where(g => g.IsGuessed).Select(g => new TableRemark(g.Table, 1, ProblemSeverity.Note, new Message("table.windows-1252"))), .. made.Remarks],
        };
    }

    /// <param name="wires">The table of wires: a row a wire, or two terminals that touch where the gauge is "direct".</param>
    /// <param name="parts">A table of parts, with columns named as the keys of a sheet; null where there is none.</param>
    /// <param name="title">The sheet's title.</param>
    public static TableImported Read(string wires, string? parts, string title)
    {
        ArgumentNullException.ThrowIfNull(wires);
        ArgumentException.ThrowIfNullOrWhiteSpace(title);
        var remarks = ImmutableArray.CreateBuilder<TableRemark>();
        var rows = WireRow.Read(TableText.Read(wires), (line, severity, message) => remarks.Add(new TableRemark(TableKind.Wires, line, severity, message)));
        if (rows.Length == 0)
        {
            return new TableImported(null, 0, 0, remarks.ToImmutable());
        }

        var known = parts is null
            ? ImmutableArray<PartRow>.Empty
            : PartRow.Read(TableText.Read(parts), (line, severity, message) => remarks.Add(new TableRemark(TableKind.Parts, line, severity, message)));
        return new Work(rows, known, title, remarks).Do();
    }

    private sealed class Work(ImmutableArray<WireRow> rows, ImmutableArray<PartRow> known, string title, ImmutableArray<TableRemark>.Builder remarks)
    {
        private readonly Dictionary<string, PartRow> _known = known.ToDictionary(p => p.Part, StringComparer.Ordinal);
        private readonly Dictionary<string, string> _kinds = new(StringComparer.Ordinal);
        private readonly Dictionary<string, PartTerminals> _terminals = new(StringComparer.Ordinal);
        private readonly HashSet<string> _halves = new(StringComparer.Ordinal);

        /// <summary>Parts of which a row names the plus.</summary>
        private readonly HashSet<string> _plus = rows.SelectMany(r => new[] { r.From, r.To }).Where(e => PartTerminals.IsPlus(e.Terminal))
            .Select(e => e.Part).ToHashSet(StringComparer.Ordinal);

        public TableImported Do()
        {
            var parts = rows.SelectMany(r => new[] { r.From.Part, r.To.Part }).Concat(known.Select(k => k.Part))
                .Where(p => p != Metal.Body || _known.ContainsKey(p)).Distinct(StringComparer.Ordinal).ToList();
            foreach (var part in parts.Append(Metal.Body).Distinct(StringComparer.Ordinal))
            {
                _kinds[part] = part == Metal.Body ? "metal" : Said(part, "kind") ?? Inferred(part) ?? Unknown;
                _terminals[part] = new PartTerminals(_kinds[part]);
            }

            Kinds(parts);
            var (paths, wires, joints) = Paths();
            if (Strap(paths) is { } strap)
            {
                paths.Add(strap);
            }

            foreach (var part in parts)
            {
                AboutTerminals(part);
            }

            return new TableImported(SheetPrinter.Print(Sheet(parts, paths).Map), wires, joints, remarks.ToImmutable());
        }

        private void Say(ProblemSeverity severity, int line, string code, params object[] arguments) =>
            remarks.Add(new TableRemark(TableKind.Wires, line, severity, new Message(code, arguments)));

        private string? Said(string part, string key) =>
            _known.TryGetValue(part, out var row) && row.Values.FirstOrDefault(v => v.Key == key).Value is SheetText { Value: { } text } ? text : null;

        /// <summary>By the letters of the name, corrected by what the rows say of its terminals.</summary>
        private string? Inferred(string part)
        {
            var ends = rows.SelectMany(r => new[] { r.From, r.To }).Where(e => e.Part == part).ToList();
            return Designators.KindOf(part) switch
            {
                // One letter, two meanings: a splice has no terminals, and a generator has B+.
                "switch" when ends.Count > 2 && ends.TrueForAll(e => e.Terminal is null or "-") => "splice",
                "ground" when ends.Exists(e => e.Terminal is "B+" or "D+") => "alternator",
                "motor" when ends.Exists(e => e.Terminal == "50") => "starter",
                var kind => kind,
            };
        }

        private void Kinds(List<string> parts)
        {
            var guessed = parts.Where(p => Said(p, "kind") is null).ToList();
            var named = guessed.Where(p => _kinds[p] != Unknown).GroupBy(p => _kinds[p], StringComparer.Ordinal).ToList();
            if (named.Count > 0)
            {
                Say(ProblemSeverity.Note, 0, "table.kind-by-name", string.Join("; ", named.Select(kind => $"{kind.Key} {string.Join(", ", kind)}")));
            }

            foreach (var part in guessed.Where(p => _kinds[p] == Unknown))
            {
                Say(ProblemSeverity.Error, 0, "table.kind-unknown", part);
            }

            if (!_kinds.ContainsValue("battery"))
            {
                Say(ProblemSeverity.Error, 0, "table.no-battery");
            }
        }

        private (List<string> Paths, int Wires, int Joints) Paths()
        {
            var (paths, wires, joints) = (new List<string>(), 0, 0);
            foreach (var row in rows)
            {
                if (End(row, row.From, isFrom: true) is not { } from || End(row, row.To, isFrom: false) is not { } to)
                {
                    continue;
                }

                if (from == to)
                {
                    Say(ProblemSeverity.Error, row.Line, "table.same-ends", from);
                    continue;
                }

                if (row.From.Part == row.To.Part && _kinds[row.From.Part] is "fuse" or "fusible link" or "breaker" or "ptc")
                {
                    Say(ProblemSeverity.Warning, row.Line, "table.fuse-bridged", row.From.Part);
                }

                wires += row.Gauge is null ? 0 : 1;
                joints += row.Gauge is null ? 1 : 0;
                paths.Add(row.Gauge is null
                    ? $"{from} -> {to}"
                    : string.Create(CultureInfo.InvariantCulture, $"{from} -> wire {row.Gauge} {row.Length}{Behind(" ", row.Colour)}{Behind(" as ", row.Name)}{Behind(" in ", row.Place)} -> {to}"));
            }

            return (paths, wires, joints);
        }

        /// <summary>The cable between the body and the battery, which tables of a harness leave out; null where a row has it or nothing goes to the body.</summary>
        private string? Strap(List<string> paths)
        {
            var battery = _kinds.Where(k => k.Value == "battery").Select(k => k.Key).ToList();
            var ends = paths.SelectMany(p => p.Split(" -> ")).ToHashSet(StringComparer.Ordinal);
            if (battery.Count != 1 || ends.Contains($"{battery[0]}.neg") || !ends.Contains(Metal.Body))
            {
                return null;
            }

            var values = AssumedValues.Of("strap").ToDictionary(v => v.Key, v => v.Value, StringComparer.Ordinal);
            Say(ProblemSeverity.Warning, 0, "table.strap-assumed", battery[0], values["gauge"], values["length"]);
            return $"{Metal.Body} -> wire {WireText.Said(values["gauge"], guessed: true)} {WireText.Said(values["length"], guessed: true)} -> {battery[0]}.neg";
        }

        private static string Behind(string word, string? value) => value is null ? "" : word + value;

        private string? End(WireRow row, TableEnd end, bool isFrom)
        {
            var kind = _kinds[end.Part];
            if (end.IsDash && !_plus.Contains(end.Part))
            {
                if (_terminals[end.Part].HasMinus)
                {
                    Say(ProblemSeverity.Warning, row.Line, "table.dash-none", end.Part);
                }

                end = end with { Terminal = null };
            }

            var name = _terminals[end.Part].Of(end.Terminal, isFrom);
            if (name is null)
            {
                Say(ProblemSeverity.Error, row.Line, "table.bad-terminal", end.Part, end.Terminal ?? "–", kind);
                return null;
            }

            return name.Length == 0 ? end.Part : $"{end.Part}.{(kind == "connector" ? Half(row, end.Part, name) : name)}";
        }

        /// <summary>A cavity whose half no row says: the first wire of a cavity is on half a, the second on half b.</summary>
        private string Half(WireRow row, string part, string cavity)
        {
            if (cavity.Length > 1 && cavity[^1] is 'a' or 'b')
            {
                _halves.Add($"{part}.{cavity}");
                return cavity;
            }

            var half = _halves.Add($"{part}.{cavity}a") ? "a" : "b";
            if (half == "b" && !_halves.Add($"{part}.{cavity}b"))
            {
                Say(ProblemSeverity.Warning, row.Line, "table.third-in-cavity", $"{part}.{cavity}");
            }

            Say(ProblemSeverity.Warning, row.Line, "table.half-assumed", $"{part}.{cavity}", half);
            return cavity + half;
        }

        private void AboutTerminals(string part)
        {
            var terminals = _terminals[part];
            if (terminals.WentByDirection)
            {
                Say(ProblemSeverity.Note, 0, "table.by-direction", part);
            }

            if (terminals.LeftOut)
            {
                Say(ProblemSeverity.Note, 0, "table.terminal-left-out", part, _kinds[part]);
            }

            if (_kinds[part] == "connector")
            {
                foreach (var cavity in terminals.Order.Select(t => t.Length > 1 && t[^1] is 'a' or 'b' ? t[..^1] : t).Distinct(StringComparer.Ordinal))
                {
                    var (a, b) = (_halves.Contains($"{part}.{cavity}a"), _halves.Contains($"{part}.{cavity}b"));
                    if (a != b)
                    {
                        Say(ProblemSeverity.Warning, 0, "table.half-empty", $"{part}.{cavity}", a ? "b" : "a");
                    }
                }
            }
        }

        private MapWriter Sheet(List<string> parts, List<string> paths)
        {
            var top = new MapWriter();
            top.Text("sheet", SheetReader.Version.ToString(CultureInfo.InvariantCulture));
            top.Text("title", title);
            var all = new MapWriter();
            var switches = new MapWriter();
            foreach (var part in parts)
            {
                var map = new MapWriter();
                Part(part, map);
                all.Add(part, map.Map);
                if (_kinds[part] == "switch" && map.Map.Entries.FirstOrDefault(e => e.Key?.Value == "positions").Value is var positions
                    && (positions is not SheetMap { Entries: { } named } || named.Exists(e => e.Key.Value == "on")))
                {
                    switches.Text(part, "on");
                }
            }

            var conditions = new MapWriter();
            conditions.Add(Off, new MapWriter().Map);
            if (switches.Map.Entries.Count > 0)
            {
                switches.Map.Entries.Insert(0, new SheetEntry(MapWriter.TextNode("after"), MapWriter.TextNode(Off)));
                conditions.Add(On, switches.Map);
            }

            Say(ProblemSeverity.Warning, 0, "table.conditions-assumed", On);
            top.Add("conditions", conditions.Map);
            Places(top);
            top.Add("parts", all.Map);
            top.Texts("wiring", paths);
            return top;
        }

        private void Places(MapWriter top)
        {
            var places = new MapWriter();
            var named = rows.Select(r => r.Place).Concat(known.Select(k => Said(k.Part, "place"))).OfType<string>().Distinct(StringComparer.Ordinal);
            foreach (var place in named)
            {
                places.Add(place, new MapWriter().Map);
            }

            if (places.Map.Entries.Count > 0)
            {
                top.Add("places", places.Map);
            }
        }

        /// <summary>What the table of parts says, what the terminals say, and what has to be assumed.</summary>
        private void Part(string part, MapWriter map)
        {
            var kind = _kinds[part];
            map.Text("kind", kind);
            foreach (var (key, value) in _known.TryGetValue(part, out var row) ? row.Values.Where(v => v.Key != "kind") : [])
            {
                map.Add(key, value);
            }

            bool Has(string key) => map.Map.Entries.Exists(e => e.Key.Value == key);
            var order = _terminals[part].Order;
            switch (kind)
            {
                case "relay" when !Has("contacts") && order.Any(t => t is "87a" or "87b"):
                    map.Text("contacts", order.Contains("87b") ? "twin make" : order.Contains("87") ? "changeover" : "break");
                    break;
                case "switch" when !Has("positions"):
                    Switch(part, map, order);
                    break;
                case "lamp" when !Has("filaments") && order.Any(t => t is not ("1" or "2")):
                    Lamp(part, map, order);
                    return;
                case "module" when !Has("feeds") && !Has("grounds"):
                    Module(part, map, order);
                    break;
            }

            foreach (var (key, value) in AssumedValues.Of(kind).Where(v => !Has(v.Key) && !(Has("ohms") && v.Key == "watts") && !(Has("filaments") && v.Key == "watts")))
            {
                map.Text(key, value);
                Say(ProblemSeverity.Warning, 0, "table.value-assumed", part, key, value);
            }
        }

        private void Switch(string part, MapWriter map, IReadOnlyList<string> order)
        {
            if (order.All(t => t is "1" or "2"))
            {
                return;
            }

            var positions = new MapWriter();
            positions.Add("off", MapWriter.ListNode([]));
            if (order.All(t => t is "30" or "15" or "50") && order.Contains("30"))
            {
                // An ignition switch by DIN 72552: 15 stays fed while 50 cranks.
                var run = order.Contains("15") ? new[] { "30-15" } : [];
                positions.Add("on", MapWriter.ListNode(run.Length > 0 ? run : ["30-50"]));
                if (order.Contains("50") && run.Length > 0)
                {
                    positions.Add("start", MapWriter.ListNode([.. run, "30-50"]));
                }
            }
            else
            {
                var fed = order.Contains("30") ? "30" : order[0];
                positions.Add("on", MapWriter.ListNode(order.Where(t => t != fed).Select(t => $"{fed}-{t}")));
            }

            map.Add("positions", positions.Map);
            Say(ProblemSeverity.Warning, 0, "table.positions-assumed", part, string.Join(", ", order));
        }

        private void Lamp(string part, MapWriter map, IReadOnlyList<string> order)
        {
            var common = order.Contains("31") ? "31" : order[^1];
            var watts = AssumedValues.Of("lamp").Single().Value;
            var filaments = new MapWriter();
            foreach (var terminal in order.Where(t => t != common))
            {
                filaments.Text(terminal, watts);
            }

            map.Add("filaments", filaments.Map);
            map.Text("common", common, "31");
            Say(ProblemSeverity.Warning, 0, "table.filaments-assumed", part, watts, common);
        }

        /// <summary>Feeds and grounds by DIN 72552; of any other terminal nothing is claimed until somebody says what it is.</summary>
        private void Module(string part, MapWriter map, IReadOnlyList<string> order)
        {
            string[] feeds = ["30", "15", "87", "B+", "VCC", "VBAT"], grounds = ["31", "31b", "GND"];
            map.Texts("feeds", [.. order.Where(t => feeds.Contains(t, StringComparer.OrdinalIgnoreCase))]);
            map.Texts("grounds", [.. order.Where(t => grounds.Contains(t, StringComparer.OrdinalIgnoreCase))]);
            var others = order.Where(t => !feeds.Contains(t, StringComparer.OrdinalIgnoreCase) && !grounds.Contains(t, StringComparer.OrdinalIgnoreCase)).ToList();
            map.Texts("buses", others);
            Say(
                others.Count == order.Count ? ProblemSeverity.Error : ProblemSeverity.Warning, 0, "table.module-terminals", part,
                others.Count == 0 ? "–" : string.Join(", ", others));
        }
    }
}
