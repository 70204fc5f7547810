using System.Collections.Immutable;
using Halfsplit.Bench.Motors;

namespace Halfsplit.Bench.Tests.Motors;

/// <summary>A motor with two brushes whose speed, bars and faults are known: what the reading of currents is tested with.</summary>
/// <param name="RunningAmps">Mean while it turns.</param>
/// <param name="RippleShare">Ripple, peak to peak, over the mean.</param>
/// <param name="WeakBar">How much of the mean is lost while the weak bar is under a brush; 0 for none, 0.3 for an open one.</param>
/// <param name="Arcing">Spread of the jumps of brushes that bounce, over the mean; 0 for good ones.</param>
/// <param name="Noise">Spread of the clamp's noise, over the mean.</param>
/// <param name="StartPeak">Times the mean at the moment it is switched on; 1 for a trace that begins while it runs.</param>
/// <param name="IsSeized">It is fed and does not turn.</param>
public sealed record SimulatedMotor(
    double Rpm, int Bars, double RunningAmps = 5.5, double RippleShare = 0.12, double WeakBar = 0, double Arcing = 0, double Noise = 0.01,
    double StartPeak = 1, bool IsSeized = false)
{
    /// <summary>No winding is like the other: the spread of the humps, over the ripple.</summary>
    private const double Unlike = 0.08;

    private const double StartSeconds = 0.05;

    /// <param name="seed">The same seed gives the same trace.</param>
    public CurrentTrace Trace(double samplesPerSecond, double seconds, int seed)
    {
        var random = new Random(seed);
        var ripples = Commutator.RipplesPerTurn(Bars);
        var humps = Enumerable.Range(0, ripples).Select(_ => 1 + (Unlike * Normal(random))).ToArray();
        var phase = random.NextDouble();
        var arc = 0.0;
        var amps = ImmutableArray.CreateBuilder<double>();
        for (var i = 0; i < samplesPerSecond * seconds; i++)
        {
            var turn = phase + (IsSeized ? 0 : Rpm / 60 * i / samplesPerSecond);
            var place = turn % 1 * ripples;
            var slot = (int)place % ripples;
            var hump = IsSeized ? 0 : RippleShare * humps[slot] * (Math.Sin(Math.PI * (place - Math.Floor(place))) - (2 / Math.PI));
            // The weak bar is the first; its two edges pass the brushes in the slots beside it.
            var loss = slot == 0 && !IsSeized ? WeakBar * Math.Sin(Math.PI * (place - Math.Floor(place))) : 0;
            // A brush that bounces lets the current jump and creep back within about a ripple.
            arc = random.NextDouble() < Arcing * 40 / samplesPerSecond * Rpm / 60 ? -Math.Abs(Normal(random)) * Arcing * 2 : arc * Math.Exp(-2000 / samplesPerSecond);
            var start = (StartPeak - 1) * Math.Exp(-i / samplesPerSecond / StartSeconds);
            amps.Add(RunningAmps * (1 + hump - loss + arc + start + (Noise * Normal(random))));
        }

        return new CurrentTrace(amps.ToImmutable(), samplesPerSecond);
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
