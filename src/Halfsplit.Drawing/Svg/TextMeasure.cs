using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Drawing.Svg;

/// <summary>
/// How much room a text needs. The font of the reader's machine is not known, so every letter is taken as wide as in a wide
/// sans-serif face; narrower faces leave a little air.
/// </summary>
internal static class TextMeasure
{
    public const double Name = 9.5, Identity = 11.5, Small = 8.5;

    /// <summary>Pixels a text takes at this size.</summary>
    public static double Width(string text, double size, bool bold = false)
    {
        var ems = 0.0;
        foreach (var letter in text)
        {
            ems += letter switch
            {
                'i' or 'j' or 'l' or '\'' or '|' or 'I' or '.' or ',' or ':' or ';' or '!' => 0.33,
                'f' or 't' or 'r' or ' ' or '(' or ')' or '[' or ']' or '/' or '-' => 0.41,
                'm' or 'w' or 'M' or 'W' or '%' or '@' => 0.97,
                >= 'A' and <= 'Z' => 0.71,
                < '\u0250' => 0.64,
                < '\u2E80' => 0.85,
                _ => 1.05,
            };
        }

        return ems * size * (bold ? 1.12 : 1);
    }

    /// <summary>Breaks a text into lines at its blanks, but not between a number and its unit; a word longer than the line stands alone.</summary>
    public static List<string> Wrap(string text, double size, double width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in Words(text))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Width(longer, size) > width)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    private static List<string> Words(string text)
    {
        var words = new List<string>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && char.IsAsciiDigit(words[^1][^1]) && IsUnit(word))
            {
                words[^1] += " " + word;
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }

    /// <summary>A unit of a meter, or another that stands behind numbers in sheets.</summary>
    private static bool IsUnit(string word) => MeterUnits.IsSymbol(word) || word is "W" or "kW" or "Ah" or "°C" or "K" or "mm²" or "m" or "cm" or "mm";
}
