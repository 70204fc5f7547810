using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Data;

/// <summary>
/// How fuses resist and melt (<c>data/fuses.csv</c>, <c>data/fuse-melting.csv</c>; each row names its source).
/// </summary>
public static class FuseTable
{
    private sealed record Rated(double Amps, string? Colour, double Ohms);

    private sealed record Melting(double Percent, double Minimum, double Maximum);

    private static readonly ImmutableDictionary<FuseType, ImmutableArray<Rated>> ByRating =
        DataFile.Read("fuses.csv")
            .GroupBy(r => TypeOf(r.Text("type")))
            .ToImmutableDictionary(
                g => g.Key,
                g => g.Select(r => new Rated(
                        r.Number("rating_amps"),
                        r.Has("colour") ? r.Text("colour") : null,
                        r.Number("cold_milliohm") * 1e-3))
                    .ToImmutableArray());

    private static readonly ImmutableDictionary<FuseType, ImmutableArray<Melting>> ByPercent =
        DataFile.Read("fuse-melting.csv")
            .GroupBy(r => TypeOf(r.Text("type")))
            .ToImmutableDictionary(
                g => g.Key,
                g => g.Select(r => new Melting(
                        r.Number("percent"), r.Number("minimum_seconds"), r.Number("maximum_seconds")))
                    .ToImmutableArray());

    /// <summary>The ratings one can buy, amps, rising.</summary>
    public static ImmutableArray<double> Ratings(FuseType type) => [.. ByRating[type].Select(r => r.Amps)];

    /// <summary>True if fuses of this type and rating are sold.</summary>
    public static bool IsStandard(FuseType type, double ratingAmps) =>
        ByRating[type].Any(r => r.Amps == ratingAmps);

    /// <summary>The body's colour by ISO 8820-3, in English; null for a rating without one.</summary>
    public static string? Colour(FuseType type, double ratingAmps) =>
        ByRating[type].FirstOrDefault(r => r.Amps == ratingAmps)?.Colour;

    /// <summary>
    /// Typical ohms of a cold fuse. Interpolated between ratings in the logarithms of both; beyond the table the
    /// drop at rated current is held.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The rating is not above 0.</exception>
    public static double ColdOhms(FuseType type, double ratingAmps)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratingAmps);
        var rows = ByRating[type];
        if (ratingAmps <= rows[0].Amps)
        {
            return rows[0].Ohms * rows[0].Amps / ratingAmps;
        }

        for (var i = 1; i < rows.Length; i++)
        {
            if (ratingAmps <= rows[i].Amps)
            {
                return LogLog(ratingAmps, rows[i - 1].Amps, rows[i - 1].Ohms, rows[i].Amps, rows[i].Ohms);
            }
        }

        return rows[^1].Ohms * rows[^1].Amps / ratingAmps;
    }

    /// <summary>
    /// Seconds until the fuse has melted at a steady current, quickest and slowest specimen. Interpolated between
    /// the published points in the logarithms of both; above the last point the heat of the melt (I²t) is held.
    /// </summary>
    /// <param name="percentOfRating">Current in per cent of the rating.</param>
    /// <returns>Seconds; positive infinity for both below 110 %, where it never melts.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The current is negative or not a number.</exception>
    public static ValueRange MeltSeconds(FuseType type, double percentOfRating)
    {
        if (!(percentOfRating >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(percentOfRating));
        }

        var rows = ByPercent[type];
        if (percentOfRating < rows[0].Percent)
        {
            return new ValueRange(double.PositiveInfinity, double.PositiveInfinity);
        }

        for (var i = 1; i < rows.Length; i++)
        {
            var (low, high) = (rows[i - 1], rows[i]);
            if (percentOfRating <= high.Percent)
            {
                return new ValueRange(
                    LogLog(percentOfRating, low.Percent, low.Minimum, high.Percent, high.Minimum),
                    LogLog(percentOfRating, low.Percent, low.Maximum, high.Percent, high.Maximum));
            }
        }

        var last = rows[^1];
        var heat = last.Percent / percentOfRating * (last.Percent / percentOfRating);
        return new ValueRange(last.Minimum * heat, last.Maximum * heat);
    }

    private static double LogLog(double x, double x0, double y0, double x1, double y1)
    {
        // The published points themselves come back exactly.
        if (x == x0 || x == x1)
        {
            return x == x0 ? y0 : y1;
        }

        var share = Math.Log(x / x0) / Math.Log(x1 / x0);
        return y0 * Math.Pow(y1 / y0, share);
    }

    private static FuseType TypeOf(string word) => word switch
    {
        "mini" => FuseType.BladeMini,
        "standard" => FuseType.BladeStandard,
        "maxi" => FuseType.BladeMaxi,
        "link" => FuseType.Link,
        _ => throw new InvalidOperationException($"The fuse tables know no type {word}."),
    };
}
