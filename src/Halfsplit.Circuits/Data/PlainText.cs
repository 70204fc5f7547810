using System.Globalization;
using System.Text;

namespace Halfsplit.Circuits.Data;

/// <summary>Words of a table as they are compared, however they are written.</summary>
internal static class PlainText
{
    /// <summary>As written, without spaces at its ends and with single ones between.</summary>
    public static string Spaced(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Small letters and digits, words with single spaces, letters without their accents: "Grün/Weiß" is "grun weiss".</summary>
    public static string Of(string text)
    {
        var plain = new StringBuilder();
        // Half a character pair, as in a file that is no UTF-8, can't be taken apart into letter and accent.
        var whole = string.Concat(text.Where(c => !char.IsSurrogate(c)));
        foreach (var c in whole.Replace("²", "2", StringComparison.Ordinal).ToLowerInvariant().Normalize(NormalizationForm.FormD))
        {
            if (char.IsLetterOrDigit(c))
            {
                plain.Append(c == 'ß' ? "ss" : c);
            }
            else if (CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark && plain.Length > 0 && plain[^1] != ' ')
            {
                plain.Append(' ');
            }
        }

        return plain.ToString().Trim();
    }
}
