using System.Collections.Immutable;
using System.Numerics;
using MathNet.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace Halfsplit.Bench.Motors;

/// <summary>The strength of every frequency in a current, its slow changes taken off.</summary>
public sealed class MotorSpectrum
{
    private readonly double[] _size;

    private MotorSpectrum(double[] size, double step, double floor) => (_size, Step, Floor) = (size, step, floor);

    /// <summary>Hertz from one line to the next.</summary>
    public double Step { get; }

    /// <summary>Amps of a line that is only noise: the median of all.</summary>
    public double Floor { get; }

    /// <summary>Amps, half the ripple from peak to peak, by frequency.</summary>
    public ImmutableArray<(double Hertz, double Amps)> Lines => [.. _size.Select((s, i) => (i * Step, s))];

    public double HighestHertz => (_size.Length - 1) * Step;

    public static MotorSpectrum Of(double[] amps, double samplesPerSecond)
    {
        var mean = 0.0;
        ArgumentNullException.ThrowIfNull(amps);
        foreach (var value in amps)
        {
            mean += value / amps.Length;
        }

        var window = Window.HannPeriodic(amps.Length);
        // Four times as many lines as samples: a frequency falls near one of them.
        var values = new Complex[4 * (int)BitOperations.RoundUpToPowerOf2((uint)amps.Length)];
        for (var i = 0; i < amps.Length; i++)
        {
            values[i] = (amps[i] - mean) * window[i];
        }

        Fourier.Forward(values, FourierOptions.NoScaling);
        // Half of a Hann window's weight is lost, and half of the strength stands at negative frequencies.
        var size = values.Take((values.Length / 2) + 1).Select(v => v.Magnitude * 4 / amps.Length).ToArray();
        return new MotorSpectrum(size, samplesPerSecond / values.Length, size.Order().ElementAt(size.Length / 2));
    }

    /// <summary>The median line between two frequencies.</summary>
    public double FloorBetween(double from, double to)
    {
        var (first, last) = (Math.Max(1, (int)(from / Step)), Math.Min(_size.Length - 1, (int)(to / Step)));
        return last > first ? _size[first..last].Order().ElementAt((last - first) / 2) : Floor;
    }

    /// <summary>The highest line near a frequency.</summary>
    public double Near(double hertz, double within)
    {
        var (from, to) = (Math.Max(1, (int)Math.Ceiling((hertz - within) / Step)), Math.Min(_size.Length - 1, (int)Math.Floor((hertz + within) / Step)));
        var most = 0.0;
        for (var i = from; i <= to; i++)
        {
            most = Math.Max(most, _size[i]);
        }

        return most;
    }

    /// <summary>The strongest peaks between two frequencies, the strongest first, each where a parabola through its lines is highest.</summary>
    public IEnumerable<(double Hertz, double Amps)> Peaks(double from, double to, int most) =>
        Enumerable.Range(1, Math.Max(0, _size.Length - 2))
            .Where(i => i * Step >= from && i * Step <= to && _size[i] >= _size[i - 1] && _size[i] > _size[i + 1])
            .OrderByDescending(i => _size[i]).Take(most)
            .Select(i =>
            {
                var (left, middle, right) = (_size[i - 1], _size[i], _size[i + 1]);
                var off = 0.5 * (left - right) / (left - (2 * middle) + right);
                return ((i + off) * Step, middle);
            });
}
