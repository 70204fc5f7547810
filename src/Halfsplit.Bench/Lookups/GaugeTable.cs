using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Wires;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Lookups;

/// <summary>AWG to mm² and back.</summary>
public static class GaugeTable
{
    /// <summary>The next AWG number sold that is not thicker; null where none is.</summary>
    public static int? NotThickerAwg(double squareMillimetres) => Gauges.SoldAwg
        .Where(n => WireTable.SquareMillimetresOfAwg(n) <= squareMillimetres * (1 + 1e-9)).Select(n => (int?)n).LastOrDefault();

    /// <summary>The next AWG number sold that is not thinner; null where none is.</summary>
    public static int? NotThinnerAwg(double squareMillimetres) => Gauges.SoldAwg
        .Where(n => WireTable.SquareMillimetresOfAwg(n) >= squareMillimetres * (1 - 1e-9)).Select(n => (int?)n).FirstOrDefault();

    public static Outcome<Answer> Of(string gauge) => Gauges.Parse(gauge).Then(Answer);

    private static Answer Answer(WireGauge gauge)
    {
        var area = gauge.SquareMillimetres;
        var (thinner, thicker) = gauge.Awg is null
            ? (NotThickerAwg(area) is { } low ? WireGauge.OfAwg(low) : null, NotThinnerAwg(area) is { } high ? WireGauge.OfAwg(high) : null)
            : (Sold(WireTable.SquareMillimetres.LastOrDefault(m => m <= area)), Sold(WireTable.SquareMillimetres.FirstOrDefault(m => m >= area)));
        AnswerLine?[] lines =
        [
            Line("not-thinner", thicker), Line("not-thicker", thinner), new("diameter", Math.Sqrt(4 * area / Math.PI) * 1e-3, Unit.Metre),
            new("per-metre", gauge.OhmsPerMetre(20), null),
        ];
        return new Answer(new Message("bench-gauge.title", gauge.Say()), [], [.. lines.OfType<AnswerLine>()], [], [new Message("bench-gauge.source")]);
    }

    private static WireGauge? Sold(double squareMillimetres) => squareMillimetres > 0 ? new WireGauge(squareMillimetres) : null;

    private static AnswerLine? Line(string name, WireGauge? gauge) => gauge is null ? null : new(name, gauge.Say());
}
