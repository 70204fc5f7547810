using Halfsplit.Circuits.Data;

namespace Halfsplit.Circuits.Tests.Data;

public sealed class WireTableTests
{
    // IEC 60228 class 5, plain copper, maximum conductor resistance at 20 °C in mΩ/m (three cable makers' tables agree).
    [Theory]
    [InlineData(0.5, 39.0)]
    [InlineData(0.75, 26.0)]
    [InlineData(1.0, 19.5)]
    [InlineData(1.5, 13.3)]
    [InlineData(2.5, 7.98)]
    [InlineData(4, 4.95)]
    [InlineData(6, 3.30)]
    [InlineData(10, 1.91)]
    public void Standard_sizes_have_the_published_resistance(double squareMillimetres, double milliohms)
    {
        Assert.Equal(milliohms * 1e-3, WireTable.OhmsPerMetre(squareMillimetres), 1e-9);
    }

    // A published AWG table of solid annealed copper, Ω per 1000 ft at 20 °C, printed digits.
    [Theory]
    [InlineData(10, 0.999, 5.261)]
    [InlineData(12, 1.588, 3.309)]
    [InlineData(14, 2.525, 2.081)]
    [InlineData(16, 4.016, 1.309)]
    [InlineData(18, 6.385, 0.8230)]
    [InlineData(20, 10.15, 0.5176)]
    [InlineData(22, 16.14, 0.3255)]
    [InlineData(24, 25.67, 0.2047)]
    public void Awg_areas_and_solid_copper_follow_the_definition(int awg, double ohmsPerThousandFeet, double squareMillimetres)
    {
        var area = WireTable.SquareMillimetresOfAwg(awg);
        Assert.Equal(squareMillimetres, area, 5e-4);
        Assert.Equal(1, WireTable.SolidOhmsPerMetre(area) * 304.8 / ohmsPerThousandFeet, 5e-4);
    }

    [Fact]
    public void Resistance_falls_with_area_and_stays_above_solid_copper()
    {
        var before = double.PositiveInfinity;
        for (var area = 0.1; area < 150; area *= 1.05)
        {
            var ohms = WireTable.OhmsPerMetre(area);
            Assert.InRange(ohms, WireTable.SolidOhmsPerMetre(area), before);
            before = ohms;
        }
    }

    [Fact]
    public void Copper_gains_resistance_with_heat()
    {
        // 1 + 0.00393/K · 60 K (IACS).
        Assert.Equal(1.2358, WireTable.OhmsPerMetre(2.5, 80) / WireTable.OhmsPerMetre(2.5), 1e-12);
    }

    [Fact]
    public void A_thicker_wire_bears_more()
    {
        var before = 0.0;
        for (var area = 0.1; area < 150; area *= 1.1)
        {
            var amps = WireTable.BearableAmps(area);
            Assert.True(amps > before);
            before = amps;
        }

        Assert.Equal(32, WireTable.BearableAmps(2.5), 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void An_area_of_nothing_is_refused(double area)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => WireTable.OhmsPerMetre(area));
        Assert.Throws<ArgumentOutOfRangeException>(() => WireTable.BearableAmps(area));
    }
}
