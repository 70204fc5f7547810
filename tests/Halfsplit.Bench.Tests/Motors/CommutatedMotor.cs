using System.Collections.Immutable;
using Halfsplit.Bench.Motors;

namespace Halfsplit.Bench.Tests.Motors;

/// <summary>
/// A motor from its windings: as many coils as bars, evenly around the rotor, each with a sine for its voltage, and two brushes across
/// which one half of them lies in line and then the other. How often that ripples in a turn, and what a bar that makes bad contact
/// does, come out of the geometry; nothing here knows what the reading of currents expects.
/// </summary>
/// <param name="BadBarOhms">What one bar adds while a brush stands on it; 0 for a good one.</param>
internal sealed record CommutatedMotor(double Rpm, int Bars, double BadBarOhms = 0)
{
    private const double SupplyVolts = 13, ArmatureOhms = 0.6, RunningAmps = 5;

    public CurrentTrace Trace(double samplesPerSecond, double seconds, int seed)
    {
        var random = new Random(seed);
        var mean = Enumerable.Range(0, 1000).Average(i => Voltage(2 * Math.PI * i / 1000));
        // So much per unit of voltage that the mean current is the running one.
        var scale = (SupplyVolts - (RunningAmps * ArmatureOhms)) / mean;
        var amps = ImmutableArray.CreateBuilder<double>();
        for (var i = 0; i < samplesPerSecond * seconds; i++)
        {
            var angle = (2 * Math.PI * Rpm / 60 * i / samplesPerSecond) + 0.3;
            var noise = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            amps.Add(((SupplyVolts - (scale * Voltage(angle))) / (ArmatureOhms + BadContact(angle))) + (0.01 * noise));
        }

        return new CurrentTrace(amps.ToImmutable(), samplesPerSecond);
    }

    /// <summary>The volts across the brushes at an angle: every coil counts with the sign of the half it lies in.</summary>
    public double Voltage(double angle)
    {
        var sum = 0.0;
        for (var coil = 0; coil < Bars; coil++)
        {
            sum += Math.Abs(Math.Sin(angle + (2 * Math.PI * coil / Bars)));
        }

        return sum;
    }

    /// <summary>The bad bar passes under each of the two brushes once a turn, and is under it for the width of a bar.</summary>
    private double BadContact(double angle)
    {
        var width = 1.0 / Bars;
        var turn = angle / (2 * Math.PI) % 1;
        return turn < width || (turn >= 0.5 && turn < 0.5 + width) ? BadBarOhms : 0;
    }
}
