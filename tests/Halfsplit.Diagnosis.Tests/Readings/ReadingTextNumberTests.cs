using System.Globalization;
using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Readings;

public class ReadingTextNumberTests
{
    private static readonly ExpectedAnswer Volts = ExpectedAnswer.Volts();
    private static readonly ExpectedAnswer Ohms = ExpectedAnswer.Ohms(AnswerWord.Beeps, AnswerWord.NoBeep);
    private static readonly ExpectedAnswer Amperes = ExpectedAnswer.Amperes();

    [Theory]
    [InlineData("12.4", 12.4, 0.1)]
    [InlineData("12,4 V", 12.4, 0.1)]
    [InlineData("12.40v", 12.4, 0.01)]
    [InlineData("  12.4   volts ", 12.4, 0.1)]
    [InlineData("12.4\u00a0V", 12.4, 0.1)]
    [InlineData("12.4\u202fVDC", 12.4, 0.1)]
    [InlineData("12.4 V DC", 12.4, 0.1)]
    [InlineData("48mV", 0.048, 0.001)]
    [InlineData("48 MV", 0.048, 0.001)]
    [InlineData("48m", 0.048, 0.001)]
    [InlineData("48 millivolts", 0.048, 0.001)]
    [InlineData("350 µV", 0.00035, 1e-6)]
    [InlineData("350 \u03bcV", 0.00035, 1e-6)]
    [InlineData("-0.3", -0.3, 0.1)]
    [InlineData("\u22120,3", -0.3, 0.1)]
    [InlineData("- 0.3", -0.3, 0.1)]
    [InlineData("+ 12", 12.0, 1.0)]
    [InlineData(".3", 0.3, 0.1)]
    [InlineData(",3", 0.3, 0.1)]
    [InlineData("12.", 12.0, 1.0)]
    [InlineData("12V4", 12.4, 0.1)]
    [InlineData("0", 0.0, 1.0)]
    [InlineData("0.00", 0.0, 0.01)]
    [InlineData("1.2e-05", 1.2e-5, 1e-6)]
    [InlineData("1,200.5 mV", 1.2005, 1e-4)]
    [InlineData("1.200,5 mV", 1.2005, 1e-4)]
    [InlineData("0,048", 0.048, 0.001)]
    [InlineData("１２．４", 12.4, 0.1)]
    [InlineData("١٢٫٤", 12.4, 0.1)]
    public void Volts_are_read(string text, double value, double resolution) =>
        Expect(text, Volts, Quantity.Volts, value, resolution);

    [Theory]
    [InlineData(".3 ohm", 0.3, 0.1)]
    [InlineData("0,3 \u2126", 0.3, 0.1)]
    [InlineData("0,3 \u03a9", 0.3, 0.1)]
    [InlineData("1k2", 1200.0, 100.0)]
    [InlineData("1K2", 1200.0, 100.0)]
    [InlineData("1k2 ohm", 1200.0, 100.0)]
    [InlineData("4R7", 4.7, 0.1)]
    [InlineData("4r7 ohms", 4.7, 0.1)]
    [InlineData("R47", 0.47, 0.01)]
    [InlineData("1.2k", 1200.0, 100.0)]
    [InlineData("1.2 k\u03a9", 1200.0, 100.0)]
    [InlineData("1,2 kiloohm", 1200.0, 100.0)]
    [InlineData("1.2 kilohms", 1200.0, 100.0)]
    [InlineData("1M", 1e6, 1e6)]
    [InlineData("2M2", 2.2e6, 1e5)]
    [InlineData("2.2 megohm", 2.2e6, 1e5)]
    [InlineData("1'200", 1200.0, 1.0)]
    [InlineData("1\u2019200 ohm", 1200.0, 1.0)]
    [InlineData("1 200 ohm", 1200.0, 1.0)]
    [InlineData("1,234,567", 1234567.0, 1.0)]
    [InlineData("300 milliohm", 0.3, 0.001)]
    public void Ohms_are_read(string text, double value, double resolution) =>
        Expect(text, Ohms, Quantity.Ohms, value, resolution);

    [Theory]
    [InlineData("2 A", 2.0, 1.0)]
    [InlineData("150 mA", 0.15, 0.001)]
    [InlineData("150 MA", 0.15, 0.001)]
    [InlineData("5.5amps", 5.5, 0.1)]
    [InlineData("-12.1 a", -12.1, 0.1)]
    [InlineData("180", 180.0, 1.0)]
    public void Amperes_are_read(string text, double value, double resolution) =>
        Expect(text, Amperes, Quantity.Amperes, value, resolution);

    [Theory]
    [InlineData("45 %", 0.45, 0.01)]
    [InlineData("45", 0.45, 0.01)]
    [InlineData("7.5 percent", 0.075, 0.001)]
    public void Duty_is_read_in_percent(string text, double value, double resolution) =>
        Expect(text, ExpectedAnswer.Duty(), Quantity.Duty, value, resolution);

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void The_culture_of_the_machine_changes_nothing(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Expect("12.4 V", Volts, Quantity.Volts, 12.4, 0.1);
            Expect("12,4 V", Volts, Quantity.Volts, 12.4, 0.1);
            Expect("48 MILLIVOLTS", Volts, Quantity.Volts, 0.048, 0.001);
            Assert.Equal(
                new ReadingParse.Word(AnswerWord.Dim), ReadingText.Parse("DIM", ExpectedAnswer.WordOnly(AnswerWord.Dim)));
            Assert.Equal(
                new ReadingParse.Word(AnswerWord.Clicks),
                ReadingText.Parse("CLICKS", ExpectedAnswer.WordOnly(AnswerWord.Clicks)));
            Assert.Equal(new ReadingParse.OverLimit(), ReadingText.Parse("INFINITE", Ohms));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("OL")]
    [InlineData("ol")]
    [InlineData("O.L")]
    [InlineData("O.L.")]
    [InlineData("0L")]
    [InlineData("0.L")]
    [InlineData("0 L")]
    [InlineData(".OL")]
    [InlineData("1 .")]
    [InlineData("1   .")]
    [InlineData("infinite")]
    [InlineData("∞")]
    [InlineData("Open")]
    [InlineData("open circuit")]
    [InlineData("over-limit")]
    public void Over_limit_is_read(string text) =>
        Assert.Equal(new ReadingParse.OverLimit(), ReadingText.Parse(text, Ohms));

    [Theory]
    [InlineData("", "reading.empty")]
    [InlineData(" \t\u00a0", "reading.empty")]
    [InlineData("12.4.1", "reading.number-malformed")]
    [InlineData("12.4 12.5", "reading.number-malformed")]
    [InlineData("12 4", "reading.number-malformed")]
    [InlineData("1,23,456", "reading.number-malformed")]
    [InlineData("12 W", "reading.unknown-unit")]
    [InlineData("12 kk", "reading.unknown-unit")]
    [InlineData("twelve", "reading.not-understood")]
    [InlineData(".", "reading.not-understood")]
    [InlineData("-", "reading.not-understood")]
    [InlineData("NaN", "reading.not-understood")]
    [InlineData("1e999", "reading.number-too-large")]
    [InlineData("blown", "reading.word-does-not-fit")]
    [InlineData("bright", "reading.word-does-not-fit")]
    public void What_is_no_reading_of_volts_is_refused(string text, string code)
    {
        var rejected = Assert.IsType<ReadingParse.Rejected>(ReadingText.Parse(text, Volts));
        Assert.Equal(code, rejected.Message.Code);
    }

    private static void Expect(
        string text, ExpectedAnswer expected, Quantity quantity, double value, double resolution)
    {
        Assert.Equal(new ReadingParse.Number(value, quantity, resolution), ReadingText.Parse(text, expected));
    }
}
