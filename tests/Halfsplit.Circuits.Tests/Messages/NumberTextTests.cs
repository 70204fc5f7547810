using System.Globalization;
using CsCheck;
using Halfsplit.Circuits.Messages;
using Xunit;

namespace Halfsplit.Circuits.Tests.Messages;

public sealed class NumberTextTests
{
    private static readonly string[] Formats = ["0", "0.0", "0.##", "G3", "F2", ""];

    [Theory]
    [InlineData(-0.04, "0.0", "0.0")]
    [InlineData(-0.0, "0.##", "0")]
    [InlineData(-0.0, "", "0")]
    [InlineData(-0.06, "0.0", "-0.1")]
    [InlineData(-12.5, "0.0", "-12.5")]
    [InlineData(double.NegativeInfinity, "0.0", "-Infinity")]
    public void What_rounds_to_zero_has_no_sign(double value, string format, string text)
    {
        Assert.Equal(text, NumberText.Of(value, format, Language.English.Formats));
        Assert.Equal(text, new Figure(value, format).ToString(null, Language.English.Formats));
        Assert.Equal(text.Replace('.', ','), NumberText.Of(value, format, Language.German.Formats));
    }

    [Fact]
    public void Every_other_number_is_written_as_it_is() => Gen.Select(Gen.Double[-1000, 1000], Gen.Int[0, 5].Select(i => Formats[i])).Sample((value, format) =>
    {
        var (text, plain) = (NumberText.Of(value, format, CultureInfo.InvariantCulture), value.ToString(format, CultureInfo.InvariantCulture));
        Assert.Equal(double.Parse(plain, CultureInfo.InvariantCulture), double.Parse(text, CultureInfo.InvariantCulture));
        Assert.True(text == plain || text == plain[1..]);
    });
}
