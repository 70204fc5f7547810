namespace Halfsplit.Bench.Motors;

/// <summary>Parts the start of a motor from the time when it turns evenly.</summary>
internal static class MotorStart
{
    private static readonly double BlockSeconds = BenchDefaults.Table["motor.even-block"];

    /// <summary>A block belongs to the even part where its mean lies this near to that of the last half.</summary>
    private static readonly double Even = BenchDefaults.Table["motor.even-share"];

    /// <summary>The first sample of the even part; the middle of the trace at the latest.</summary>
    public static int RunningFrom(CurrentTrace trace)
    {
        var amps = trace.Amps.AsSpan();
        var block = Math.Max(1, (int)(BlockSeconds * trace.SamplesPerSecond));
        var mean = Mean(amps[(amps.Length / 2)..]);
        var from = 0;
        for (var at = 0; at + block <= amps.Length / 2; at += block)
        {
            if (Math.Abs(Mean(amps.Slice(at, block)) - mean) > Even * Math.Abs(mean))
            {
                from = at + block;
            }
        }

        return from;
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }
}
