using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Tests.Sheets;
using static Halfsplit.Circuits.Sheets.ProblemSeverity;
using static Halfsplit.Circuits.Tests.Sheets.MarkedSheet;

namespace Halfsplit.Circuits.Tests.Lint;

/// <summary>Sheets that can be read, with what the lint says of them and where.</summary>
internal static class DoubtfulSheets
{
    public static IReadOnlyList<(string Code, ProblemSeverity Severity, MarkedSheet Sheet)> All { get; } =
    [
        // loose ends
        ("lint.coil-unwired", Error, Add(
            ("parts", "§K1: { kind: relay }"), ("wiring", "- S1 -> K1.86"), ("wiring", "- S1 -> K1.30"), ("wiring", "- K1.87 -> L1"))),
        ("lint.load-unwired", Error, Add(("parts", "§L2: { kind: lamp, watts: 5 W }"), ("wiring", "- S1 -> L2.1"))),
        ("lint.load-unwired", Error, Add(
            ("parts", "§ST: { kind: starter }"), ("wiring", "- BAT.pos -> wire 25mm2 1m RD -> ST.30"), ("wiring", "- ST.31 -> BODY"))),
        ("lint.module-unwired", Error, Swap(
            ("  ECU: ", "  §ECU: "), ("  - ECU.31 -> wire 1mm2 1m BN -> G1\n", ""))),
        ("lint.battery-unwired", Error, Swap(
            ("  BAT: ", "  §BAT: "), ("-> BAT.neg", "-> G1"), ("kind: ground }", "kind: ground, on: ENG }\n  ENG: { kind: metal }"))),
        ("lint.terminal-unwired", Warning, Add(("parts", "§F2: { kind: fuse, rating: 10 A }"), ("wiring", "- S1 -> F2.1"))),
        ("lint.terminal-unwired", Warning, Add(("parts", "§C1: { kind: connector }"), ("wiring", "- S1 -> wire 1mm2 1m -> C1.1a"))),
        ("lint.terminal-unwired", Warning, Add(
            ("parts", "§K1: { kind: relay }"), ("wiring", "- S1 -> K1.86"), ("wiring", "- K1.85 -> G1"), ("wiring", "- S1 -> K1.30"))),
        ("lint.terminal-unused", Note, Add(
            ("parts", "§K1: { kind: relay, contacts: changeover }"),
            ("wiring", "- S1 -> K1.86"), ("wiring", "- K1.85 -> G1"), ("wiring", "- S1 -> K1.30"), ("wiring", "- K1.87 -> L1"))),
        ("lint.never-wired", Warning, Add("parts", "§F2: { kind: fuse, rating: 10 A }")),
        ("lint.never-wired", Warning, Add("parts", "§C1: { kind: connector }")),
        ("lint.never-wired", Warning, Add("parts", "§ENG: { kind: metal }")),

        // feed and ground
        ("lint.load-no-feed", Error, Add(("parts", "§L2: { kind: lamp, watts: 5 W }"), ("parts", "S2: { kind: splice }"),
            ("wiring", "- S2 -> L2"), ("wiring", "- L2.2 -> G1"))),
        ("lint.load-no-ground", Error, Add(("parts", "§L2: { kind: lamp, watts: 5 W }"), ("parts", "S2: { kind: splice }"),
            ("wiring", "- S1 -> L2"), ("wiring", "- L2.2 -> S2"))),
        ("lint.coil-no-feed", Error, Add(
            ("parts", "§K1: { kind: relay }"), ("parts", "S2: { kind: splice }"), ("wiring", "- S2 -> K1.86"),
            ("wiring", "- K1.85 -> G1"), ("wiring", "- S1 -> K1.30"), ("wiring", "- K1.87 -> L1"))),
        ("lint.coil-no-ground", Error, Add(
            ("parts", "§K1: { kind: relay }"), ("parts", "S2: { kind: splice }"), ("wiring", "- S1 -> K1.86"),
            ("wiring", "- K1.85 -> S2"), ("wiring", "- S1 -> K1.30"), ("wiring", "- K1.87 -> L1"))),
        ("lint.through-load", Warning, Add(("parts", "§L2: { kind: lamp, watts: 5 W }"), ("parts", "L3: { kind: lamp, watts: 5 W }"),
            ("wiring", "- S1 -> L2 -> L3 -> G1"))),
        ("lint.module-no-feed", Error, Add(("parts", "§X1: { kind: module, feeds: [1], grounds: [2] }"),
            ("parts", "S2: { kind: splice }"), ("wiring", "- S2 -> X1.1"), ("wiring", "- X1.2 -> G1"))),
        ("lint.module-no-ground", Error, Add(("parts", "§X1: { kind: module, feeds: [1], grounds: [2] }"),
            ("parts", "S2: { kind: splice }"), ("wiring", "- S1 -> X1.1"), ("wiring", "- X1.2 -> S2"))),

        // shorts and metal
        ("lint.short", Error, Swap(("  BAT: ", "  §BAT: "), ("wiring:\n", "wiring:\n  - BAT.pos -> wire 1mm2 1m -> G1\n"))),
        ("lint.short-in", Error, Swap(("  key on:", "  §key on:"), ("wiring:\n", "wiring:\n  - S1 -> G1\n"))),
        ("lint.metal-untied", Error, Add(("parts", "§ENG: { kind: metal }"), ("parts", "G2: { kind: ground, on: ENG }"),
            ("wiring", "- S1 -> wire 1mm2 1m -> G2"))),
        ("lint.strap-assumed", Note, Swap(("wiring:", "§wiring:"), ("  - BODY -> wire 16mm2 0.4m BK -> BAT.neg\n", ""))),

        // protection
        ("lint.rating-odd", Warning, Swap("rating: 10 A", "rating: §11 A")),
        ("lint.fuse-over-wire", Warning, Swap(("rating: 10 A", "rating: 20 A"), ("F1 -> wire 1.5mm2", "F1 -> §wire 1mm2"))),
        ("lint.fuse-over-wire", Warning, Swap(("rating: 10 A", "rating: 20 A"), ("IGN -> wire 1mm2", "IGN -> §wire 1mm2"))),
        ("lint.load-over-fuse", Warning, Swap("L1: { kind: lamp, watts: 21 W }", "§L1: { kind: lamp, watts: 210 W }")),
        ("lint.fuse-bridged", Warning, Swap(
            ("  F1: ", "  §F1: "), ("wiring:\n", "wiring:\n  - F1.1 -> wire 2.5mm2 0.1m -> F1.2\n"))),
        ("lint.unfused", Warning, Add(("parts", "§L2: { kind: lamp, watts: 5 W }"),
            ("wiring", "- BAT.pos -> wire 1mm2 1m -> L2"), ("wiring", "- L2.2 -> G1"))),

        // wires
        ("lint.gauge", Error, Add("wiring", "- S1 -> §wire 0.01mm2 1m -> L1")),
        ("lint.gauge", Error, Add("wiring", "- S1 -> §wire 200mm2 1m -> L1")),
        ("lint.colour", Warning, Add("wiring", "- S1 -> §wire 1mm2 1m ZZ -> L1")),
        ("lint.colour", Warning, Add("wiring", "- S1 -> §wire 1mm2 1m RD/XX -> L1")),

        // parts
        ("lint.drop-out", Error, Add("parts", "K1: { kind: relay, pulls in: 6 V, drops out: §7 V }")),
        ("lint.drop-out", Error, Add("parts", "X1: { kind: starter, pulls in: 6 V, drops out: §6 V }")),
        ("lint.winding", Error, Add("parts", "M1: { kind: motor, runs: 5 A at 12 V, winding: §3 ohm }")),
        ("lint.diode-backwards", Error, Add(
            ("parts", "§K1: { kind: relay, suppression: diode }"), ("wiring", "- S1 -> K1.85"),
            ("wiring", "- K1.86 -> G1"), ("wiring", "- S1 -> K1.30"), ("wiring", "- K1.87 -> L1"))),
        ("lint.diode-backwards", Error, Add(
            ("parts", "§Y1: { kind: solenoid, suppression: diode }"), ("wiring", "- S1 -> Y1.neg"), ("wiring", "- Y1.pos -> G1"))),
        ("lint.slot-not-in-grid", Warning, Swap(
            ("fuse box: { open: 1 min }", "fuse box: { grid: { rows: [A2 A3] } }"), ("slot: A1", "slot: §A1"))),
        ("lint.slot-twice", Warning, Add("parts", "F2: { kind: fuse, rating: 10 A, place: fuse box, slot: §A1 }")),
        ("lint.fuel-caution", Warning, Add("parts", "§M1: { kind: motor, name: Fuel pump, runs: 5 A }")),
        ("lint.no-conditions", Warning, Swap(
            ("conditions:\n  key off: {}\n  key on: { IGN: on, ECU.glow: low }\n", ""),
            ("complaints:\n  lamp dark: { load: L1, is: dead, in: key on }\n", ""), ("parts:", "§parts:"))),
    ];
}
