using static Halfsplit.Circuits.Tests.Sheets.MarkedSheet;

namespace Halfsplit.Circuits.Tests.Sheets;

/// <summary>Every mistake the reader knows, with the place where it is reported.</summary>
internal static class WrongSheets
{
    public static IReadOnlyList<(string Code, MarkedSheet Sheet)> All { get; } =
    [
        // YAML
        ("sheet.yaml", Whole("sheet: 1\ntitle: [a, b\n§")),
        ("sheet.yaml", Whole("sheet: 1\ntitle: §\"a\n")),
        ("sheet.bad-character", Whole("sheet: 1\ntitle: a§\ud800b\n")),
        ("sheet.bad-character", Whole("sheet: 1\ntitle: a§\0b\n")),
        ("sheet.not-a-sheet", Whole("§")),
        ("sheet.not-a-sheet", Whole("§- a\n- b\n")),
        ("sheet.not-a-sheet", Whole("§just words\n")),
        ("sheet.two-documents", Whole("sheet: 1\ntitle: T\n---\n§sheet: 1\n")),
        ("sheet.anchor", Add("parts", "X1: §&x { kind: splice }")),
        ("sheet.alias", Add(("parts", "X1: { kind: splice }"), ("parts", "X2: §*x"))),
        ("sheet.tag", Add("parts", "X1: §!!map { kind: splice }")),
        ("sheet.key-not-text", Add("parts", "§[a, b]: { kind: splice }")),
        ("sheet.duplicate-key", Add("parts", "§F1: { kind: splice }")),
        ("sheet.duplicate-key", Add("parts", "F2: { kind: fuse, rating: 5 A, §rating: 10 A }")),

        // top level
        ("sheet.missing-key", Whole("§title: T\nparts: { BAT: { kind: battery } }\nwiring: []\n")),
        ("sheet.unknown-version", Swap("sheet: 1", "sheet: §2")),
        ("sheet.unknown-key", Swap("wiring:", "§wires: []\nwiring:")),
        ("sheet.want-map", Swap("  key off: {}", "  key off: §nothing")),
        ("sheet.want-paths", Whole("sheet: 1\ntitle: T\nparts: { BAT: { kind: battery } }\nwiring: §none\n")),
        ("sheet.want-text", Swap("title: One lamp behind a switch", "title: §[a]")),
        ("sheet.empty", Swap("title: One lamp behind a switch", "title: §\"\"")),

        // parts
        ("sheet.bad-part-name", Add("parts", "§1K: { kind: splice }")),
        ("sheet.bad-part-name", Add("parts", "§wire: { kind: splice }")),
        ("sheet.missing-key", Add("parts", "§X1: { name: Thing }")),
        ("sheet.missing-key", Add("parts", "§F2: { kind: fuse }")),
        ("sheet.missing-key", Add("parts", "§X1: { kind: sensor }")),
        ("sheet.missing-key", Add("parts", "X1: { kind: module, feeds: [1], grounds: [2], outputs: { §o: {} } }")),
        ("sheet.unknown-kind", Add("parts", "K9: { kind: §rellay }")),
        ("sheet.unknown-key", Add("parts", "K9: { kind: relay, §coli: 85 ohm }")),
        ("sheet.unknown-key", Add("parts", "X1: { kind: module, feeds: [1], grounds: [2], outputs: { o: { side: low, §bis: 5 V } } }")),
        ("sheet.unknown-word", Add("parts", "K9: { kind: relay, contacts: §makes }")),
        ("sheet.yes-or-no", Add("parts", "C9: { kind: connector, sealed: §maybe }")),
        ("sheet.bad-terminal", Add("parts", "X1: { kind: §module, feeds: [a b], grounds: [2] }")),
        ("sheet.terminal-twice", Add("parts", "X1: { kind: §module, feeds: [1], grounds: [1] }")),
        ("sheet.unknown-rest", Add("parts", "X1: { kind: switch, rest: §closed }")),
        ("sheet.want-contacts", Add("parts", "X1: { kind: switch, positions: { off: §no } }")),
        ("sheet.want-contacts", Add("parts", "X1: { kind: switch, positions: { off: [], on: [§30] } }")),
        ("sheet.contact-unknown-terminal", Add("parts", "X1: { kind: switch, terminals: [1, 2], positions: §{ off: [], on: [1-3] } }")),
        ("sheet.switch-without-contacts", Add("parts", "§X1: { kind: switch, positions: { off: [] } }")),
        ("sheet.switch-terminal-dash", Add("parts", "X1: { kind: switch, terminals: §[1, 2, a-b] }")),
        ("sheet.threshold-side", Add("parts", "X1: { kind: module, feeds: [1], grounds: [2], inputs: { i: { active: low, §above: 2 V } } }")),
        ("sheet.no-filaments", Add("parts", "X1: { kind: lamp, filaments: §{} }")),
        ("sheet.watts-or-ohms", Add("parts", "X1: { kind: heater, ohms: 1 ohm, §watts: 100 W }")),

        // places
        ("sheet.missing-key", Swap("fuse box: { open: 1 min }", "fuse box: { §grid: {} }")),
        ("sheet.unknown-key", Swap("fuse box: { open: 1 min }", "fuse box: { grid: { rows: [A1], §columns: 2 } }")),
        ("sheet.want-map", Swap("fuse box: { open: 1 min }", "fuse box: { grid: §A1 }")),
        ("sheet.grid-size", Swap("fuse box: { open: 1 min }", "fuse box: { grid: { rows: §[] } }")),
        ("sheet.grid-slot-twice", Swap("fuse box: { open: 1 min }", "fuse box: { grid: { rows: §[A1 A2, . A1] } }")),
        ("sheet.grid-no-slot", Swap("fuse box: { open: 1 min }", "fuse box: { grid: { rows: §[. _] } }")),

        // quantities
        ("sheet.not-a-number", Add("parts", "F2: { kind: fuse, rating: §ten A }")),
        ("sheet.no-unit", Add("parts", "F2: { kind: fuse, rating: §10 }")),
        ("sheet.wrong-unit", Add("parts", "F2: { kind: fuse, rating: §10 V }")),
        ("sheet.unknown-unit", Add("parts", "F2: { kind: fuse, rating: §10 bananas }")),
        ("sheet.unit-not-wanted", Add("parts", "F2: { kind: fuse, rating: 10 A, price: §5 V }")),
        ("sheet.impossible", Add("parts", "F2: { kind: fuse, rating: §5000 A }")),
        ("sheet.impossible", Add("parts", "K9: { kind: relay, coil: §-85 ohm }")),
        ("sheet.impossible", Add("parts", "K9: { kind: relay, coil: §1e99 ohm }")),
        ("sheet.unknown-unit", Add("parts", "X1: { kind: heater, watts: §120 W at }")),
        ("sheet.range-backwards", Add("parts", "F2: { kind: fuse, rating: 10 A, price: §5 to 3 }")),
        ("sheet.decimal-comma", Add("parts", "F2: { kind: fuse, rating: 10 A, slot: 7,§5 }")),
        ("sheet.impossible", Swap("open: 1 min", "open: §-1 min")),

        // surroundings
        ("sheet.bad-place-name", Add("places", "§a  b: { open: 1 min }")),
        ("sheet.unknown-word", Add("places", "boot: { environment: §damp }")),
        ("sheet.unknown-key", Add("places", "boot: { §tool: [hammer] }")),
        ("sheet.missing-key", Add("complaints", "§too bright: { load: L1, is: weak }")),
        ("sheet.unknown-word", Add("complaints", "too bright: { load: L1, is: §bright, in: key on }")),

        // wiring
        ("sheet.path-not-text", Add("wiring", "- §[a, b]")),
        ("sheet.path-too-short", Add("wiring", "- §F1")),
        ("sheet.path-gap", Add("wiring", "- S1 ->§")),
        ("sheet.path-gap", Add("wiring", "- S1 -> §-> G1")),
        ("sheet.bad-item", Add("wiring", "- S1 -> §L 1")),
        ("sheet.bad-item", Add("wiring", "- S1 -> §L1.")),
        ("sheet.unknown-part", Add("wiring", "- S1 -> §L2.1")),
        ("sheet.wire-gauge", Add("wiring", "- S1 -> §wire 1m -> G1")),
        ("sheet.wire-length", Add("wiring", "- S1 -> §wire 1mm2 BK -> G1")),
        ("sheet.wire-twice", Add("wiring", "- S1 -> §wire 1mm2 1m 2m -> G1")),
        ("sheet.wire-twice", Add("wiring", "- S1 -> §wire 1mm2 14AWG 1m -> G1")),
        ("sheet.about-what", Add("wiring", "- S1 -> §wire 1mm2 1m about BK -> G1")),
        ("sheet.about-what", Add("wiring", "- S1 -> §wire 1mm2 1m BK about -> G1")),
        ("sheet.bad-wire-word", Add("wiring", "- S1 -> §wire 1mm2 1m R2D2 -> G1")),
        ("sheet.bad-wire-name", Add("wiring", "- S1 -> §wire 1mm2 1m as a.b -> G1")),
        ("sheet.wire-name-twice", Add(("wiring", "- S1 -> wire 1mm2 1m as W1 -> G1"), ("wiring", "- S1 -> §wire 1mm2 1m as W1 -> G1"))),
        ("sheet.bad-awg", Add("wiring", "- S1 -> §wire 99AWG 1m -> G1")),
        ("sheet.impossible", Add("wiring", "- S1 -> §wire 0mm2 1m -> G1")),
        ("sheet.impossible", Add("wiring", "- S1 -> §wire 1mm2 0m -> G1")),
        ("sheet.unknown-unit", Add("wiring", "- S1 -> §wire 1mm2 3parsec -> G1")),
        ("wiring.two-wires", Add("wiring", "- S1 -> wire 1mm2 1m -> §wire 1mm2 1m -> G1")),
        ("wiring.starts-with-wire", Add("wiring", "- §wire 1mm2 1m -> G1")),
        ("wiring.ends-with-wire", Add("wiring", "- S1 -> §wire 1mm2 1m")),
        ("wiring.name-terminal", Add("wiring", "- S1 -> §BAT")),
        ("wiring.unknown-terminal", Add("wiring", "- S1 -> §L1.9")),
        ("wiring.name-cavity", WithConnector("- S1 -> wire 1mm2 1m -> §C1 -> L1.1")),
        ("wiring.bad-cavity", WithConnector("- S1 -> wire 1mm2 1m -> §C1.x -> L1.1")),
        ("wiring.half-unknown", WithConnector("- S1 -> wire 1mm2 1m -> §C1.1 -> wire 1mm2 1m -> G1")),
        ("wiring.half-both", Swap(
            ("  LED: { kind: led }", "  LED: { kind: led }\n  C1: { kind: connector, b: [L1, S1] }"),
            ("  - S1 -> wire 1mm2 1m YE -> L1\n", "  - S1 -> §C1.1 -> L1\n"))),

        // names that name nothing
        ("lint.no-battery", Swap(("  BAT: { kind: battery }\n", ""), ("parts:", "§parts:"))),
        ("lint.two-batteries", Add("parts", "§B2: { kind: battery }")),
        ("lint.unknown-place", Add("parts", "F2: { kind: fuse, rating: 10 A, place: §fuse bok }")),
        ("lint.unknown-place", Add("wiring", "- S1 -> §wire 1mm2 1m in the moon -> G1")),
        ("lint.body-not-metal", Add("parts", "§BODY: { kind: splice }")),
        ("lint.unknown-metal", Add("parts", "G2: { kind: ground, on: §ENG }")),
        ("lint.unknown-b", Add("parts", "C1: { kind: connector, b: §X9 }")),
        ("lint.unknown-input", Add("parts", "X1: { kind: module, feeds: [1], grounds: [2], outputs: { o: { side: low, needs: §[key] } } }")),
        ("lint.unknown-load", Add("complaints", "x: { load: §F1, is: dead, in: key on }")),
        ("lint.unknown-needed-load", Add("conditions", "x: { needs: §[L9] }")),
        ("lint.unknown-condition", Add("complaints", "x: { load: L1, is: dead, in: §key half }")),
        ("lint.unknown-condition", Add("conditions", "x: { after: §key half }")),
        ("lint.condition-twice", Add("conditions", "§Key Off: {}")),
        ("lint.condition-circle", Add(("conditions", "x: { after: §y }"), ("conditions", "y: { after: x }"))),
        ("lint.given-and-part", Swap(
            ("  LED: { kind: led }", "  LED: { kind: led }\n  ST: { kind: starter }"),
            ("  key off: {}", "  key off: { §starter draws: 100 A }"))),
        ("lint.given-and-part", Swap(
            ("  LED: { kind: led }", "  LED: { kind: led }\n  GEN: { kind: alternator }"),
            ("  key off: {}", "  key off: { §alternator holds: 14 V }"))),
        ("lint.unknown-position", Add("conditions", "x: { IGN: §start }")),
        ("lint.unknown-command", Add("conditions", "x: { ECU.glow: §high }")),
        ("lint.unknown-command", Add("conditions", "x: { ECU.glow: §60 % }")),
        ("lint.unknown-setting", Add("conditions", "x: { §IGM: on }")),
        ("lint.unknown-setting", Add("conditions", "x: { §lasst: 2 s }")),
    ];
    private static MarkedSheet WithConnector(string path) =>
        Add(("parts", "C1: { kind: connector }"), ("wiring", path));
}
