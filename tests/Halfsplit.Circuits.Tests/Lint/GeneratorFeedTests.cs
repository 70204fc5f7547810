using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Lint;

/// <summary>An alternator's D+ feeds what hangs on it, and takes in what excites it.</summary>
public sealed class GeneratorFeedTests
{
    private static readonly string Sheet = """
        sheet: 1
        title: A relay on D+
        conditions: { key off: {}, key on: { IGN: on } }
        parts:
          BAT: { kind: battery }
          ALT: { kind: alternator }
          F1: { kind: fuse, rating: 10 A }
          IGN: { kind: switch }
          HL1: { kind: lamp, watts: 2 W }
          K1: { kind: relay, suppression: diode }
          L1: { kind: lamp, watts: 21 W }
        wiring:
          - BODY -> wire 16mm2 0.4m BK -> BAT.neg
          - BAT.pos -> wire 16mm2 1m RD -> ALT.B+
          - ALT.31 -> wire 16mm2 0.4m BK -> BODY
          - BAT.pos -> wire 2.5mm2 1m RD -> F1 -> wire 1.5mm2 1m RD -> IGN
          - IGN.2 -> wire 1mm2 1m BU -> HL1 -> wire 1mm2 1m BU -> ALT.D+
          - ALT.D+ -> wire 1mm2 1m BU -> K1.86
          - K1.85 -> wire 1mm2 1m BN -> BODY
          - F1.2 -> wire 1.5mm2 1m RD -> K1.30
          - K1.87 -> wire 1.5mm2 1m YE -> L1
          - L1.2 -> wire 1.5mm2 1m BN -> BODY

        """;

    private static IEnumerable<string> Said(string sheet)
    {
        var reading = SheetReader.Read(sheet);
        Assert.True(reading.Circuit is not null, string.Join('\n', reading.Problems.Select(p => p.Message.Code)));
        return CircuitLint.Check(reading.Circuit!).Where(p => p.Severity != ProblemSeverity.Note).Select(p => p.Message.Code);
    }

    [Fact]
    public void A_coil_on_d_plus_has_its_feed_with_and_without_a_charge_lamp()
    {
        Assert.Empty(Said(Sheet));
        Assert.DoesNotContain(
            Said(Sheet.Replace("HL1 -> wire 1mm2 1m BU -> ALT.D+", "HL1 -> BODY", StringComparison.Ordinal)),
            c => c is "lint.coil-no-feed" or "lint.through-load");
    }

    [Fact]
    public void A_diode_the_wrong_way_round_is_seen_on_d_plus_too() =>
        Assert.Contains("lint.diode-backwards", Said(Sheet.Replace("K1.86", "K1.8x", StringComparison.Ordinal).Replace("K1.85", "K1.86", StringComparison.Ordinal).Replace("K1.8x", "K1.85", StringComparison.Ordinal)));

    [Fact]
    public void A_coil_between_two_grounds_is_not_fed_by_way_of_the_field() =>
        Assert.Contains(
            Said(Sheet.Replace("ALT.D+ -> wire 1mm2 1m BU -> K1.86", "BODY -> wire 1mm2 1m BU -> K1.86", StringComparison.Ordinal)),
            c => c is "lint.coil-no-feed" or "lint.through-load");

    [Fact]
    public void An_alternator_whose_b_plus_goes_nowhere_feeds_nothing() =>
        Assert.Contains(Said(Sheet.Replace("BAT.pos -> wire 16mm2 1m RD -> ALT.B+", "BODY -> wire 16mm2 1m RD -> G9", StringComparison.Ordinal).Replace("  L1: {", "  G9: { kind: ground }\n  L1: {", StringComparison.Ordinal)), c => c is "lint.coil-no-feed" or "lint.through-load");
}
