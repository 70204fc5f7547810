using CsCheck;
using Halfsplit.Bench.Wires;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Xunit;

namespace Halfsplit.Bench.Tests.Wires;

public sealed class WireAidTests
{
    private const double MetresPerThousandFeet = 304.8;

    private static readonly Gen<WireQuestion> Questions =
        from area in Gen.Double[0.35, 95]
        from metres in Gen.Double[0.1, 30]
        from share in Gen.Double[0.002, 1]
        from back in Gen.Bool
        from celsius in Gen.Double[-30, 60]
        select new WireQuestion(new WireGauge(area), metres, Math.Max(0.1, share * Math.Min(60, WireAid.MostAmps(new WireGauge(area)))), back, celsius);

    // A published wire table of solid annealed copper at 20 °C, ohms per 1000 ft.
    [Theory]
    [InlineData(10, 0.999)]
    [InlineData(12, 1.588)]
    [InlineData(13, 2.003)]
    [InlineData(14, 2.525)]
    [InlineData(15, 3.184)]
    [InlineData(16, 4.016)]
    [InlineData(18, 6.385)]
    [InlineData(19, 8.051)]
    [InlineData(20, 10.15)]
    [InlineData(22, 16.14)]
    [InlineData(23, 20.36)]
    [InlineData(24, 25.67)]
    public void Awg_resistance_is_the_published_one(int awg, double ohmsPerThousandFeet)
    {
        var ohms = Ohms(WireGauge.OfAwg(awg), metres: 30.48) * MetresPerThousandFeet / 30.48;

        Assert.Equal(ohmsPerThousandFeet, ohms, ohmsPerThousandFeet * 5e-4);
    }

    // IEC 60228 class 5, plain copper, maximum at 20 °C, mΩ/m.
    [Theory]
    [InlineData(0.5, 39.0)]
    [InlineData(0.75, 26.0)]
    [InlineData(1, 19.5)]
    [InlineData(1.5, 13.3)]
    [InlineData(2.5, 7.98)]
    [InlineData(4, 4.95)]
    [InlineData(6, 3.30)]
    [InlineData(10, 1.91)]
    public void Metric_resistance_is_the_published_one(double area, double milliohmsPerMetre) =>
        Assert.Equal(milliohmsPerMetre * 1e-3, Ohms(new WireGauge(area), metres: 1), 1e-9);

    // Lessons in Electric Circuits vol. I ch. 12: 15 ohms of wire at 20 °C are 15.9 at 35 °C (its coefficient is 0.004041, the tool's 0.00393).
    [Fact]
    public void Warm_copper_resists_more_as_published()
    {
        var warm = Ohms(new WireGauge(2.5), 1, celsius: 35) / Ohms(new WireGauge(2.5), 1);

        Assert.Equal(15.909 / 15, warm, 2e-3);
        Assert.Equal(1 + (0.00393 * 15), warm, 1e-9);
    }

    [Fact]
    public void Drop_and_loss_follow_from_the_ohms_both_ways_along_the_wire() => Questions.Sample(question =>
    {
        var result = Said.Good(WireAid.Of(question));
        var length = question.Metres * (question.HasReturn ? 2 : 1);

        Close(result.Ohms.Value * question.Amps, result.Drop.Value);
        Close(result.Drop.Value * question.Amps, result.Loss.Value);
        Close(result.Loss.Value / length, result.WattsPerMetre);
        Close(WireTable.OhmsPerMetre(question.Gauge.SquareMillimetres, question.Celsius) * length, result.Ohms.Value);
        Assert.True(result.Ohms.Range!.Value.Low <= result.Ohms.Value * (1 + 1e-12));
    });

    [Fact]
    public void A_thicker_wire_drops_less_and_stays_cooler() =>
        Gen.Select(Questions, Gen.Double[1.05, 3]).Sample((question, times) =>
        {
            var thin = Said.Good(WireAid.Of(question));
            var thick = Said.Good(WireAid.Of(question with { Gauge = new WireGauge(Math.Min(question.Gauge.SquareMillimetres * times, Gauges.Thickest)) }));

            Assert.True(thick.Drop.Value < thin.Drop.Value);
            Assert.True(thick.RiseKelvin <= thin.RiseKelvin);
            Assert.True(thick.BearableAmps >= thin.BearableAmps);
        });

    [Fact]
    public void The_smallest_gauge_keeps_the_drop_and_the_next_thinner_one_does_not()
    {
        var sizes = DataFile.Read("wires.csv").Where(r => r.Has("milliohm_per_m")).Select(r => r.Number("square_mm")).ToList();
        Gen.Select(Questions, Gen.Double[0.05, 1]).Sample((question, allowed) =>
        {
            foreach (var gauge in Said.Good(WireAid.Of(question with { AllowedVolts = allowed })).Smallest)
            {
                Assert.True(Fits(gauge), $"{gauge} {question} {allowed}");
                var index = gauge.Awg is { } awg ? Gauges.SoldAwg.IndexOf(awg) : sizes.IndexOf(gauge.SquareMillimetres);
                if (index > 0)
                {
                    Assert.False(Fits(gauge.Awg is null ? new WireGauge(sizes[index - 1]) : WireGauge.OfAwg(Gauges.SoldAwg[index - 1])));
                }
            }

            bool Fits(WireGauge gauge)
            {
                var result = Said.Good(WireAid.Of(question with { Gauge = gauge }));
                return result.Drop.Range!.Value.High <= allowed && result.BearableAmps >= question.Amps;
            }
        });
    }

    [Fact]
    public void The_fuse_carries_the_load_and_never_more_than_the_wire_bears() => Questions.Sample(question =>
    {
        var result = Said.Good(WireAid.Of(question));
        Assert.True(result.LoadFuseAmps is not { } load || load * 0.8 >= question.Amps - 1e-9);
        Assert.True(result.WireFuseAmps is not { } wire || wire <= result.BearableAmps + 1e-9);
    });

    [Theory]
    [InlineData("2.5", 2.5, null)]
    [InlineData("2,5 mm²", 2.5, null)]
    [InlineData("1.5mm2", 1.5, null)]
    [InlineData("14 AWG", 2.081, 14)]
    [InlineData("AWG14", 2.081, 14)]
    [InlineData("2/0 awg", 67.43, -1)]
    public void A_gauge_is_read_as_people_write_it(string text, double area, int? awg)
    {
        var gauge = Said.Good(Gauges.Parse(text));

        Assert.Equal(area, gauge.SquareMillimetres, area * 1e-3);
        Assert.Equal(awg, gauge.Awg);
    }

    [Fact]
    public void What_is_impossible_is_refused_with_the_range()
    {
        Said.Refused(Gauges.Parse("900"), "0.2 mm²", "120 mm²");
        Said.Refused(Gauges.Parse("30 AWG"), "24", "4/0");
        Said.Refused(Gauges.Parse("thick"), "0.2", "120");
        Said.Refused(WireAid.Of(new WireQuestion(new WireGauge(1), 0, 1)), "10 mm", "100 m");
        Said.Refused(WireAid.Of(new WireQuestion(new WireGauge(1), 1, -1)), "0 A", "1 kA");
        Said.Refused(WireAid.Of(new WireQuestion(new WireGauge(1), 1, double.NaN)), "0 A", "1 kA");
        Said.Refused(WireAid.Of(new WireQuestion(new WireGauge(1), 1, 1, AllowedVolts: 13)), "1 mV", "12 V");
        Said.Refused(WireAid.Of(new WireQuestion(new WireGauge(2.5), 1, 500)), "0 A", "160 A");
        Said.Refused(WireAid.Of(new WireQuestion(new WireGauge(2.5), 1, 10, Celsius: 900)), "-40 °C", "150 °C");
        Said.Refused(WireAid.Of(new WireQuestion(new WireGauge(2.5), -3, 10)), "10 mm", "100 m");
    }

    private static double Ohms(WireGauge gauge, double metres, double celsius = 20) =>
        Said.Good(WireAid.Of(new WireQuestion(gauge, metres, 1, Celsius: celsius))).Ohms.Value;

    private static void Close(double expected, double actual) => Assert.Equal(expected, actual, 1e-12 + (1e-9 * Math.Abs(expected)));
}
