using Halfsplit.Bench.Pins;
using Xunit;

namespace Halfsplit.Bench.Tests.Pins;

/// <summary>Which pin is which, asked on the bench.</summary>
public sealed class PinAidTests
{
    private static readonly string[] Fitting =
        ["ohms 1 3 = OL", "ohms 2 4 = 88", "power 2 4 = clicks", "power 4 2 = clicks", "ohms 1 3 with 2 4 = 0.3"];

    private static IEnumerable<string> Doubted(params string[] readings) =>
        Said.Good(PinAid.Relay("1,2,3,4", readings)).Judgements.Where(j => j.Code == "bench.pins-misfit").Select(Said.Text);

    [Fact]
    public void A_measurement_that_fits_no_likely_assignment_is_named() =>
        Assert.Equal(["ohms 1 2 does not fit the likeliest assignment: measure it again."], Doubted([.. Fitting, "ohms 1 2 = 0.2"]));

    [Fact]
    public void Nothing_is_doubted_where_all_fit() => Assert.Empty(Doubted(Fitting));
}
