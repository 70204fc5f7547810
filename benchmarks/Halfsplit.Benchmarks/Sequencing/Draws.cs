namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>Pseudo-random numbers that are the same everywhere: SplitMix64 (Steele, Lea and Flood 2014).</summary>
internal sealed class Draws(ulong seed)
{
    private ulong _state = seed;

    /// <summary>From 0 up to, not including, 1.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>From the first number to the last, both included.</summary>
    public int Whole(int first, int last) => first + (int)(Unit() * (last - first + 1));

    /// <summary>Between two numbers, evenly.</summary>
    public double Between(double low, double high) => low + (Unit() * (high - low));

    public bool Chance(double probability) => Unit() < probability;

    private ulong Next()
    {
        _state += 0x9E3779B97F4A7C15;
        var z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
