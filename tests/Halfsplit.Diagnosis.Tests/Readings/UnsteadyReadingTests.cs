using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Readings;

/// <summary>A number that jumps while the harness is moved.</summary>
public sealed class UnsteadyReadingTests
{
    [Theory]
    [InlineData("11.9 jumps", 11.9)]
    [InlineData("11,9 V unsteady", 11.9)]
    [InlineData("48 mV, jumps about", 0.048)]
    public void A_number_may_be_said_to_jump(string typed, double volts)
    {
        var read = ReadingText.Parse(typed, ExpectedAnswer.Volts());
        var number = Assert.IsType<ReadingParse.Number>(read is ReadingParse.Question asked ? asked.Meant : read);

        Assert.True(number.Unsteady);
        Assert.Equal(volts, number.Value, 9);
        Assert.Equal(number, ReadingText.Parse(number.ToString(), ExpectedAnswer.Volts()));
    }

    [Fact]
    public void A_steady_number_is_not_the_same_reading()
    {
        var steady = Assert.IsType<ReadingParse.Number>(ReadingText.Parse("11.9 V", ExpectedAnswer.Volts()));

        Assert.False(steady.Unsteady);
        Assert.NotEqual(steady, steady with { Unsteady = true });
    }
}
