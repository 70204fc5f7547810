using System.Collections.Immutable;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>What one car (one hypothesis) would answer to one check.</summary>
public sealed record Forecast
{
    /// <summary>Nothing definite can be said: "none of these", chatter, ohms on a live circuit.</summary>
    public static Forecast Broad { get; } = new() { IsBroad = true };

    public bool IsBroad { get; init; }

    /// <summary>Mean of the displayed number, where there is one.</summary>
    public double Mean { get; init; }

    /// <summary>Variance of this reading by itself, without the display's step.</summary>
    public double OwnVariance { get; init; }

    /// <summary>
    /// Variance of this reading where the leads lie on something that floats and nothing couples into it: then it shows the leaks, or nothing.
    /// 0 where nothing floats.
    /// </summary>
    public double QuietVariance { get; init; }

    /// <summary>How often a floating wire is quiet: an assumption. Else it shows a ghost.</summary>
    public const double QuietShare = 0.5;

    /// <summary>A faint ghost as a share of a strong one, each as likely as the other: an assumption.</summary>
    public const double FaintShare = 0.1;

    /// <summary>
    /// The same where other floating wires of this car were read: what couples into one mostly couples into the next. The weight of
    /// the first guess, a quarter of a reading, is an assumption (a Pólya urn: the order of the readings does not matter).
    /// </summary>
    /// <param name="quiet">Those that were quiet.</param>
    /// <param name="read">All of them.</param>
    public static double QuietShareAfter(int quiet, int read)
    {
        const double First = 0.25;
        return ((First * QuietShare) + quiet) / (First + read);
    }

    /// <summary>How the number moves with each shared unknown, in units of one standard deviation of the unknown.</summary>
    public double[] Slopes { get; init; } = [];

    /// <summary>
    /// Of a clamp: how the number moves with its zero, in units of one standard deviation of that; below 0 where the amps run against the
    /// wire and are shown without their sign. 0 for every other instrument.
    /// </summary>
    public double Zero { get; init; }

    /// <summary>Probability that the display shows over-limit.</summary>
    public double OverLimit { get; init; }

    /// <summary>Probability of each answer group of the check; empty where only a number answers.</summary>
    public ImmutableArray<double> Groups { get; init; } = [];

    /// <summary>The same where the answer turns on the degree inside its cell; null where it doesn't. <see cref="Groups"/> is their mean.</summary>
    public GroupsByDegree? ByDegree { get; init; }

    /// <summary>Amps through the thing measured; below the rated current the reading is not a loaded one.</summary>
    public double LoadedAmps { get; init; }

    /// <summary>Spread of the number with all unknowns free.</summary>
    public double Spread
    {
        get
        {
            var variance = OwnVariance;
            foreach (var slope in Slopes)
            {
                variance += slope * slope;
            }

            return Math.Sqrt(variance);
        }
    }
}
