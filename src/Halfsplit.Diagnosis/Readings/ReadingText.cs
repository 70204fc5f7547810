using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>
/// Understands a reading as a person types it. Never throws, whatever the text; culture plays no part: a comma and a
/// point are both decimal signs everywhere.
/// </summary>
public static class ReadingText
{
    /// <summary>Understands a text with the English words.</summary>
    public static ReadingParse Parse(string? text, ExpectedAnswer expected) =>
        Parse(text, expected, AnswerWords.English);

    /// <summary>Understands a text with the words of a language.</summary>
    public static ReadingParse Parse(string? text, ExpectedAnswer expected, AnswerWords words)
    {
        ArgumentNullException.ThrowIfNull(expected);
        ArgumentNullException.ThrowIfNull(words);
        if (text is { Length: > TypedText.LongestText }) return Reject("reading.too-long", TypedText.LongestText);
        var plain = TypedText.Plain(text ?? "");
        if (plain.Length == 0) return Reject("reading.empty", Answers(expected, words));

        return ParseWord(plain, expected, words)
            ?? (expected.Quantity is null ? null : ParseUnsteady(plain, expected, words))
            ?? ParseNumber(plain, expected, words);
    }

    /// <summary>A number with "jumps" behind it: it moved while the harness was moved.</summary>
    private static ReadingParse? ParseUnsteady(string plain, ExpectedAnswer expected, AnswerWords words)
    {
        for (var blank = plain.IndexOf(' ', StringComparison.Ordinal); blank > 0; blank = plain.IndexOf(' ', blank + 1))
        {
            if (words.Candidates(plain[(blank + 1)..]) is [var only] && only == AnswerWord.Jumps)
            {
                return ParseNumber(plain[..blank].TrimEnd(',', ';'), expected, words) switch
                {
                    ReadingParse.Number number => number with { Unsteady = true },
                    ReadingParse.Question question => question with
                    {
                        Meant = Jumping(question.Meant), Alternatives = [.. question.Alternatives.Select(Jumping)],
                    },
                    var other => other,
                };
            }
        }

        return null;
    }

    private static ReadingValue Jumping(ReadingValue value) =>
        value is ReadingParse.Number number ? number with { Unsteady = true } : value;

    /// <summary>Examples and words that a check takes, in one line, for a message.</summary>
    public static string Answers(ExpectedAnswer expected, AnswerWords words)
    {
        ArgumentNullException.ThrowIfNull(expected);
        ArgumentNullException.ThrowIfNull(words);
        string[] examples = expected.Quantity switch
        {
            Quantity.Volts => ["12.4 V", "48 mV"],
            Quantity.Ohms => ["0.3 ohm", "1.2 kohm", "OL"],
            Quantity.Amperes => ["2.5 A", "150 mA"],
            Quantity.Duty => ["45 %"],
            _ => [],
        };
        var sign = words.Language.Formats.NumberFormat.NumberDecimalSeparator;
        return string.Join(", ", examples.Select(e => e.Replace(".", sign, StringComparison.Ordinal)).Concat(expected.Words.Select(words.TextOf)));
    }

    private static ReadingParse? ParseWord(string plain, ExpectedAnswer expected, AnswerWords words)
    {
        var key = TypedText.Key(plain);
        var overLimit = plain == "1 ." || words.IsOverLimit(key);
        if (overLimit && expected.Quantity == Quantity.Ohms) return new ReadingParse.OverLimit();

        var candidates = words.Candidates(plain);
        ImmutableArray<AnswerWord> fitting = [.. candidates.Where(expected.Takes)];
        foreach (var word in fitting)
        {
            if (TypedText.Key(word.Text) == key) return new ReadingParse.Word(word);
        }

        if (fitting.Length == 1) return new ReadingParse.Word(fitting[0]);
        if (fitting.Length > 1)
        {
            return Ask(
                new Message(
                    "reading.word-in-doubt",
                    TypedText.Excerpt(plain),
                    words.TextOf(fitting[0]),
                    string.Join(", ", fitting.Skip(1).Select(words.TextOf))),
                new ReadingParse.Word(fitting[0]),
                [.. fitting.Skip(1).Select(word => new ReadingParse.Word(word))]);
        }

        if (overLimit && expected.Quantity is not null)
        {
            return Ask(new Message("reading.over-limit-in-doubt"), new ReadingParse.OverLimit());
        }

        if (words.IsNothingShown(key) && expected.Quantity is { } quantity) return ReadingDoubts.NothingShown(quantity);
        if (candidates.Length == 0 && !overLimit) return null;
        return Reject("reading.word-does-not-fit", TypedText.Excerpt(plain), Answers(expected, words));
    }

    private static ReadingParse ParseNumber(string plain, ExpectedAnswer expected, AnswerWords words)
    {
        if (TypedNumber.Read(plain, out var malformed) is not { } number)
        {
            return malformed
                ? Reject("reading.number-malformed", TypedText.Excerpt(plain))
                : Reject("reading.not-understood", TypedText.Excerpt(plain), Answers(expected, words));
        }

        if (number.Unit.Length > 0 && (char.IsAsciiDigit(number.Unit[0]) || number.Unit[0] is '-' or '+' or '.' or ','))
        {
            return Reject("reading.number-malformed", TypedText.Excerpt(plain));
        }

        if (expected.Quantity is not { } quantity)
        {
            return Reject("reading.word-wanted", TypedText.Excerpt(plain), Answers(expected, words));
        }

        if (TypedUnit.Read(number.Unit) is not { } unit)
        {
            return Reject(
                "reading.unknown-unit", TypedText.Excerpt(number.Unit), MeterUnits.Symbol(quantity));
        }

        return ReadingDoubts.Weigh(plain, number, unit, quantity, expected);
    }

    private static ReadingParse.Question Ask(
        Message message, ReadingValue meant, ImmutableArray<ReadingValue> alternatives = default) =>
        new(message, meant, alternatives.IsDefault ? [] : alternatives);

    private static ReadingParse.Rejected Reject(string code, params object[] arguments) =>
        new(new Message(code, arguments));
}
