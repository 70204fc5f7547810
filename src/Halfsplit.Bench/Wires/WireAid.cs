using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Wires;

/// <summary>A wire and what is asked of it.</summary>
/// <param name="Metres">From one end to the other.</param>
/// <param name="HasReturn">The current comes back through as much wire again.</param>
/// <param name="Celsius">Of the copper, and of the air around it before the current warms it.</param>
/// <param name="AllowedVolts">The drop that may be; null to ask for no smallest gauge.</param>
public sealed record WireQuestion(
    WireGauge Gauge, double Metres, double Amps, bool HasReturn = false, double Celsius = 20, double SupplyVolts = 12, double? AllowedVolts = null);

/// <summary>What a wire does with its current.</summary>
/// <param name="DropShare">Of the supply.</param>
/// <param name="RiseKelvin">Above the air around it.</param>
/// <param name="HeatClass">cool, warm, hot or overloaded.</param>
/// <param name="InsulationClass">Of ISO 6722-1; null where none is enough.</param>
/// <param name="LoadFuseAmps">The smallest fuse that carries the load; null above those sold.</param>
/// <param name="WireFuseAmps">The largest fuse that protects the wire; null below those sold.</param>
/// <param name="Smallest">The smallest gauges, mm² and AWG, within the allowed drop; empty where nothing was asked or none is enough.</param>
public sealed record WireResult(
    WireQuestion Question, Measure Ohms, Measure Drop, double DropShare, Measure Loss, double WattsPerMetre, double BearableAmps, double RiseKelvin,
    string HeatClass, string? InsulationClass, double? LoadFuseAmps, double? WireFuseAmps, ImmutableArray<WireGauge> Smallest)
{
    /// <summary>The load and its wire have a fuse in common.</summary>
    public bool HasFuse => LoadFuseAmps is { } load && WireFuseAmps is { } wire && load <= wire;
}

/// <summary>Resistance, drop, loss and heat of a wire, the fuse that protects it, and the gauge that an allowed drop needs.</summary>
public static class WireAid
{
    public static Outcome<WireResult> Of(WireQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var limits = new InputLimits()
            .Within("gauge", question.Gauge.SquareMillimetres, "gauge", Unit.SquareMillimetre)
            .Within("length", question.Metres, "length", Unit.Metre)
            .Within("amps", question.Amps, "wire-amps", Unit.Amp)
            .Within("celsius", question.Celsius, "wire-celsius", Unit.Celsius)
            .Within("supply", question.SupplyVolts, "supply", Unit.Volt)
            .Within("allowed-drop", question.AllowedVolts, BenchDefaults.Table.RangeOf("limit.allowed-drop").Low, question.SupplyVolts, Unit.Volt);
        if (limits.AreKept)
        {
            limits.Within("amps", question.Amps, BenchDefaults.Table.RangeOf("limit.wire-amps").Low, MostAmps(question.Gauge), Unit.Amp);
        }

        return limits.AreKept ? Outcome.Of(Result(question)) : Outcome.Wrong<WireResult>(limits.Problems);
    }

    /// <summary>Amps above which the wire burns before anything settles, so that there is nothing to tell of it.</summary>
    public static double MostAmps(WireGauge gauge)
    {
        ArgumentNullException.ThrowIfNull(gauge);
        return Math.Min(
            BenchDefaults.Table.RangeOf("limit.wire-amps").High,
            BenchDefaults.Table.RangeOf("limit.wire-times-bearable").High * WireTable.BearableAmps(gauge.SquareMillimetres));
    }

    private static WireResult Result(WireQuestion question)
    {
        var area = question.Gauge.SquareMillimetres;
        var ohms = Times(question.Gauge.OhmsPerMetre(question.Celsius), Metres(question), Unit.Ohm);
        var drop = Times(ohms, question.Amps, Unit.Volt);
        var loss = Times(drop, question.Amps, Unit.Watt);
        var rise = WireHeat.RiseKelvin(area, question.Amps);
        var bearable = WireHeat.BearableAmps(area, question.Celsius);
        return new WireResult(
            question, ohms, drop, drop.Value / question.SupplyVolts, loss, loss.Value / Metres(question), bearable, rise,
            WireHeat.ClassOf(rise), WireHeat.InsulationFor(question.Celsius + rise), WireFuse.ForLoad(question.Amps),
            WireFuse.ForWire(bearable), question.AllowedVolts is { } allowed ? Smallest(question, allowed) : []);
    }

    /// <summary>The smallest standard mm² and the highest AWG number that keep the drop, at their worst, and bear the amps.</summary>
    private static ImmutableArray<WireGauge> Smallest(WireQuestion question, double allowed)
    {
        var metric = WireTable.PublishedSquareMillimetres.Select(area => new WireGauge(area));
        var numbered = Gauges.SoldAwg.Select(WireGauge.OfAwg);
        return [.. new[] { metric.FirstOrDefault(Fits), numbered.FirstOrDefault(Fits) }.OfType<WireGauge>()];

        bool Fits(WireGauge gauge) =>
            gauge.OhmsPerMetre(question.Celsius).Range!.Value.High * Metres(question) * question.Amps <= allowed
            && WireHeat.BearableAmps(gauge.SquareMillimetres, question.Celsius) >= question.Amps;
    }

    private static double Metres(WireQuestion question) => question.Metres * (question.HasReturn ? 2 : 1);

    private static Measure Times(Measure measure, double factor, Unit unit) => new(
        measure.Value * factor, unit, new ValueRange(measure.Range!.Value.Low * factor, measure.Range.Value.High * factor));
}
