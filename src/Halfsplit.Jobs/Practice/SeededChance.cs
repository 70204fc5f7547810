namespace Halfsplit.Jobs.Practice;

/// <summary>
/// Chance that repeats: the same seed gives the same numbers on every machine and in every version (splitmix64 by
/// Steele, Lea and Flood, 2014).
/// </summary>
public sealed class SeededChance(long seed)
{
    private ulong _state = unchecked((ulong)seed);

    /// <summary>Evenly from 0 to 1, 1 left out.</summary>
    public double Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var mixed = _state;
            mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            mixed ^= mixed >> 31;
            return (mixed >> 11) * (1.0 / (1UL << 53));
        }
    }

    /// <summary>A bell curve around 0, one standard deviation wide, cut at three.</summary>
    public double Bell()
    {
        var radius = Math.Sqrt(-2 * Math.Log(1 - Next()));
        return Math.Clamp(radius * Math.Cos(2 * Math.PI * Next()), -3, 3);
    }

    /// <summary>A factor around 1 whose logarithm has this spread.</summary>
    public double Factor(double spread) => Math.Exp(spread * Bell());

    /// <summary>Evenly in logarithm between two positive numbers.</summary>
    public double InDecades(double low, double high) => Math.Exp(Math.Log(low) + (Next() * Math.Log(high / low)));

    /// <summary>An index, each as often as its weight.</summary>
    public int Pick(IReadOnlyList<double> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        var left = Next() * weights.Sum();
        for (var i = 0; i < weights.Count - 1; i++)
        {
            left -= weights[i];
            if (left < 0)
            {
                return i;
            }
        }

        return weights.Count - 1;
    }
}
