using Halfsplit.Diagnosis.Planning;
using Halfsplit.Evaluation.Play;

namespace Halfsplit.Evaluation.Tables;

/// <summary>All cars of one player.</summary>
public sealed class PlayerSummary
{
    private readonly List<CarResult> _results;

    public PlayerSummary(string player, IEnumerable<CarResult> results)
    {
        Player = player;
        _results = [.. results.OrderBy(r => r.Sheet, StringComparer.Ordinal).ThenBy(r => r.Car)];
    }

    public string Player { get; }

    public int Cars => _results.Count;

    public IReadOnlyList<CarResult> Results => _results;

    public Interval Minutes => Interval.Of(MinutesByCar);

    public double Minutes90 => Percentile(MinutesByCar, 0.9);

    public Interval Money => Interval.Of(MoneyByCar);

    public double Money90 => Percentile(MoneyByCar, 0.9);

    public Interval FirstRight => Share(r => r.FirstRight);

    /// <summary>First repair right, or the group named holds the fault: for players that name one.</summary>
    public Interval FirstOrGroup => Share(r => r.FirstRight || r.InGroup == true);

    public Interval Group => Interval.Of([.. _results.Where(r => r.Group is not null).Select(r => (double)r.Group!.Value)]);

    /// <summary>The same with the wider group.</summary>
    public Interval FirstOrWideGroup => Share(r => r.FirstRight || r.InWideGroup == true);

    public Interval WideGroup => Interval.Of([.. _results.Where(r => r.WideGroup is not null).Select(r => (double)r.WideGroup!.Value)]);

    public Interval WrongParts => Interval.Of([.. _results.Select(r => (double)r.WrongParts)]);

    public Interval WrongRepairs => Interval.Of([.. _results.Select(r => (double)r.WrongRepairs)]);

    public Interval Comebacks => Share(r => r.Comeback);

    public Interval HandedOver => Share(r => r.HandedOver);

    public Calibration Claims => Calibration.Of([.. _results.SelectMany(r => r.Claims)]);

    public Calibration Suspects => Calibration.Of([.. _results.SelectMany(r => r.Suspects)]);

    /// <summary>
    /// Minutes to the cure. A job handed over is not cured: what the workshop asks counts as minutes at the person's own
    /// price of an hour, or giving up would pay.
    /// </summary>
    public IReadOnlyList<double> MinutesByCar => [.. _results.Select(MinutesOf)];

    /// <summary>Parts, minutes at the price of an hour, wrong repairs, handing over.</summary>
    public IReadOnlyList<double> MoneyByCar => [.. _results.Select(MoneyOf)];

    public static double MinutesOf(CarResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Minutes + (result.HandedOver ? Economy.Default.HandOver * 60 / Economy.Default.HourValue : 0);
    }

    public static double MoneyOf(CarResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Parts + Economy.Default.Worth(result.Minutes) + (result.WrongRepairs * Economy.Default.WrongRepair)
            + (result.HandedOver ? Economy.Default.HandOver : 0);
    }

    /// <summary>This player's minutes over another's, on the cars both have played.</summary>
    public Interval MinutesOver(PlayerSummary other) => Over(other, MinutesOf);

    /// <summary>This player's money over another's, on the cars both have played.</summary>
    public Interval MoneyOver(PlayerSummary other) => Over(other, MoneyOf);

    /// <summary>How many minutes more this player took for a car than another, on the cars both have played.</summary>
    public Interval MinutesMore(PlayerSummary other) => More(other, MinutesOf);

    /// <summary>How much more money this player took for a car than another, on the cars both have played.</summary>
    public Interval MoneyMore(PlayerSummary other) => More(other, MoneyOf);

    /// <summary>This player on the cars that another has played too.</summary>
    public PlayerSummary On(PlayerSummary other) => new(Player, Pairs(other).Select(p => p.Own));

    private Interval Over(PlayerSummary other, Func<CarResult, double> value)
    {
        var pairs = Pairs(other);
        return Interval.Ratio([.. pairs.Select(p => value(p.Own))], [.. pairs.Select(p => value(p.Theirs))]);
    }

    private Interval More(PlayerSummary other, Func<CarResult, double> value) =>
        Interval.Of([.. Pairs(other).Select(p => value(p.Own) - value(p.Theirs))]);

    private List<(CarResult Own, CarResult Theirs)> Pairs(PlayerSummary other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var theirs = other._results.ToDictionary(r => (r.Sheet, r.Variant, r.Car));
        return [.. _results
            .Where(r => theirs.ContainsKey((r.Sheet, r.Variant, r.Car)))
            .Select(r => (r, theirs[(r.Sheet, r.Variant, r.Car)]))];
    }

    private Interval Share(Func<CarResult, bool> hit) => Interval.Share(_results.Count(hit), _results.Count);

    private static double Percentile(IReadOnlyList<double> values, double share)
    {
        var sorted = values.Order().ToList();
        return sorted.Count == 0 ? 0 : sorted[Math.Min(sorted.Count - 1, (int)Math.Ceiling(share * sorted.Count) - 1)];
    }
}
