using Halfsplit.Diagnosis.Evidence;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>How far two readings of the same thing may lie apart without saying that the cars differ.</summary>
internal static class ReadingTolerance
{
    /// <summary>
    /// One standard deviation of a number once the battery's posts have been read: the meter, the reading itself, and what
    /// differs from part to part. The first two shared unknowns are the battery's volts.
    /// </summary>
    public static double Spread(Forecast forecast, bool withSeverity)
    {
        var variance = forecast.OwnVariance;
        var last = forecast.Slopes.Length - (withSeverity ? 0 : 1);
        for (var i = 2; i < last; i++)
        {
            variance += forecast.Slopes[i] * forecast.Slopes[i];
        }

        return Math.Sqrt(variance);
    }
}
