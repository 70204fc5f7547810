using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Circuits.Shelf;

/// <summary>A text cut into the words that a search compares.</summary>
public static class SearchWords
{
    private static readonly ImmutableDictionary<string, ImmutableArray<ImmutableArray<string>>> Meanings = DataFile
        .Read("shelf-words.csv")
        .ToImmutableDictionary(
            r => r.Text("word"), r => r.Text("means").Split('/').Select(Cut).Where(m => !m.IsEmpty).ToImmutableArray());

    /// <summary>Endings of several things and of cases, in German and English, shortest first.</summary>
    private static readonly ImmutableArray<string> Endings = ["n", "s", "e", "en", "er", "es", "ern"];

    private const int LeastStem = 4;

    /// <summary>Every word of the table.</summary>
    public static IEnumerable<string> Known => Meanings.Keys;

    /// <summary>What a word may mean by the table, each meaning one or more words that belong together; of one that the table has not, what it means without an ending: "Hupen", "Bremslichter".</summary>
    /// <returns>Empty for a word that says nothing; null for one that the table has not.</returns>
    public static ImmutableArray<ImmutableArray<string>>? Means(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        if (Meanings.TryGetValue(word, out var means))
        {
            return means;
        }

        foreach (var ending in Endings)
        {
            if (word.Length - ending.Length >= LeastStem && word.EndsWith(ending, StringComparison.Ordinal)
                && Meanings.TryGetValue(word[..^ending.Length], out means) && !means.IsEmpty)
            {
                return means;
            }
        }

        return null;
    }

    /// <summary>
    /// Small letters and digits, accents gone, apostrophes dropped; a number of amps or volts is one word: <c>15a</c>, <c>24v</c>.
    /// </summary>
    public static ImmutableArray<string> Cut(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var words = new List<string>();
        var word = new StringBuilder();
        foreach (var letter in text + " ")
        {
            if (char.IsLetterOrDigit(letter))
            {
                word.Append(Plain(char.ToLowerInvariant(letter)));
            }
            else if (letter is not ('\'' or '’') && word.Length > 0)
            {
                Add(words, word.ToString());
                word.Clear();
            }
        }

        return [.. words];
    }

    /// <summary>A number of amps: <c>15a</c>.</summary>
    public static bool IsAmps(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return word.Length > 1 && word[^1] == 'a' && word[..^1].All(char.IsAsciiDigit);
    }

    private static void Add(List<string> words, string word)
    {
        var unit = word is "a" or "amp" or "amps" or "ampere" ? "a" : word is "v" or "volt" or "volts" ? "v" : null;
        if (unit is not null && words.Count > 0 && int.TryParse(words[^1], NumberStyles.None, CultureInfo.InvariantCulture, out _))
        {
            words[^1] += unit;
        }
        else
        {
            words.Add(word);
        }
    }

    private static string Plain(char letter) => letter switch
    {
        'ä' or 'à' or 'á' or 'â' => "a",
        'ö' or 'ó' or 'ô' => "o",
        'ü' or 'ú' or 'û' => "u",
        'é' or 'è' or 'ê' => "e",
        'ß' => "ss",
        _ => letter.ToString(),
    };
}
