using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Planning;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>
/// How well one answer to a check tells two cars apart: the distance between the distributions of their answers, 0 where
/// they answer alike, 1 where no answer could come from both (total variation). Half of it beyond a half is the chance to
/// guess the right one of two.
/// </summary>
internal static class Distinction
{
    /// <summary>From here on a check tells two cars apart: the right one is named in at least 85 of 100 cases.</summary>
    public const double Apart = 0.7;

    /// <summary>Of two full forecasts, the battery's posts having been read.</summary>
    public static double Between(Check check, Forecast a, Forecast b)
    {
        if (a.IsBroad || b.IsBroad)
        {
            return 0;
        }

        var words = Words(check, a.Groups.AsSpan(), b.Groups.AsSpan());
        return check.TakesNumber && check.Answers.Length == 0
            ? Numbers(
                (a.Mean, ReadingTolerance.Spread(a, withSeverity: true), a.OverLimit),
                (b.Mean, ReadingTolerance.Spread(b, withSeverity: true), b.OverLimit))
            : words;
    }

    /// <summary>Of two quick looks.</summary>
    public static double Between(Check check, in Outlook a, in Outlook b)
    {
        if (a.IsBroad || b.IsBroad)
        {
            return 0;
        }

        return check.Answers.Length > 0
            ? a.Groups.IsDefault || b.Groups.IsDefault ? 0 : Words(check, a.Groups.AsSpan(), b.Groups.AsSpan())
            : Numbers((a.Mean, a.Spread, a.OverLimit), (b.Mean, b.Spread, b.OverLimit));
    }

    private static double Words(Check check, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        if (a.Length != check.Answers.Length || b.Length != a.Length)
        {
            return 0;
        }

        var apart = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            apart += 0.5 * Math.Abs(a[i] - b[i]);
        }

        return apart;
    }

    /// <summary>Two bells cut at the best place between them, and over-limit as an answer of its own.</summary>
    private static double Numbers(
        (double Mean, double Spread, double OverLimit) a, (double Mean, double Spread, double OverLimit) b)
    {
        var (spreadA, spreadB) = (Math.Max(a.Spread, 1e-9), Math.Max(b.Spread, 1e-9));
        var cut = ((a.Mean * spreadB) + (b.Mean * spreadA)) / (spreadA + spreadB);
        var bells = Math.Abs(Normal.Below((cut - a.Mean) / spreadA) - Normal.Below((cut - b.Mean) / spreadB));
        var over = Math.Abs(a.OverLimit - b.OverLimit);
        return over + (bells * (1 - Math.Max(a.OverLimit, b.OverLimit)));
    }
}
