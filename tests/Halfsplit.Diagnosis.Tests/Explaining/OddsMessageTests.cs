using Xunit;

namespace Halfsplit.Diagnosis.Tests.Explaining;

/// <summary>No odds are shown as certainty, however sure the engine is.</summary>
public sealed class OddsMessageTests
{
    [Theory]
    [InlineData(1, "odds.over")]
    [InlineData(1 - 1e-9, "odds.over")]
    [InlineData(0.9901, "odds.over")]
    [InlineData(0.0099, "odds.under")]
    [InlineData(1e-9, "odds.under")]
    [InlineData(0, "odds.under")]
    public void Near_certainty_is_told_by_a_limit(double odds, string code) => Assert.Equal(code, OddsMessage.Of(odds).Code);

    [Theory]
    [InlineData(0.99, 99.0)]
    [InlineData(0.314, 31.0)]
    [InlineData(0.01, 1.0)]
    public void Anything_between_is_told_in_whole_per_cent(double odds, double percent)
    {
        var message = OddsMessage.Of(odds);

        Assert.Equal("odds.percent", message.Code);
        Assert.Equal(percent, message.Arguments[0]);
    }
}
