using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Loads;

/// <summary>A lamp's or heater's ohms and amps from what is printed on it.</summary>
/// <param name="ColdOhms">What an ohmmeter shows; of a lamp far less than the hot ohms.</param>
public sealed record RatedLoad(bool IsLamp, double Watts, double Volts, double Amps, double HotOhms, Measure ColdOhms);

/// <summary>What a load with printed watts and volts should measure.</summary>
public static class FilamentAid
{
    public static Outcome<RatedLoad> Of(bool isLamp, double watts, double volts)
    {
        var limits = new InputLimits().Within("watts", watts, "watts", Unit.Watt).Within("rated-volts", volts, "rated-volts", Unit.Volt);
        if (limits.AreKept)
        {
            limits.Within("rated-amps", watts / volts, "load-rated-amps", Unit.Amp);
        }

        if (!limits.AreKept)
        {
            return Outcome.Wrong<RatedLoad>(limits.Problems);
        }

        var hot = volts * volts / watts;
        var share = BenchDefaults.Table.RangeOf("lamp.cold-share");
        return Outcome.Of(new RatedLoad(
            isLamp, watts, volts, watts / volts, hot,
            isLamp
                ? new Measure(hot * BenchDefaults.Table["lamp.cold-share"], Unit.Ohm, new ValueRange(hot * share.Low, hot * share.High))
                : new Measure(hot, Unit.Ohm)));
    }

    public static Answer Answer(RatedLoad load)
    {
        ArgumentNullException.ThrowIfNull(load);
        return new Answer(
            new Message(load.IsLamp ? "bench-load.lamp-title" : "bench-load.heater-title", new Measure(load.Watts, Unit.Watt).Say(), new Measure(load.Volts, Unit.Volt).Say()),
            [new Message("bench-caution.ohms-isolated")], [new("running", load.Amps, Unit.Amp), new("hot-resistance", load.HotOhms, Unit.Ohm), new("cold-resistance", load.ColdOhms, null)],
            [new Message(load.IsLamp ? "bench-load.lamp-cold" : "bench-load.heater-cold")], [new Message("bench-load.source", BenchDefaults.Table.SayRange("lamp.cold-share", Unit.Percent))]);
    }
}
