using CsCheck;
using Halfsplit.Bench.Relays;
using Xunit;

namespace Halfsplit.Bench.Tests.Relays;

public sealed class RelayCareTests
{
    // Common practice: a 12 V coil clicks on a pack of 11 to 12 V, and an 18 to 20 V tool pack may destroy it.
    [Theory]
    [InlineData(5, CoilBearing.DoesNotPullIn)]
    [InlineData(11.5, CoilBearing.ForLong)]
    [InlineData(14.4, CoilBearing.ForLong)]
    [InlineData(17, CoilBearing.ForAMinute)]
    [InlineData(20, CoilBearing.Harmful)]
    [InlineData(28, CoilBearing.Harmful)]
    public void A_twelve_volt_coil_bears_what_the_trade_says(double volts, CoilBearing bearing) =>
        Assert.Equal(bearing, Said.Good(CoilPower.Of(80, volts)).Bearing);

    [Fact]
    public void A_twenty_four_volt_coil_bears_twenty_eight() => Assert.Equal(CoilBearing.ForLong, Said.Good(CoilPower.Of(320, 28, 24)).Bearing);

    [Fact]
    public void A_coil_that_overheats_on_its_own_volts_is_not_what_it_is_said_to_be() =>
        Assert.Equal(CoilBearing.Unlike, Said.Good(CoilPower.Of(85, 24, 24)).Bearing);

    [Fact]
    public void The_warm_coil_obeys_its_own_heat() => Gen.Select(Gen.Double[40, 400], Gen.Double[3, 30]).Sample((ohms, volts) =>
    {
        var result = Said.Good(CoilPower.Of(ohms, volts));
        var warmOhms = ohms * (1 + (0.00393 * (result.Celsius - 23)));

        Assert.Equal(volts * volts / warmOhms, result.WarmWatts, 1e-6 + (1e-6 * result.WarmWatts));
        Assert.True(result.WarmWatts < volts * result.ColdAmps);
    });

    // A datasheet of a plug-in relay tested to JIS D 5010: at most 0.2 V new, 0.3 V after endurance, at 10 A.
    [Theory]
    [InlineData(0.2, 10, ContactState.Good)]
    [InlineData(0.1, 5, ContactState.Good)]
    [InlineData(0.25, 10, ContactState.Worn)]
    [InlineData(0.31, 10, ContactState.Bad)]
    [InlineData(0.2, 6, ContactState.Bad)]
    public void A_contact_is_judged_by_its_datasheet(double volts, double amps, ContactState state) =>
        Assert.Equal(state, Said.Good(ContactDrop.Of(volts, amps)).State);

    // 4.8 V at an ampere would be 48 V at ten: no 12 V car has them.
    [Theory]
    [InlineData(0.9, 6, true)]
    [InlineData(1.2, 1, true)]
    [InlineData(4.8, 1, false)]
    public void No_drop_is_told_that_the_supply_has_not(double volts, double amps, bool isTold) =>
        Assert.Equal(isTold, ContactDrop.Answer(Said.Good(ContactDrop.Of(volts, amps))).Lines.Any(l => l.Name == "drop"));

    [Fact]
    public void What_is_impossible_is_refused_with_the_range()
    {
        Said.Refused(ContactDrop.Of(0.1, 0.25), "1 A", "100 A");
        Said.Refused(ContactDrop.Of(-0.1, 5), "0 V", "5 V");
        Said.Refused(ContactDrop.Of(14, 6), "0 V", "5 V");
        Said.Refused(ContactDrop.Of(double.NaN, 6), "0 V", "5 V");
        Said.Refused(ContactDrop.Of(0.1, 0), "1 A", "100 A");
        Said.Refused(CoilPower.Of(0, 12), "10 Ω", "2 kΩ");
        Said.Refused(CoilPower.Of(80, 12, 48), "6", "24");
    }
}
