using System.Collections.Immutable;
using Halfsplit.Simulation.Arrangements;

namespace Halfsplit.Simulation.Faults;

/// <summary>
/// The ohms at which the healthy circuit would drop its whole supply across one thing: supply volts over the amps that it carries,
/// which are more in one condition than in another.
/// </summary>
/// <param name="AtMostAmps">With the most amps of any condition.</param>
/// <param name="AtLeastAmps">With the fewest that are worth the name.</param>
public readonly record struct OhmsRange(double AtMostAmps, double AtLeastAmps)
{
    /// <summary>Ohms of things that carry no current worth the name.</summary>
    public const double Sensing = 1000;

    /// <summary>The highest resistance that still counts as a bad joint and not as an open one.</summary>
    private const double Most = 3e5;

    private const int PointsPerDecade = 4;

    /// <summary>One for each branch.</summary>
    public static ImmutableArray<OhmsRange> Of(CircuitSimulator simulator)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        var volts = simulator.Network.Circuit.Battery.NominalVolts;
        var ranges = new OhmsRange[simulator.Network.Branches.Length];
        foreach (var condition in simulator.Network.Circuit.Conditions)
        {
            var point = simulator.Simulate(new Arrangement(condition.Name), []);
            for (var i = 0; i < ranges.Length; i++)
            {
                var ohms = volts / Math.Abs(point.Amps(i));
                if (ohms <= Sensing)
                {
                    ranges[i] = ranges[i] == default
                        ? new OhmsRange(ohms, ohms)
                        : new OhmsRange(Math.Min(ranges[i].AtMostAmps, ohms), Math.Max(ranges[i].AtLeastAmps, ohms));
                }
            }
        }

        return [.. ranges.Select(r => r == default ? new OhmsRange(Sensing, Sensing) : r)];
    }

    /// <summary>
    /// Degrees of a bad joint: quarters of a decade from where the heaviest load would just notice to where the lightest gets next to
    /// nothing, because there its ohms can be read from volts; whole decades above.
    /// </summary>
    public ImmutableArray<double> Steps()
    {
        var decades = 1 + (int)Math.Ceiling(Math.Log10(AtLeastAmps / AtMostAmps) - 1e-9);
        var steps = ImmutableArray.CreateBuilder<double>();
        for (var k = -2 * PointsPerDecade; k <= decades * PointsPerDecade; k++)
        {
            steps.Add(AtMostAmps * Math.Pow(10, k / (double)PointsPerDecade));
        }

        for (var ohms = steps[^1] * 10; ohms <= Most; ohms *= 10)
        {
            steps.Add(ohms);
        }

        return steps.ToImmutable();
    }
}
