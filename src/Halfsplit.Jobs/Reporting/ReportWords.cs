using Halfsplit.Diagnosis;
using System.Text.RegularExpressions;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Jobs.Reporting;

/// <summary>Says the report's messages, values and days in one language.</summary>
internal sealed partial class ReportWords(TextCatalog texts)
{
    private const char NoBreak = '\u00A0';

    public Language Language => texts.Language;

    /// <summary>The text, with numbers and their units kept in one line.</summary>
    public string Say(Message message) => Units().Replace(texts.Say(message), NoBreak.ToString());

    public string Say(string code, params object[] arguments) => Say(new Message(code, arguments));

    public string Value(ReadingValue value) => Units().Replace(SpokenReading.Of(value, Language), NoBreak.ToString());

    public string Odds(double odds) => Say(OddsMessage.Of(odds));

    public string Minutes(double minutes) => Say("report.minutes", new Figure(minutes, minutes < 10 ? "0.#" : "0"));

    public string Day(DateTimeOffset at) => Say("report.day", at);

    public string Time(DateTimeOffset at) => Say("report.time", at);

    /// <summary>With a capital first letter, where that letter is no part's name.</summary>
    public string Sentence(Message message)
    {
        var text = Say(message);
        return text.Length > 0 && char.IsAsciiLetterLower(text[0]) ? char.ToUpperInvariant(text[0]) + text[1..] : text;
    }

    /// <summary>Text that has to fit a page: its start, where it is longer.</summary>
    public static string Short(string text, int most)
    {
        if (text.Length <= most)
        {
            return text;
        }

        // A letter outside the basic plane is two characters and never cut in half.
        var end = char.IsHighSurrogate(text[most - 2]) ? most - 2 : most - 1;
        return text[..end].TrimEnd() + "…";
    }

    [GeneratedRegex(@"(?<=\d) (?=(?:[mkMµ]?[ΩVAW]|%|min|mm²)(?!\w))")]
    private static partial Regex Units();
}
