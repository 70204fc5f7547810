using System.Globalization;
using Halfsplit.Drawing.Small;
using Xunit;

namespace Halfsplit.Drawing.Tests;

public sealed class RoundAxisTests
{
    [Theory]
    [InlineData(new[] { 0.0, 12.6 }, 0, 15)]
    [InlineData(new[] { -0.3, 12.6 }, -5, 15)]
    [InlineData(new[] { 0.01 }, 0, 0.01)]
    [InlineData(new[] { 0.0 }, 0, 1)]
    public void An_axis_has_round_ends_around_all_values(double[] values, double low, double high)
    {
        var axis = RoundAxis.Of(values, 5, mayUseDecades: false);

        Assert.Equal(0, axis.At(low), 9);
        Assert.Equal(1, axis.At(high), 9);
        Assert.InRange(axis.Ticks.Length, 2, 7);
        Assert.Equal(0, axis.At(axis.Ticks[0]));
        Assert.Equal(1, axis.At(axis.Ticks[^1]));
    }

    [Fact]
    public void Ohms_from_milliohms_to_megohms_go_in_decades()
    {
        var axis = RoundAxis.Of([0.2, 2e6], 5, mayUseDecades: true);

        Assert.Equal(["0.1", "1", "10", "100", "1k", "10k", "100k", "1M", "10M"], axis.Ticks.Select(t => axis.Label(t, CultureInfo.InvariantCulture)));
        Assert.Equal(0.5, axis.At(1000), 9);
        Assert.Equal("2M", axis.Text(2e6, CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Order_on_the_axis_is_order_of_the_values()
    {
        var axis = RoundAxis.Of([-1, 3, 14], 5, mayUseDecades: false);
        var places = new[] { -1, 0, 0.5, 3, 12, 14.0 }.Select(axis.At).ToArray();

        Assert.Equal(places.Order(), places);
        Assert.Equal(places.Length, places.Distinct().Count());
    }
}
