using CsCheck;
using Halfsplit.Bench.Fuses;
using Xunit;

namespace Halfsplit.Bench.Tests.Fuses;

public sealed class FuseCheckTests
{
    [Theory]
    [InlineData(12.4, 12.4, false)]
    [InlineData(12.4, 0.02, true)]
    [InlineData(0.02, 12.4, true)]
    public void Tabs_part_whole_from_blown(double first, double second, bool blown) =>
        Assert.True(Odds(new FuseSigns(null, null, first, second)) is var odds && (blown ? odds > 0.95 : odds < 0.05));

    [Fact]
    public void Without_a_feed_the_tabs_say_nothing()
    {
        Assert.Equal(0.5, Odds(new FuseSigns(null, null, 0.02, 0.03)), 1e-9);
        Assert.Contains(FuseCheck.Answer(Verdict(new FuseSigns(null, null, 0, 0))).Judgements, m => m.Code == "bench-fuse.tabs-dead");
    }

    [Fact]
    public void A_fuse_that_looks_whole_and_does_not_conduct_is_blown()
    {
        Assert.True(Odds(new FuseSigns(FuseLook.Whole)) < 0.1);
        Assert.True(Odds(new FuseSigns(FuseLook.Whole, double.PositiveInfinity)) > 0.8);
    }

    [Fact]
    public void More_ohms_never_speak_for_a_whole_fuse_and_nothing_is_certain() =>
        Gen.Select(Gen.Double[0, 5000], Gen.Double[0, 5000]).Sample((one, other) =>
        {
            var (low, high) = (Odds(new FuseSigns(Ohms: Math.Min(one, other))), Odds(new FuseSigns(Ohms: Math.Max(one, other))));
            Assert.True(low <= high);
            Assert.InRange(low, 1e-6, 1 - 1e-6);
        });

    [Fact]
    public void The_tabs_may_be_read_in_either_order() => Gen.Select(Gen.Double[0, 15], Gen.Double[0, 15]).Sample((one, other) =>
        Assert.Equal(Odds(new FuseSigns(null, null, one, other)), Odds(new FuseSigns(null, null, other, one)), 1e-12));

    [Fact]
    public void A_blown_fuse_comes_with_its_cause() =>
        Assert.Contains(FuseCheck.Answer(Verdict(new FuseSigns(FuseLook.Blown))).Judgements, m => m.Code == "bench-fuse.has-a-cause");

    [Fact]
    public void What_is_impossible_is_refused_with_the_range()
    {
        Said.Refused(FuseCheck.Of(new FuseSigns()), "--look", "--tabs");
        Said.Refused(FuseCheck.Of(new FuseSigns(Ohms: -1)), "0 Ω", "100000 kΩ");
        Said.Refused(FuseCheck.Of(new FuseSigns(null, null, 100, 0)), "0 V", "60 V");
        Said.Refused(FuseCheck.Of(new FuseSigns(null, null, 12)), "both", "tab");
    }

    private static FuseVerdict Verdict(FuseSigns signs) => Said.Good(FuseCheck.Of(signs));

    private static double Odds(FuseSigns signs) => Verdict(signs).BlownOdds;
}
