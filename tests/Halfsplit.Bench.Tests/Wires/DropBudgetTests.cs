using System.Collections.Immutable;
using CsCheck;
using Halfsplit.Bench.Budgets;
using Xunit;

namespace Halfsplit.Bench.Tests.Wires;

public sealed class DropBudgetTests
{
    private static readonly string[] Pieces =
        ["connector", "relay", "switch", "ground", "socket", "splice", "fuse 15A", "fuse 10A mini", "wire 2.5mm2 2m"];

    // A worked example: 5 A through 3 m of 1.5 mm² at the published 13.3 mΩ/m of IEC 60228 class 5 are 0.2 V at most.
    [Fact]
    public void A_wire_drops_what_its_table_says() =>
        Assert.Equal(5 * 3 * 13.3e-3, Budget(5, "wire 1.5mm2 3m").Expected.High, 1e-9);

    // SAE J541 as quoted: 0.200 V per 100 A.
    [Fact]
    public void A_starting_circuit_may_drop_what_SAE_J541_allows() =>
        Assert.Equal(0.4, Said.Good(DropBudget.Of(Chain("wire 35mm2 1.5m"), 200, null, isStarter: true)).Allowed!.Value, 1e-12);

    // A datasheet of a plug-in relay: at most 50 mV at 10 A when new.
    [Fact]
    public void A_new_relay_stays_within_its_datasheet() => Assert.Equal(0.05, Budget(10, "relay").Expected.High, 1e-9);

    [Fact]
    public void The_piece_that_drops_too_much_is_named_with_its_ohms()
    {
        var answer = DropBudget.Answer(Budget(8, "connector = 12 mV", "wire 2.5mm2 4.2m = 0.25", "ground = 1,2 V"));

        var first = Said.Text(answer.Judgements[0]);
        Assert.StartsWith("ground drops 1.176 V", first, StringComparison.Ordinal);
        Assert.Contains("147 mΩ", first, StringComparison.Ordinal);
        Assert.Single(answer.Judgements);
    }

    [Fact]
    public void The_whole_is_the_sum_of_its_pieces_in_any_order_and_grows_with_the_current() =>
        Gen.Select(Gen.Int[0, Pieces.Length - 1].Select(i => Pieces[i]).Array[1, 8], Gen.Double[0.1, 30])
            .Sample((pieces, amps) =>
            {
                var whole = Budget(amps, pieces);
                Assert.Equal(pieces.Sum(p => Budget(amps, p).Expected.High), whole.Expected.High, 1e-9);
                Assert.Equal(Budget(amps, [.. pieces.Reverse()]).Expected.Low, whole.Expected.Low, 1e-12);
                Assert.True(Budget(amps * 1.1, pieces).Expected.Low > whole.Expected.Low);
            });

    [Fact]
    public void What_is_impossible_is_refused_with_the_range()
    {
        Said.Refused(ChainLink.Parse("hose", 20), "connector", "ground");
        Said.Refused(ChainLink.Parse("wire 2.5mm2 400m", 20), "10 mm", "100 m");
        Said.Refused(ChainLink.Parse("fuse 900A", 20), "1, 2", "40 A");
        Said.Refused(DropBudget.Of([], 5, null, false), "connector", "ground");
        Said.Refused(DropBudget.Of(Chain("relay = 100"), 5, null, false), "0 V", "60 V");
        Said.Refused(DropBudget.Of(Chain("relay"), 0, null, false), "1 mA", "1 kA");
        Said.Refused(DropBudget.Of(Chain("wire 2.5mm2 2m"), 500, null, false), "wire 2.5mm2 2m", "160 A");
        Said.Refused(DropBudget.Of(Chain("fuse 10A"), 100, null, false), "fuse 10A", "60 A");
        Said.Refused(ChainLink.Parse("wire 2.5mm2 2m", 900), "-40 °C", "150 °C");
    }

    private static ImmutableArray<ChainLink> Chain(params string[] pieces) => [.. pieces.Select(p => Said.Good(ChainLink.Parse(p, 20)))];

    private static BudgetResult Budget(double amps, params string[] pieces) => Said.Good(DropBudget.Of(Chain(pieces), amps, null, false));
}
