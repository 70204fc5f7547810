using System.Globalization;
using CsCheck;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Readings;

public class ReadingTextPropertyTests
{
    private static readonly ExpectedAnswer[] Checks =
    [
        ExpectedAnswer.Volts() with { Predicted = [12.3, 0.0] },
        ExpectedAnswer.Ohms([.. AnswerWord.All]),
        ExpectedAnswer.Amperes(),
        ExpectedAnswer.Duty(),
        ExpectedAnswer.WordOnly([.. AnswerWord.All]),
    ];

    private static readonly TextCatalog Catalog = new(Language.English, DiagnosisTexts.Source);

    private static readonly Gen<ExpectedAnswer> AnyCheck = Gen.OneOf([.. Checks.Select(Gen.Const)]);

    // Characters that the grammar looks at, so that fuzzing gets past the first test.
    private static readonly Gen<string> NearlyAReading =
        Gen.String[Gen.Char["0123456789.,-+'eEkKmMvVaArRoOlLhHΩµ% \u00a0\u2212\u2019\u2126\ud83d"], 0, 30];

    [Fact]
    public void Any_text_gives_a_value_and_never_throws() =>
        Gen.OneOf(Gen.String, NearlyAReading, Gen.String[Gen.Char, 100, 5000]).Select(AnyCheck).Sample((text, check) =>
        {
            var parse = ReadingText.Parse(text, check);
            AssertHasText(parse);
            Assert.True(Numbers(parse).All(number => double.IsFinite(number.Value) && number.Resolution is not <= 0));
            if (parse is ReadingValue value && check.Quantity is null) Assert.IsType<ReadingParse.Word>(value);
            if (parse is ReadingParse.Word word) Assert.Contains(word.Answer, check.Words);
        });

    [Fact]
    public void Blanks_around_a_text_change_nothing()
    {
        Gen.Select(NearlyAReading, AnyCheck).Sample((text, check) =>
        {
            var padded = "\u00a0 " + text + "\t ";
            Assert.Equal(Shown(ReadingText.Parse(text, check)), Shown(ReadingText.Parse(padded, check)));
        });
    }

    [Fact]
    public void A_comma_is_a_point() =>
        Gen.Select(Gen.Int[0, 17], Gen.Int[0, 99]).Sample((whole, hundredths) =>
        {
            var text = string.Create(CultureInfo.InvariantCulture, $"{whole}.{hundredths:00}");
            var check = ExpectedAnswer.Volts();
            var number = Assert.IsType<ReadingParse.Number>(ReadingText.Parse(text, check));
            Assert.Equal(decimal.ToDouble(whole + (hundredths / 100m)), number.Value);
            Assert.Equal(number, ReadingText.Parse(text.Replace('.', ','), check));
        });

    [Fact]
    public void What_a_value_shows_parses_back_to_the_same_value() =>
        Gen.Select(Gen.Int[-999_999, 999_999], Gen.Int[-6, 3], Gen.Enum<Quantity>())
            .Sample((digits, exponent, quantity) =>
            {
                var step = double.Parse("1e" + exponent.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
                var exact = double.Parse(string.Create(CultureInfo.InvariantCulture, $"{digits}e{exponent}"), CultureInfo.InvariantCulture);
                var value = new ReadingParse.Number(exact, quantity, step);
                var check = quantity switch
                {
                    Quantity.Volts => ExpectedAnswer.Volts(),
                    Quantity.Ohms => ExpectedAnswer.Ohms(),
                    Quantity.Amperes => ExpectedAnswer.Amperes(),
                    _ => ExpectedAnswer.Duty(),
                };
                var text = value.ToString();
                var parse = ReadingText.Parse(text, check with { PlausibleLow = double.MinValue, PlausibleHigh = double.MaxValue });
                Assert.Equal(value.Value, Assert.IsType<ReadingParse.Number>(parse).Value);
            });

    private static void AssertHasText(ReadingParse parse)
    {
        var message = parse switch
        {
            ReadingParse.Question question => question.Message,
            ReadingParse.Rejected rejected => rejected.Message,
            _ => null,
        };
        if (message is null) return;
        Assert.True(Catalog.Has(message.Code), message.Code);
        Assert.NotEqual(message.ToString(), Catalog.Say(message));
    }

    private static IEnumerable<ReadingParse.Number> Numbers(ReadingParse parse) => parse switch
    {
        ReadingParse.Number number => [number],
        ReadingParse.Question question => question.Alternatives.Append(question.Meant).OfType<ReadingParse.Number>(),
        _ => [],
    };

    private static string Shown(ReadingParse parse) => parse switch
    {
        ReadingParse.Question question => question.Message.Code + question.Meant,
        ReadingParse.Rejected rejected => rejected.Message.Code,
        _ => parse.ToString(),
    };
}
