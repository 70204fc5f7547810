using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Tests.Model;

public sealed class WireGaugeTests
{
    [Theory]
    [InlineData(14, "14")]
    [InlineData(0, "1/0")]
    [InlineData(-1, "2/0")]
    [InlineData(-3, "4/0")]
    public void An_awg_number_is_written_as_wire_is_sold(int awg, string text) => Assert.Equal(text, WireGauge.OfAwg(awg).AwgText);

    [Fact]
    public void Square_millimetres_have_no_awg_number() => Assert.Null(new WireGauge(2.5).AwgText);
}
