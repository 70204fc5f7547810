using System.Collections.Immutable;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>What the planner needs of a forecast: enough to see which cars a check parts.</summary>
/// <param name="Mean">The number shown.</param>
/// <param name="Spread">One standard deviation.</param>
/// <param name="OverLimit">Probability of over-limit.</param>
/// <param name="Groups">Probability of each answer group; default where a number answers.</param>
/// <param name="IsBroad">Nothing definite can be said.</param>
/// <param name="Quiet">One standard deviation about zero of a floating wire that shows no ghost; 0 where nothing floats.</param>
/// <param name="QuietShare">How likely it shows none.</param>
internal readonly record struct Outlook(
    double Mean, double Spread, double OverLimit, ImmutableArray<double> Groups, bool IsBroad, double Quiet = 0,
    double QuietShare = Forecast.QuietShare)
{
    public static Outlook Broad { get; } = new(0, 1, 0, default, true);

    public static Outlook Of(Forecast forecast) => forecast.IsBroad
        ? Broad
        : new Outlook(forecast.Mean, forecast.Spread, forecast.OverLimit, forecast.Groups, false, Math.Sqrt(forecast.QuietVariance));
}
