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

    /// <summary>Look, ohms and tabs of a fuse, and what must be taken again where they can't all be true.</summary>
    public static TheoryData<FuseLook?, double?, double?, double?, string?> Together => new()
    {
        { FuseLook.Whole, double.PositiveInfinity, null, null, "bench-fuse.again-ohms" },
        { null, double.PositiveInfinity, 12.4, 12.4, "bench-fuse.again-ohms" },
        { FuseLook.Blown, 0.2, null, null, "bench-fuse.again-ohms" },
        { FuseLook.Whole, null, 12.4, 0.02, "bench-fuse.again-tabs" },
        { FuseLook.Whole, 0.2, 12.4, 12.4, null },
        { FuseLook.Blown, double.PositiveInfinity, 12.4, 0.02, null },
        { FuseLook.Unclear, double.PositiveInfinity, 0.02, 0.02, null },
    };

    [Theory]
    [MemberData(nameof(Together))]
    public void Signs_that_contradict_are_named_weighed_with_care_and_no_evidence(FuseLook? look, double? ohms, double? first, double? second, string? again)
    {
        var verdict = Verdict(new FuseSigns(look, ohms, first, second));
        var answer = FuseCheck.Answer(verdict);
        var codes = answer.Judgements.Select(j => j.Code).ToList();

        Assert.Equal(again is not null, verdict.Contradicts);
        Assert.Equal(again is not null, codes.Contains("bench-fuse.contradicts"));
        if (again is not null)
        {
            Assert.Contains(again, codes);
            Assert.Null(answer.Found);
            Assert.InRange(verdict.BlownOdds, 0.15, 0.85);
        }
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
