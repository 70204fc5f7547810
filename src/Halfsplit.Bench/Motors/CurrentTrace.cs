using System.Collections.Immutable;

namespace Halfsplit.Bench.Motors;

/// <summary>Current against time at even steps.</summary>
/// <param name="Amps">One value for each step.</param>
/// <param name="SamplesPerSecond">Above 0.</param>
public sealed record CurrentTrace(ImmutableArray<double> Amps, double SamplesPerSecond)
{
    public double Seconds => Amps.Length / SamplesPerSecond;
}
