using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Readings;

public class ReadingTextDoubtTests
{
    private static readonly TextCatalog Catalog = new(Language.English, DiagnosisTexts.Source);
    private static readonly ExpectedAnswer Volts = ExpectedAnswer.Volts();
    private static readonly ExpectedAnswer Ohms = ExpectedAnswer.Ohms();

    [Theory]
    [InlineData("120 V", "reading.too-high-unless-prefix", 120.0, 0.12)]
    [InlineData("48", "reading.too-high-unless-prefix", 48.0, 0.048)]
    [InlineData("-12", "reading.leads-swapped", -12.0, null)]
    [InlineData("4.7 ohm", "reading.unit-does-not-fit", 4.7, null)]
    [InlineData("48 mA", "reading.unit-does-not-fit", 0.048, null)]
    [InlineData("45 %", "reading.unit-does-not-fit", 45.0, null)]
    [InlineData("12.4 VAC", "reading.alternating", 12.4, null)]
    [InlineData("1,200", "reading.thousands-or-decimal", 1.2, 1200.0)]
    [InlineData("12,345 mV", "reading.thousands-or-decimal", 0.012345, 12.345)]
    [InlineData("nothing", "reading.nothing-shown", 0.0, null)]
    public void An_unlikely_number_of_volts_is_asked_about(string text, string code, double meant, double? other)
    {
        var question = Assert.IsType<ReadingParse.Question>(ReadingText.Parse(text, Volts));
        Assert.Equal(code, question.Message.Code);
        var number = Assert.IsType<ReadingParse.Number>(question.Meant);
        Assert.Equal(Quantity.Volts, number.Quantity);
        Assert.Equal(meant, number.Value);
        Assert.Equal(other, question.Alternatives.OfType<ReadingParse.Number>().FirstOrDefault()?.Value);
    }

    [Theory]
    [InlineData("470m", "reading.milli-or-mega", 0.47, 470e6)]
    [InlineData("470 mΩ", "reading.milli-or-mega", 0.47, 470e6)]
    [InlineData("1,200", "reading.thousands-or-decimal", 1.2, 1200.0)]
    [InlineData("-5", "reading.too-low", -5.0, null)]
    [InlineData("500M", "reading.too-high-unless-prefix", 500e6, 500.0)]
    public void An_unlikely_number_of_ohms_is_asked_about(string text, string code, double meant, double? other)
    {
        var question = Assert.IsType<ReadingParse.Question>(ReadingText.Parse(text, Ohms));
        Assert.Equal(code, question.Message.Code);
        Assert.Equal(meant, Assert.IsType<ReadingParse.Number>(question.Meant).Value);
        Assert.Equal(other, question.Alternatives.OfType<ReadingParse.Number>().FirstOrDefault()?.Value);
    }

    [Fact]
    public void A_lone_one_with_a_point_on_ohms_may_be_over_limit()
    {
        var question = Assert.IsType<ReadingParse.Question>(ReadingText.Parse("1.", Ohms));
        Assert.Equal("reading.one-or-over-limit", question.Message.Code);
        Assert.Equal(new ReadingParse.Number(1, Quantity.Ohms, 1), question.Meant);
        Assert.Equal([new ReadingParse.OverLimit()], question.Alternatives);
    }

    [Fact]
    public void Over_limit_at_a_volts_check_is_asked_about()
    {
        var question = Assert.IsType<ReadingParse.Question>(ReadingText.Parse("OL", Volts));
        Assert.Equal("reading.over-limit-in-doubt", question.Message.Code);
        Assert.Equal(new ReadingParse.OverLimit(), question.Meant);
    }

    [Theory]
    [InlineData("120 V", "120 V is more than this check can give. Does the display show 120 mV?")]
    [InlineData("-12", "-12 V is below zero. Are the red and the black lead swapped?")]
    [InlineData("4.7 ohm", "You typed \"4.7 ohm\", but this check reads V. Is the reading 4.7 V? If not, set the meter to V and read again.")]
    [InlineData("1,200", "Is \"1,200\" 1.200 V, or 1200 V?")]
    [InlineData("yes", "\"yes\" does not answer this check. It takes: 12.4 V, 48 mV, not sure.")]
    [InlineData("12 W", "\"W\" is not a unit of this check. Leave the unit out, or type V with the prefix that the display shows.")]
    public void The_question_says_how_to_make_it_clear(string text, string said)
    {
        var message = ReadingText.Parse(text, Volts) switch
        {
            ReadingParse.Question question => question.Message,
            ReadingParse.Rejected rejected => rejected.Message,
            _ => null,
        };
        Assert.Equal(said, Catalog.Say(message!));
    }

    [Theory]
    [InlineData("12.4 mV", 0.0124, 12.4)]
    [InlineData("12.1 mV", 0.0121, 12.1)]
    public void Millivolts_where_only_volts_are_expected_are_asked_about(string text, double meant, double other)
    {
        var expected = Volts with { Predicted = [12.3, 6.1, 0.0] };
        var question = Assert.IsType<ReadingParse.Question>(ReadingText.Parse(text, expected));
        Assert.Equal("reading.unit-slip", question.Message.Code);
        Assert.Equal(meant, Assert.IsType<ReadingParse.Number>(question.Meant).Value);
        Assert.Equal([other], question.Alternatives.Select(value => ((ReadingParse.Number)value).Value));
    }

    [Fact]
    public void A_display_in_kilohms_typed_without_its_k_is_asked_about()
    {
        var question = Assert.IsType<ReadingParse.Question>(
            ReadingText.Parse("1.21", Ohms with { Predicted = [1200, 0.2] }));
        Assert.Equal("reading.unit-slip", question.Message.Code);
        Assert.Equal([1210.0], question.Alternatives.Select(value => ((ReadingParse.Number)value).Value));
    }

    [Theory]
    [InlineData("12.4 mV", 0.0124)]
    [InlineData("12.4", 12.4)]
    [InlineData("5.0", 5.0)]
    [InlineData("0.00", 0.0)]
    public void What_a_suspect_predicts_or_nothing_contradicts_is_taken(string text, double value)
    {
        var parse = ReadingText.Parse(text, Volts with { Predicted = [12.3, 0.012, 0.0] });
        Assert.Equal(value, Assert.IsType<ReadingParse.Number>(parse).Value);
    }

    [Fact]
    public void What_a_check_predicts_in_milliohms_is_taken()
    {
        var parse = ReadingText.Parse("470 mΩ", Ohms with { Predicted = [0.5] });
        Assert.Equal(0.47, Assert.IsType<ReadingParse.Number>(parse).Value);
    }

    [Fact]
    public void The_limits_of_the_check_are_the_callers()
    {
        var truck = Volts with { PlausibleHigh = 36 };
        Assert.IsType<ReadingParse.Number>(ReadingText.Parse("24.8", truck));
        Assert.IsType<ReadingParse.Question>(ReadingText.Parse("24.8", Volts));
        var jack = ExpectedAnswer.Amperes() with { PlausibleLow = -10, PlausibleHigh = 10 };
        var question = Assert.IsType<ReadingParse.Question>(ReadingText.Parse("55", jack));
        Assert.Equal(ImmutableArray.Create<ReadingValue>(new ReadingParse.Number(0.055, Quantity.Amperes, 0.001)), question.Alternatives);
    }

    // A clamp that was put on the other way round reads the same amps with a minus, and a charging current has one by right.
    [Theory]
    [InlineData("-5.2", new[] { 5.0, 0.0 }, -5.2)]
    [InlineData("-4 A", new[] { 5.0, 0.0 }, -4)]
    [InlineData("-0.1", new[] { 5.0, 0.0 }, -0.1)]
    [InlineData("-5", new double[0], -5)]
    public void The_sign_of_a_current_is_no_question(string text, double[] predicted, double amps) => Assert.Equal(
        amps, Assert.IsType<ReadingParse.Number>(ReadingText.Parse(text, ExpectedAnswer.Amperes() with { Predicted = [.. predicted] })).Value, 1e-9);

    [Fact]
    public void A_slip_of_the_unit_is_noticed_on_a_turned_clamp_too()
    {
        var question = Assert.IsType<ReadingParse.Question>(ReadingText.Parse("-5.2 mA", ExpectedAnswer.Amperes() with { Predicted = [5] }));

        Assert.Equal("reading.unit-slip", question.Message.Code);
        Assert.Equal(-5.2, Assert.IsType<ReadingParse.Number>(Assert.Single(question.Alternatives)).Value, 1e-9);
    }

    // Behind a 15 A fuse, where a seized motor was the most that was foreseen.
    [Theory]
    [InlineData("150", "150 A is far more than any of the suspects, or the healthy car, would draw here (about 15 A at most). Look at the decimal point, the range and, with a clamp, its zero.", 15.0)]
    [InlineData("-68", "-68 A is far more than any of the suspects, or the healthy car, would draw here (about 15 A at most). Look at the decimal point, the range and, with a clamp, its zero.", null)]
    public void Amps_far_beyond_what_any_car_draws_are_asked_about(string text, string said, double? tenth)
    {
        var question = Assert.IsType<ReadingParse.Question>(
            ReadingText.Parse(text, ExpectedAnswer.Amperes() with { Predicted = [0, 6, 15] }));

        Assert.Equal(said, Catalog.Say(question.Message));
        Assert.Equal(tenth, question.Alternatives.Select(a => (double?)((ReadingParse.Number)a).Value).FirstOrDefault());
    }

    [Theory]
    [InlineData("40", new[] { 0.0, 6, 15 })]
    [InlineData("-14.8", new[] { 0.0, 6, 15 })]
    [InlineData("0.9", new[] { 0.0 })]
    public void Amps_that_a_car_may_well_draw_are_taken(string text, double[] predicted) =>
        Assert.IsType<ReadingParse.Number>(ReadingText.Parse(text, ExpectedAnswer.Amperes() with { Predicted = [.. predicted] }));
}
