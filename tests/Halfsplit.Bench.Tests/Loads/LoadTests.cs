using CsCheck;
using Halfsplit.Bench.Loads;
using Xunit;

namespace Halfsplit.Bench.Tests.Loads;

public sealed class LoadTests
{
    // P = V²/R at 12 V: a 3 W test lamp is 48 Ω and 0.25 A, one of 5 W 28.8 Ω and 0.42 A.
    [Theory]
    [InlineData(3, 48, 0.25)]
    [InlineData(5, 28.8, 0.4167)]
    public void A_lamp_is_worked_out_from_its_print(double watts, double ohms, double amps)
    {
        var load = Said.Good(FilamentAid.Of(true, watts, 12));

        Assert.Equal(ohms, load.HotOhms, 1e-9);
        Assert.Equal(amps, load.Amps, 1e-4);
        Assert.True(load.ColdOhms.Range!.Value.High < ohms / 5);
    }

    [Fact]
    public void Watts_volts_amps_and_ohms_agree() => Gen.Select(Gen.Bool, Gen.Double[1, 500], Gen.Double[6, 24]).Sample((isLamp, watts, volts) =>
    {
        var load = Said.Good(FilamentAid.Of(isLamp, watts, volts));
        Assert.Equal(watts, load.Amps * load.Amps * load.HotOhms, 1e-9 * watts);
        Assert.Equal(volts, load.Amps * load.HotOhms, 1e-9 * volts);
    });

    // Datasheets of plug-in relays: 65, 75, 76 and 100 ohm at 20 °C.
    [Theory]
    [InlineData(65)]
    [InlineData(75)]
    [InlineData(76)]
    [InlineData(100)]
    public void Published_coils_are_usual_at_any_temperature(double ohms)
    {
        foreach (var celsius in new[] { -20, 20, 80 })
        {
            var warm = ohms * (1 + (0.00393 * (celsius - 20)));
            var result = Said.Good(WindingAid.Of("relay-coil", warm, celsius));
            Assert.Equal(ohms, result.OhmsAtTwenty, 1e-9);
            Assert.Equal("bench-winding.good", WindingAid.Answer(result with { OhmsAtTwenty = Math.Round(result.OhmsAtTwenty, 6) }).Judgements[0].Code);
        }
    }

    [Theory]
    [InlineData(0.58, double.PositiveInfinity, "bench-diode.good")]
    [InlineData(double.PositiveInfinity, 0.7, "bench-diode.good")]
    [InlineData(0.003, 0.002, "bench-diode.shorted")]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity, "bench-diode.open")]
    [InlineData(1.9, double.PositiveInfinity, "bench-diode.light")]
    [InlineData(0.6, 1.2, "bench-diode.both-ways")]
    [InlineData(0.22, double.PositiveInfinity, "bench-diode.low")]
    public void A_diode_is_judged_both_ways_round(double one, double other, string code) =>
        Assert.Equal(code, Said.Good(DiodeAid.Of(one, other)).Judgements[0].Code);

    [Theory]
    [InlineData(5.0, null, "bench-sensor.good")]
    [InlineData(12.1, null, "bench-sensor.high")]
    [InlineData(2.0, null, "bench-sensor.low")]
    [InlineData(2.0, 5.0, "bench-sensor.sensor-pulls")]
    [InlineData(2.0, 2.1, "bench-sensor.elsewhere")]
    public void A_sensor_supply_is_judged_with_and_without_its_sensor(double volts, double? unplugged, string code) =>
        Assert.Equal(code, Said.Good(SensorSupply.Of(new SensorQuestion(volts, unplugged))).Judgements[0].Code);

    // The supply and the ground are judged one by one: nothing of the one changes what is said of the other.
    [Fact]
    public void A_sensors_ground_is_judged_by_itself() => Gen.Select(Gen.Double[0, 12], Gen.Double[0, 1]).Sample((volts, ground) =>
    {
        var (without, with) = (Said.Good(SensorSupply.Of(new SensorQuestion(volts))), Said.Good(SensorSupply.Of(new SensorQuestion(volts, null, ground))));
        Assert.Equal(without.Judgements.Select(j => j.Code), with.Judgements.Select(j => j.Code).Where(c => !c.StartsWith("bench-sensor.ground", StringComparison.Ordinal)));
        Assert.Equal(ground <= 0.05 ? "bench-sensor.ground-good" : "bench-sensor.ground-bad", with.Judgements[^1].Code);
    });

    // A diode has two ends: which way round is measured first changes nothing.
    [Fact]
    public void A_diode_is_judged_the_same_either_way_first() => Gen.Select(Gen.Double[0, 4], Gen.OneOf(Gen.Double[0, 4], Gen.Const(double.PositiveInfinity))).Sample((one, other) =>
        Assert.Equal(Said.Good(DiodeAid.Of(one, other)).Judgements[0].Code, Said.Good(DiodeAid.Of(other, one)).Judgements[0].Code));

    [Fact]
    public void What_is_impossible_is_refused_with_the_range()
    {
        Said.Refused(FilamentAid.Of(true, 0, 12), "100 mW", "3 kW");
        Said.Refused(FilamentAid.Of(false, 2000, 1), "1 mA", "300 A");
        Said.Refused(WindingAid.Of("injector", -5, 20), "10 mΩ", "1000 kΩ");
        Said.Refused(WindingAid.Of("hose", 1, 20), "injector", "relay-coil");
        Said.Refused(WindingAid.Of("injector", 12, 500), "-40 °C", "180 °C");
        Said.Refused(DiodeAid.Of(9, 0), "0 V", "4 V");
        Said.Refused(SensorSupply.Of(new SensorQuestion(-1)), "0 V", "30 V");
    }
}
