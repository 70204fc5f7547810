namespace Halfsplit.Diagnosis.Evidence;

/// <summary>The normal distribution's cumulative function.</summary>
internal static class Normal
{
    /// <summary>
    /// Probability that a standard normal variable is below z; absolute error under 7.5e-8
    /// (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.17).
    /// </summary>
    public static double Below(double z)
    {
        if (z < 0)
        {
            return 1 - Below(-z);
        }

        if (z > 38)
        {
            return 1;
        }

        var t = 1 / (1 + (0.2316419 * z));
        var tail = t * (0.319381530 + (t * (-0.356563782 + (t * (1.781477937 + (t * (-1.821255978 + (t * 1.330274429))))))));
        return 1 - (tail * Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI));
    }

    /// <summary>A smooth step from 0 to 1 around zero.</summary>
    public static double Step(double value) => 1 / (1 + Math.Exp(-value));
}
