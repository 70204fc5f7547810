using CsCheck;
using Halfsplit.Bench.Batteries;
using Xunit;

namespace Halfsplit.Bench.Tests.Batteries;

public sealed class BatteryTests
{
    // Army TM 5-3805-262-20 p. 5-142: flooded batteries at rest. Army TM 9-6115-730-24: a full AGM battery rests at 12.8 V at 21 °C.
    [Theory]
    [InlineData(BatteryType.Flooded, 12.6, 100)]
    [InlineData(BatteryType.Flooded, 12.4, 75)]
    [InlineData(BatteryType.Flooded, 12.2, 50)]
    [InlineData(BatteryType.Flooded, 12.0, 25)]
    [InlineData(BatteryType.Flooded, 11.7, 0)]
    [InlineData(BatteryType.Flooded, 10.5, 0)]
    [InlineData(BatteryType.Agm, 12.8, 100)]
    public void Rest_volts_give_the_published_charge(BatteryType type, double volts, double percent) =>
        Assert.Equal(percent, Said.Good(BatteryRest.Of(type, volts, 21)).Percent.Value, 1e-9);

    [Fact]
    public void More_volts_are_more_charge_and_the_cold_shows_fewer_volts() =>
        Gen.Select(Gen.Int[0, 2], Gen.Double[11, 13.5], Gen.Double[0, 0.5], Gen.Double[-20, 40], Gen.Double[0, 20]).Sample((type, volts, more, celsius, warmer) =>
        {
            var kind = (BatteryType)type;
            Assert.True(Percent(kind, volts + more, celsius) >= Percent(kind, volts, celsius));
            Assert.True(Percent(kind, volts, celsius + warmer) <= Percent(kind, volts, celsius));
            Assert.InRange(Percent(kind, volts, celsius), 0, 100);
        });

    // Lessons in Electric Circuits vol. I ch. 11: 13.2 V behind 0.1 Ω gives 13.187 V at 100 Ω; 10 V behind 0.2 Ω gives 8.333 V at 8.333 A and 50 A shorted.
    [Theory]
    [InlineData(9.166667, 4.166667, 8.333333, 8.333333, 0.2, 10)]
    [InlineData(13.186813, 0.13186813, 12, 12, 0.1, 13.2)]
    public void Two_loads_give_the_published_internal_resistance(double lightVolts, double lightAmps, double heavyVolts, double heavyAmps, double ohms, double open)
    {
        // The step between the loads must be large enough to be read; the published battery is loaded ten times as hard here, at a tenth of the ohms.
        var result = Said.Good(BatteryOhms.Of(new(lightVolts, 10 * lightAmps), new(heavyVolts, 10 * heavyAmps), null));

        Assert.Equal(ohms / 10, result.Ohms.Value, 1e-6);
        Assert.Equal(open, result.OpenVolts, 1e-5);
    }

    [Fact]
    public void Any_battery_is_found_from_any_two_loads() =>
        Gen.Select(Gen.Double[11.5, 13], Gen.Double[0.002, 0.03], Gen.Double[0, 20], Gen.Double[10, 150]).Sample((open, ohms, light, more) =>
        {
            var result = Said.Good(BatteryOhms.Of(new(open - (ohms * light), light), new(open - (ohms * (light + more)), light + more), null));

            Assert.Equal(ohms, result.Ohms.Value, 1e-9);
            Assert.Equal(open, result.OpenVolts, 1e-9);
            Assert.True(result.Ohms.Range!.Value.Contains(ohms));
        });

    // From the definition of cold-cranking amps: (12.6 - 7.2) V / 600 A = 9 mΩ, / 400 A = 13.5 mΩ.
    [Theory]
    [InlineData(600, 0.009)]
    [InlineData(400, 0.0135)]
    public void The_label_gives_the_ohms_of_its_definition(double amps, double ohms) =>
        Assert.Equal(ohms, Said.Good(BatteryOhms.Of(new(12.5, 0), new(12.1, 50), amps)).RatedOhms!.Value, 1e-12);

    // Army TM 9-6115-730-24: at least 9.6 V at 21 °C.
    [Theory]
    [InlineData(21.1, 9.6)]
    [InlineData(35, 9.6)]
    public void Cranking_must_hold_the_published_volts(double celsius, double volts) =>
        Assert.Equal(volts, Said.Good(Cranking.Of(new CrankingQuestion(10, celsius))).LeastVolts, 1e-9);

    [Fact]
    public void Less_is_asked_of_a_colder_battery() => Gen.Select(Gen.Double[-30, 40], Gen.Double[0, 20]).Sample((celsius, warmer) =>
        Assert.True(Least(celsius) <= Least(celsius + warmer)));

    // SAE J541 as quoted: 0.200 V per 100 A for both cables.
    [Theory]
    [InlineData(0.2, 0.19, "bench-cranking.cables-good")]
    [InlineData(0.5, 0.05, "bench-cranking.positive-side")]
    [InlineData(0.05, 0.5, "bench-cranking.negative-side")]
    public void Cables_are_judged_by_SAE_J541(double positive, double negative, string code) =>
        Assert.Contains(Cranking.Answer(Said.Good(Cranking.Of(new CrankingQuestion(10.2, 20, 200, positive, negative)))).Judgements, j => j.Code == code);

    // Army TM 9-2330-356-14: regulator setting 13.6 to 14.2 V.
    [Theory]
    [InlineData(13.6, "bench-charging.good")]
    [InlineData(14.2, "bench-charging.good")]
    [InlineData(14.5, "bench-charging.trade")]
    [InlineData(15.6, "bench-charging.high")]
    [InlineData(12.6, "bench-charging.low")]
    public void Charging_volts_are_judged_by_the_published_setting(double volts, string code) =>
        Assert.Equal(code, Said.Good(Charging.Of(new ChargingQuestion(volts))).Judgements[0].Code);

    // Two batteries in line share the amps and add their volts and ohms.
    [Fact]
    public void Two_batteries_in_line_are_judged_as_one_each() =>
        Gen.Select(Gen.Double[10.5, 13.2], Gen.Double[0.002, 0.03], Gen.Double[-10, 40]).Sample((volts, ohms, celsius) =>
        {
            var (one, two) = (BatteryRest.Of(BatteryType.Agm, volts, celsius), BatteryRest.Of(BatteryType.Agm, 2 * volts, celsius, 24));
            Assert.Equal(one.Result!.Percent.Value, two.Result!.Percent.Value, 1e-9);
            Assert.Equal(BatteryRest.Answer(one.Result).Found, BatteryRest.Answer(two.Result).Found);

            LoadedVolts Loaded(double amps, int batteries) => new(batteries * (12.6 - (ohms * amps)), amps);
            var (single, pair) = (BatteryOhms.Of(Loaded(5, 1), Loaded(60, 1), 540), BatteryOhms.Of(Loaded(5, 2), Loaded(60, 2), 540, 24));
            Assert.Equal(2 * single.Result!.Ohms.Value, pair.Result!.Ohms.Value, 1e-9);
            Assert.Equal(2 * single.Result.RatedOhms!.Value, pair.Result.RatedOhms!.Value, 1e-12);
            Assert.Equal(BatteryOhms.Answer(single.Result).Judgements[0].Code, BatteryOhms.Answer(pair.Result).Judgements[0].Code);
        });

    // Twice 13.6 to 14.2 V of Army TM 9-2330-356-14, and twice 9.6 V of Army TM 9-6115-730-24.
    [Fact]
    public void A_lorry_is_judged_by_the_doubled_tables_and_told_so()
    {
        Assert.Equal("bench-charging.good", Said.Good(Charging.Of(new ChargingQuestion(28, SystemVolts: 24))).Judgements[0].Code);
        Assert.Equal("bench-charging.low", Said.Good(Charging.Of(new ChargingQuestion(25, SystemVolts: 24))).Judgements[0].Code);
        Assert.Equal(19.2, Said.Good(Cranking.Of(new CrankingQuestion(20, 25, SystemVolts: 24))).LeastVolts, 1e-9);
        Assert.Contains(Said.Good(Charging.Of(new ChargingQuestion(28, SystemVolts: 24))).Notes, n => n.Code == "bench-battery.doubled");
        Said.Refused(Charging.Of(new ChargingQuestion(28)), "8 V", "20 V");
        Said.Refused(BatteryRest.Of(BatteryType.Agm, 38, 20, 36), "12", "24");
    }

    [Fact]
    public void What_is_impossible_is_refused_with_the_range()
    {
        Said.Refused(BatteryRest.Of(BatteryType.Gel, 24, 20), "6 V", "15 V");
        Said.Refused(BatteryOhms.Of(new(12, 10), new(11.9, 11), null), "at least", "5 A");
        Said.Refused(BatteryOhms.Of(new(11, 10), new(12, 60), null), "fall", "rise");
        Said.Refused(Cranking.Of(new CrankingQuestion(20, 20)), "0 V", "14 V");
        Said.Refused(Charging.Of(new ChargingQuestion(3)), "8 V", "20 V");
        Said.Refused(Cranking.Of(new CrankingQuestion(10, 900)), "-30 °C", "60 °C");
        Said.Refused(Cranking.Of(new CrankingQuestion(9, 20, 180, 6, 5)), "9 V", "posts");
        Said.Refused(BatteryOhms.Of(new(12.5, -5), new(11.9, 65), null), "0 A", "1 kA");
        Said.Refused(BatteryOhms.Of(new(12.5, 5), new(11.9, 65), 5), "50 A", "1.5 kA");
    }

    private static double Percent(BatteryType type, double volts, double celsius) => Said.Good(BatteryRest.Of(type, volts, celsius)).Percent.Value;

    // With 12.9 V at the posts no starter draws its hundred amps: nothing is said of the battery.
    [Theory]
    [InlineData(12.9, 12, "bench-cranking.no-sag", null)]
    [InlineData(25.4, 24, "bench-cranking.no-sag", null)]
    [InlineData(10.4, 12, "bench-cranking.holds", "battery-strong")]
    [InlineData(8, 12, "bench-cranking.sags", "battery-weak")]
    public void Volts_that_no_turning_starter_leaves_say_nothing_of_the_battery(double volts, double system, string code, string? found)
    {
        var answer = Cranking.Answer(Said.Good(Cranking.Of(new CrankingQuestion(volts, 20, SystemVolts: system))));

        Assert.Equal(code, answer.Judgements[0].Code);
        Assert.Equal(found, answer.Found);
    }

    private static double Least(double celsius) => Said.Good(Cranking.Of(new CrankingQuestion(10, celsius))).LeastVolts;

    /// <summary>Sulphuric acid thinned by discharge freezes; ice in a battery and a charger do not go together.</summary>
    [Theory]
    [InlineData(11.7, -25, true)]
    [InlineData(12.0, -30, true)]
    [InlineData(12.6, -25, false)]
    [InlineData(11.7, 5, false)]
    public void An_empty_battery_in_the_cold_is_warned_of(double volts, double celsius, bool warned)
    {
        var answer = BatteryRest.Answer(Said.Good(BatteryRest.Of(BatteryType.Flooded, volts, celsius)));

        Assert.Equal(warned, answer.Cautions[0].Code == "bench-caution.frozen");
        Assert.Equal(warned, answer.Judgements[0].Code == "bench-rest.frozen");
    }

    [Fact]
    public void One_cable_alone_says_nothing_of_both()
    {
        string Judged(double? positive, double? negative) => Cranking.Answer(Said.Good(Cranking.Of(new CrankingQuestion(9.9, 20, 180, positive, negative)))).Judgements[^1].Code;

        Assert.Equal("bench-cranking.one-side", Judged(0.1, null));
        Assert.Equal("bench-cranking.one-side", Judged(null, 0.1));
        Assert.Equal("bench-cranking.cables-good", Judged(0.1, 0.1));
        Assert.Equal("bench-cranking.positive-side", Judged(0.9, null));
    }
}
