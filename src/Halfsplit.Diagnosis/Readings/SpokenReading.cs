using Halfsplit.Circuits.Messages;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>A reading as people read it in their language. What is kept and what scripts get is its <c>ToString()</c>.</summary>
public static class SpokenReading
{
    /// <summary>"12.4 V", "OL", "no beep"; in German "12,4 V", "OL", "kein Piepen".</summary>
    public static string Of(ReadingValue value, Language language)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(language);
        return value switch
        {
            ReadingParse.Word word => AnswerWords.In(language).TextOf(word.Answer),
            ReadingParse.Number { Unsteady: true } number =>
                $"{ReadingFormat.TextIn(language.Formats, number)} {AnswerWords.In(language).TextOf(AnswerWord.Jumps)}",
            ReadingParse.Number number => ReadingFormat.TextIn(language.Formats, number),
            _ => value.ToString()!,
        };
    }
}
