using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Tests.Data;

public sealed class FuseTableTests
{
    // Time-current points of published 32 V blade series: mini (type F), standard 35/40 A (type C), maxi (type E).
    [Theory]
    [InlineData(FuseType.BladeMini, 135, 0.75, 600)]
    [InlineData(FuseType.BladeMini, 200, 0.15, 5)]
    [InlineData(FuseType.BladeMini, 350, 0.08, 0.5)]
    [InlineData(FuseType.BladeMini, 600, 0.03, 0.1)]
    [InlineData(FuseType.BladeStandard, 135, 0.75, 600)]
    [InlineData(FuseType.BladeStandard, 200, 0.15, 5)]
    [InlineData(FuseType.BladeStandard, 350, 0.08, 0.5)]
    [InlineData(FuseType.BladeMaxi, 135, 60, 1800)]
    [InlineData(FuseType.BladeMaxi, 200, 2, 50)]
    [InlineData(FuseType.BladeMaxi, 350, 0.2, 7)]
    [InlineData(FuseType.BladeMaxi, 600, 0.04, 1)]
    public void Melting_times_are_the_published_ones(FuseType type, double percent, double minimum, double maximum)
    {
        Assert.Equal(new ValueRange(minimum, maximum), FuseTable.MeltSeconds(type, percent));
    }

    [Theory]
    [InlineData(FuseType.BladeMini)]
    [InlineData(FuseType.BladeStandard)]
    [InlineData(FuseType.BladeMaxi)]
    [InlineData(FuseType.Link)]
    public void A_fuse_never_melts_below_110_per_cent_and_melts_faster_the_more_it_carries(FuseType type)
    {
        Assert.Equal(double.PositiveInfinity, FuseTable.MeltSeconds(type, 109.9).Low);
        Assert.Equal(360_000, FuseTable.MeltSeconds(type, 110).Low);
        var before = new ValueRange(double.PositiveInfinity, double.PositiveInfinity);
        for (var percent = 110.0; percent < 5000; percent += 1)
        {
            var seconds = FuseTable.MeltSeconds(type, percent);
            Assert.True(seconds.Low > 0 && seconds.Low <= seconds.High, $"{percent} %: {seconds}");
            Assert.True(seconds.Low < before.Low && seconds.High < before.High, $"{percent} %");
            before = seconds;
        }
    }

    // Cold resistance, typical, mΩ: published 25 and 40 A standard, 7.5 and 15 A mini, 30, 35 and 40 A maxi.
    [Theory]
    [InlineData(FuseType.BladeStandard, 25, 2.52)]
    [InlineData(FuseType.BladeStandard, 40, 1.44)]
    [InlineData(FuseType.BladeMini, 7.5, 10.85)]
    [InlineData(FuseType.BladeMini, 15, 4.58)]
    [InlineData(FuseType.BladeMaxi, 30, 1.9)]
    [InlineData(FuseType.BladeMaxi, 35, 1.7)]
    [InlineData(FuseType.BladeMaxi, 40, 1.4)]
    public void Cold_resistance_is_the_published_one(FuseType type, double amps, double milliohms)
    {
        Assert.Equal(milliohms * 1e-3, FuseTable.ColdOhms(type, amps), 1e-9);
    }

    // ISO 8820-3 body colours as published.
    [Theory]
    [InlineData(5, "tan")]
    [InlineData(7.5, "brown")]
    [InlineData(10, "red")]
    [InlineData(15, "blue")]
    [InlineData(20, "yellow")]
    [InlineData(25, "clear")]
    [InlineData(30, "green")]
    public void Blade_fuses_have_their_colours(double amps, string colour)
    {
        Assert.Equal(colour, FuseTable.Colour(FuseType.BladeStandard, amps));
        Assert.Equal(colour, FuseTable.Colour(FuseType.BladeMini, amps));
    }

    [Fact]
    public void Only_ratings_that_are_sold_are_standard()
    {
        Assert.True(FuseTable.IsStandard(FuseType.BladeStandard, 7.5));
        Assert.False(FuseTable.IsStandard(FuseType.BladeStandard, 12));
        Assert.False(FuseTable.IsStandard(FuseType.BladeMini, 60));
        Assert.True(FuseTable.IsStandard(FuseType.BladeMaxi, 60));
        Assert.Null(FuseTable.Colour(FuseType.BladeStandard, 12));
    }

    [Theory]
    [InlineData(FuseType.BladeMini)]
    [InlineData(FuseType.BladeStandard)]
    [InlineData(FuseType.BladeMaxi)]
    [InlineData(FuseType.Link)]
    public void Cold_resistance_falls_with_the_rating(FuseType type)
    {
        var before = double.PositiveInfinity;
        for (var amps = 0.25; amps < 600; amps *= 1.1)
        {
            var ohms = FuseTable.ColdOhms(type, amps);
            Assert.InRange(ohms, 1e-5, before);
            before = ohms;
        }
    }
}
