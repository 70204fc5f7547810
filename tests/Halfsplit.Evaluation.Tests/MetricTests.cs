using Halfsplit.Evaluation.Play;
using Halfsplit.Evaluation.Tables;
using Xunit;

namespace Halfsplit.Evaluation.Tests;

public sealed class MetricTests
{
    [Fact]
    public void Odds_that_come_true_as_often_as_stated_have_no_error()
    {
        var stated = Enumerable.Range(0, 100).Select(i => new Stated(0.75, i < 75)).ToList();
        var calibration = Calibration.Of(stated);

        Assert.Equal(0, calibration.ExpectedError, 12);
        Assert.Equal((0.75 * 0.0625) + (0.25 * 0.5625), calibration.Brier, 12);
        Assert.Equal(100, Assert.Single(calibration.Bins).Count);
    }

    [Fact]
    public void Certainty_that_is_wrong_half_the_time_has_an_error_of_half() =>
        Assert.Equal(0.5, Calibration.Of([new Stated(1, true), new Stated(1, false)]).ExpectedError, 12);

    [Fact]
    public void Errors_of_the_bins_are_weighed_by_their_counts()
    {
        var stated = new[] { new Stated(0.55, true), new Stated(0.15, false), new Stated(0.15, false), new Stated(0.15, false) };

        Assert.Equal((0.45 + (3 * 0.15)) / 4, Calibration.Of(stated).ExpectedError, 12);
    }

    [Fact]
    public void Intervals_are_those_of_the_textbook()
    {
        var mean = Interval.Of([2, 4, 4, 4, 5, 5, 7, 9]);
        Assert.Equal(5, mean.Mean, 12);
        Assert.Equal(1.96 * Math.Sqrt(32.0 / 7 / 8), mean.Half, 12);

        var share = Interval.Share(50, 100);
        Assert.Equal(50, share.Mean, 12);
        // Wilson's interval of 50 in 100 runs from 40.4 % to 59.6 %.
        Assert.InRange(share.Half, 9.5, 9.7);
        Assert.True(Interval.Share(0, 100).Half > 0);
    }

    [Fact]
    public void A_ratio_of_paired_values_that_are_in_proportion_is_exact()
    {
        var ratio = Interval.Ratio([2, 4, 6], [1, 2, 3]);

        Assert.Equal(2, ratio.Mean, 12);
        Assert.Equal(0, ratio.Half, 12);
    }

    [Fact]
    public void Giving_up_is_no_cure()
    {
        var cured = Result(proven: true);
        var given = Result(proven: false);

        Assert.Equal(60, PlayerSummary.MinutesOf(cured), 9);
        Assert.Equal(60 + 225, PlayerSummary.MinutesOf(given), 9);
        // An hour at 40, parts at 30, two wrong repairs at 20; the workshop's 150.
        Assert.Equal(110, PlayerSummary.MoneyOf(cured), 9);
        Assert.Equal(260, PlayerSummary.MoneyOf(given), 9);
    }

    [Fact]
    public void A_difference_counts_the_cars_that_both_have_played_of_the_same_variant()
    {
        var one = new PlayerSummary("one", [Result(true, 1, 10), Result(true, 2, 20), Result(true, 3, 99), Result(true, 1, 50) with { Variant = "flat-weights" }]);
        var other = new PlayerSummary("other", [Result(true, 1, 13), Result(true, 2, 25), Result(true, 4, 1), Result(true, 1, 50) with { Variant = "no-slips" }]);

        var more = one.MinutesMore(other);

        Assert.Equal((2, -4.0), (more.Count, more.Mean));
        Assert.Equal(1.96, more.Half, 9);
        Assert.Equal(-4 * 40 / 60.0, one.MoneyMore(other).Mean, 9);
        Assert.Equal([1, 2], one.On(other).Results.Select(r => r.Car));
    }

    [Fact]
    public void Differences_are_a_row_for_each_other_player()
    {
        var page = new StringWriter();

        new MarkdownTables(page).PrintDifferences(
            [Result(true, 1, 10), Result(true, 2, 20)], [Result(true, 1, 13) with { Player = "greedy" }, Result(true, 3, 9) with { Player = "clairvoyant" }]);

        Assert.Contains("| greedy | 1 | -3.00 ± 0.00 | -2.00 ± 0.00 | – | – |", page.ToString(), StringComparison.Ordinal);
        Assert.Contains("| clairvoyant | 0 | – | – | – | – |", page.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Odds_stand_with_the_player_who_claimed_them()
    {
        var page = new StringWriter();
        var engine = Result(true) with { Player = "halfsplit", Claims = [new Stated(0.9, true), new Stated(0.9, false)], Suspects = [new Stated(0.5, true)] };

        new MarkdownTables(page).Print([engine, Result(true) with { Player = "fixed-order" }, engine with { Variant = "no-slips", Minutes = 120 }]);
        var rows = page.ToString().Split('\n').Select(l => l.TrimEnd()).ToList();

        Assert.EndsWith("| 40.00 | 0.4100 | 50.00 | 0.2500 |", rows.Find(r => r.StartsWith("| halfsplit | 1 | 60.0", StringComparison.Ordinal))!, StringComparison.Ordinal);
        Assert.EndsWith("| – | – | – | – |", rows.Find(r => r.StartsWith("| fixed-order | 1 |", StringComparison.Ordinal))!, StringComparison.Ordinal);
        // The overview: 90 % of minutes, money with its interval, 90 % of money; calibration error and Brier score of repairs.
        var noSlips = rows.Find(r => r.StartsWith("| no-slips |", StringComparison.Ordinal))!;
        Assert.Contains("| 120.0 | 150.0 ± 0.0 | 150.0 |", noSlips, StringComparison.Ordinal);
        Assert.EndsWith("| 40.00 | 0.4100 |", noSlips, StringComparison.Ordinal);
    }

    private static CarResult Result(bool proven, int car = 1, double minutes = 60) => new(
        "a", "base", car, "p", "dark", "X:open", "wire open", false, minutes, 30, 4, 2, 1, false, null, null, null, null, proven, false, 0, [], [], []);
}
