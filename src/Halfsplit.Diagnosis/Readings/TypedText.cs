using System.Globalization;
using System.Text;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>Brings what a keyboard can do to a text into one form: blanks, signs, digits and Greek letters.</summary>
internal static class TypedText
{
    /// <summary>Longer texts are not readings; the limit keeps every step after it quick.</summary>
    public const int LongestText = 120;

    /// <summary>Trims, joins blanks to one, and maps look-alike characters to the one that the grammar knows.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var character in text)
        {
            var mapped = Map(character);
            if (mapped == '\0') continue;
            if (mapped == ' ' && (plain.Length == 0 || plain[^1] == ' ')) continue;
            plain.Append(mapped);
        }

        return plain.ToString().TrimEnd(' ');
    }

    /// <summary>
    /// The form in which words are looked up: lower case, hyphens as blanks, no apostrophes, no closing punctuation.
    /// </summary>
    public static string Key(string plain)
    {
        var key = new StringBuilder(plain.Length);
        foreach (var character in plain)
        {
            var lower = char.ToLowerInvariant(character);
            if (lower is '-' or '_') lower = ' ';
            if (lower == '\'') continue;
            if (lower == ' ' && (key.Length == 0 || key[^1] == ' ')) continue;
            key.Append(lower);
        }

        return key.ToString().TrimEnd(' ', '.', '!', ';', ',');
    }

    /// <summary>The start of a text, short enough to be repeated in a message.</summary>
    public static string Excerpt(string plain) => plain.Length <= 40 ? plain : string.Concat(plain.AsSpan(0, 39), "…");

    private static char Map(char character)
    {
        if (character is >= ' ' and < '\u007f') return character;
        switch (character)
        {
            // Dashes and minus signs.
            case '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2212' or '\uFE63' or '\uFF0D':
                return '-';
            case '\uFF0B':
                return '+';
            case '\u2018' or '\u2019' or '\u02BC' or '\u00B4' or '\uFF07':
                return '\'';
            case '\u2126' or '\u03C9':
                return 'Ω';
            case '\u03BC':
                return 'µ';
            case '\u066B' or '\uFF0C' or '\u3001':
                return ',';
            case '\uFF0E' or '\u3002':
                return '.';
            case '\u212A':
                return 'K';
        }

        if (char.IsWhiteSpace(character) || char.IsControl(character)) return ' ';
        if (CharUnicodeInfo.GetUnicodeCategory(character) == UnicodeCategory.Format) return '\0';
        if (character is >= '\uFF21' and <= '\uFF5A') return (char)(character - 0xFEE0);
        var digit = CharUnicodeInfo.GetDecimalDigitValue(character);
        return digit >= 0 ? (char)('0' + digit) : character;
    }
}
