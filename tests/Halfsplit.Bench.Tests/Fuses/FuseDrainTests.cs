using CsCheck;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Fuses;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Xunit;

namespace Halfsplit.Bench.Tests.Fuses;

public sealed class FuseDrainTests
{
    private static readonly Gen<FuseSpec> Kinds = Gen.Select(Gen.Int[0, 3], Gen.Int[0, 100]).Select((type, i) =>
    {
        var ratings = FuseTable.Ratings((FuseType)type);
        return new FuseSpec(ratings[i % ratings.Length], (FuseType)type);
    });

    // Published cold ohms of 32 V blade series: what one count of a 0.1 mV display stands for (10 A: 13 mA, 20 A: 30 mA, 40 A: 69 mA).
    [Theory]
    [InlineData("10A", 13)]
    [InlineData("20A", 30)]
    [InlineData("40A", 69)]
    public void One_count_is_the_published_current(string fuse, double milliamps) =>
        Assert.Equal(milliamps, 1e3 * Reading(fuse, 1).FloorAmps, 0.5);

    // A datasheet's 40 A row: 96 mV at 40 A when hot against 1.44 mΩ cold, so a cold reading overstates a large current.
    [Fact]
    public void Amps_are_volts_over_cold_ohms() => Assert.Equal(0.0005 / 1.44e-3, Reading("40A", 0.5).Amps.Value, 1e-9);

    [Fact]
    public void What_flows_lies_within_the_range_whatever_fuse_and_meter() =>
        Gen.Select(Kinds, Gen.Double[0.001, 5], Gen.Double[-1, 1], Gen.Double[-1, 1]).Sample((fuse, amps, fuseOff, meterOff) =>
        {
            const double step = 1e-4;
            var ohms = fuse.ColdOhms.Value * (1 + (0.15 * fuseOff));
            var shown = Math.Round(amps * ohms * (1 + (0.005 * meterOff)) / step) * step;
            var range = Said.Good(FuseDrain.Of(fuse, Math.Clamp(shown, 0, 1), step)).Amps.Range!.Value;
            if (shown <= 1)
            {
                Assert.True(range.Low <= amps && amps <= range.High, $"{amps} A read as {range}");
            }
        });

    [Fact]
    public void More_millivolts_are_more_amps() => Gen.Select(Kinds, Gen.Double[0, 0.5], Gen.Double[0.001, 0.5]).Sample((fuse, volts, more) =>
        Assert.True(Said.Good(FuseDrain.Of(fuse, Within(fuse, volts + more), 1e-4)).Amps.Value > Said.Good(FuseDrain.Of(fuse, Within(fuse, volts), 1e-4)).Amps.Value));

    /// <summary>A share of the drop at which the fuse melts.</summary>
    private static double Within(FuseSpec fuse, double share) => share * Math.Min(1, fuse.MostAmps * fuse.ColdOhms.Value);

    [Fact]
    public void Less_than_one_count_is_not_read() =>
        Assert.Equal("bench-drain.unresolved", FuseDrain.Answer(Reading("10A", 0)).Judgements.Single().Code);

    [Fact]
    public void What_is_impossible_is_refused_with_the_range()
    {
        Said.Refused(FuseSpec.Parse("12A"), "1", "40");
        Said.Refused(FuseSpec.Parse("quick"), "15A", "100A link");
        Said.Refused(FuseDrain.Of(new FuseSpec(10, FuseType.BladeMini), 2, 1e-4), "0 V", "1 V");
        Said.Refused(FuseDrain.Of(new FuseSpec(10, FuseType.BladeMini), 0.001, 1), "10 mV", "0.001 mV");
        // 7.7 mΩ and six times 10 A.
        Said.Refused(FuseDrain.Of(new FuseSpec(10, FuseType.BladeMini), 0.9, 1e-4), "0 V", "462 mV");
    }

    private static DrainReading Reading(string fuse, double millivolts) =>
        Said.Good(FuseDrain.Of(Said.Good(FuseSpec.Parse(fuse)), millivolts * 1e-3, 1e-4));
}
