namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// What is read when a reading goes wrong: the leads make no contact, a wrong pin is probed, a unit or the decimal point is
/// mistaken, the leads are swapped. The shares are assumptions.
/// </summary>
internal static class Slips
{
    /// <summary>How often the same slip happens again when the reading is taken again: the same wrong pin, mostly.</summary>
    public const double AgainShare = 0.3;

    /// <summary>The same for one that has been repeated already.</summary>
    public const double OftenShare = 0.9;

    private const double WrongPin = 0.5;
    private const double NoContact = 0.25;
    private const double UnitEitherWay = 0.075;
    private const double PointEitherWay = 0.025;
    private const double Swapped = 0.05;

    /// <summary>Spreads from which a number predicted is clear of nothing.</summary>
    private const double ClearOfNothing = 3;

    /// <summary>A display with nothing at its leads stays within this, in SI units.</summary>
    private const double NothingSpread = 0.006;

    /// <summary>A pin that is not fed shows no more than this, in SI units.</summary>
    private const double DeadSpread = 0.03;

    /// <summary>Log probability of this count, given that the reading is a slip.</summary>
    public static double Log(NumberRead read, Forecast forecast)
    {
        var spread = forecast.Spread + read.Step;
        // Ten times nothing is nothing.
        var point = Math.Abs(forecast.Mean) > ClearOfNothing * forecast.Spread ? PointEitherWay : 0;
        var chance = (0.7 * WrongPin * Math.Exp(read.LogBroad))
            // A wrong pin is mostly a dead one; one that is fed is in the broad part.
            + (0.3 * WrongPin * read.Step * Density(read.Value, 0, DeadSpread + read.Step))
            + (read.Step * (((NoContact + (2 * (PointEitherWay - point))) * Density(read.Value, 0, NothingSpread + read.Step))
                + (UnitEitherWay * Times(1000))
                + (UnitEitherWay * Times(0.001))
                + (point * Times(10))
                + (point * Times(0.1))
                + (Swapped * Density(read.Value, -forecast.Mean, spread))));
        return Math.Log(Math.Clamp(chance, 1e-300, 1));

        double Times(double factor) => Density(read.Value, factor * forecast.Mean, (factor * forecast.Spread) + (Math.Max(1, factor) * read.Step));
    }

    /// <summary>
    /// Log probability that the slip happens again and shows this, given what it showed before. It varies as much as a right pin's
    /// readings are taken to, or else sameness alone would speak for the wrong one.
    /// </summary>
    /// <param name="share">How often it happens again: <see cref="AgainShare"/> at first, <see cref="OftenShare"/> from then on.</param>
    public static double LogAgain(NumberRead before, NumberRead now, double share = AgainShare)
    {
        var spread = Math.Sqrt((before.Spread * before.Spread) + (now.Step * now.Step / 12));
        return Math.Log(Math.Max(1e-300, share * Math.Min(1, now.Step * Density(now.Value, before.Value, spread))));
    }

    private static double Density(double value, double mean, double spread)
    {
        var z = (value - mean) / spread;
        return Math.Exp(-0.5 * z * z) / (spread * Math.Sqrt(2 * Math.PI));
    }
}
