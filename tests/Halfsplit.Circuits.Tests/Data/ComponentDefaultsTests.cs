using Halfsplit.Circuits.Data;

namespace Halfsplit.Circuits.Tests.Data;

public sealed class ComponentDefaultsTests
{
    // Published datasheets of plug-in relays: coils of 65 to 100 ohm, pull-in at most 7 to 8 V, drop-out at least 1 V,
    // contacts 3 mΩ typical, 680 ohm of suppression. Battery: 12.6 V full, 12.4 V three quarters (Army TM 5-3805-262-20).
    [Theory]
    [InlineData("relay.coil-ohms", 65, 100)]
    [InlineData("relay.pull-in-volts", 0, 8)]
    [InlineData("relay.drop-out-volts", 1, 7)]
    [InlineData("relay.contact-ohms", 0.003, 0.003)]
    [InlineData("relay.suppression-ohms", 680, 680)]
    [InlineData("battery.rest-volts", 12.6, 12.6)]
    [InlineData("battery.internal-ohms", 0.003, 0.009)]
    [InlineData("module.minimum-volts", 6, 6)]
    [InlineData("alternator.regulated-volts", 13.6, 14.2)]
    public void Defaults_lie_within_published_values(string name, double low, double high)
    {
        Assert.InRange(ComponentDefaults.TwelveVolts[name].Value, low, high);
    }

    [Fact]
    public void Every_row_has_a_spread_around_its_value_and_a_source()
    {
        foreach (var row in ComponentDefaults.TwelveVolts.All)
        {
            Assert.True(row.Range.Contains(row.Value), row.Name);
            Assert.NotEqual("", row.Source);
            Assert.NotEqual("", row.Unit);
        }
    }

    [Fact]
    public void Twenty_four_volts_double_the_volts_and_quadruple_the_coil()
    {
        var twelve = ComponentDefaults.TwelveVolts;
        var twentyFour = ComponentDefaults.For(24);
        Assert.Equal(25.2, twentyFour.BatteryRestVolts, 1e-12);
        Assert.Equal(4 * twelve.RelayCoilOhms, twentyFour.RelayCoilOhms, 1e-9);
        Assert.Equal(2 * twelve.RelayPullInVolts, twentyFour.RelayPullInVolts, 1e-12);
        Assert.Equal(twelve.RelayContactOhms, twentyFour.RelayContactOhms);
        Assert.Equal(twelve.DiodeForwardVolts, twentyFour.DiodeForwardVolts);
    }

    [Fact]
    public void Prices_are_known_by_kind()
    {
        Assert.NotNull(ComponentDefaults.TwelveVolts.PriceOf("fusible link"));
        Assert.Null(ComponentDefaults.TwelveVolts.PriceOf("hovercraft"));
    }
}
