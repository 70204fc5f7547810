using System.Collections.Immutable;

namespace Halfsplit.Bench.Motors;

/// <summary>What speaks for and against each state of a motor.</summary>
/// <param name="Dip">Of the weakest hump, over the mean.</param>
/// <param name="Rough">What does not repeat, over the mean.</param>
/// <param name="OfRated">Mean over rated amps; null where no rating was given.</param>
internal sealed record MotorSigns(bool HasRipple, double Dip, double Rough, double Skewness, double? OfRated)
{
    /// <summary>A sign is not believed beyond these odds, as a power of e.</summary>
    internal static readonly double MostEvidence = BenchDefaults.Table["motor.most-evidence"];

    /// <summary>
    /// The odds of every state. How much a sign says is set by simulated motors (<c>data/bench.csv</c>, the accuracy table in
    /// <c>docs/bench.md</c>): an assumption about real ones.
    /// </summary>
    public ImmutableArray<(MotorState State, double Odds)> States()
    {
        var weights = new Dictionary<MotorState, double>
        {
            [MotorState.Healthy] = 0,
            [MotorState.WeakBar] = HasRipple ? Evidence(Dip, "motor.dip", "motor.dip-step") : -MostEvidence,
            [MotorState.WornBrushes] = HasRipple && Rough > BenchDefaults.Table["motor.rough"] ? Evidence(-Skewness, "motor.skew", "motor.skew-step") : -MostEvidence,
            [MotorState.Seized] = HasRipple ? -MostEvidence : OfRated is { } share ? Evidence(share, "motor.stall-share", "motor.share-step") : BenchDefaults.Table["motor.still-unrated"],
            [MotorState.SpinsFree] = HasRipple && OfRated is { } part ? Evidence(-part, "motor.free-share", "motor.share-step", -1) : -MostEvidence,
        };
        var sum = weights.Values.Sum(Math.Exp);
        return [.. weights.Select(w => (w.Key, Odds: Math.Exp(w.Value) / sum)).OrderByDescending(w => w.Odds)];
    }

    internal static double Evidence(double value, string from, string step, int sign = 1) =>
        Math.Clamp((value - (sign * BenchDefaults.Table[from])) / BenchDefaults.Table[step], -MostEvidence, MostEvidence);
}
