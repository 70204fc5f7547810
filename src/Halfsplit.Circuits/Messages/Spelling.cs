namespace Halfsplit.Circuits.Messages;

/// <summary>Finds what was probably meant by a misspelt word.</summary>
public static class Spelling
{
    private const int LongestWord = 40;

    /// <summary>The hint "did you mean …" for the nearest of the known words, or an empty one if none is near.</summary>
    public static Message Hint(string word, IEnumerable<string> known) =>
        Nearest(word, known) is { } nearest ? new Message("spelling.did-you-mean", nearest) : new Message("spelling.nothing");

    /// <summary>The nearest of the known words; null if none is near enough.</summary>
    /// <param name="lettersAnEdit">One letter in so many may be wrong, and always one.</param>
    public static string? Nearest(string word, IEnumerable<string> known, int lettersAnEdit = 3)
    {
        ArgumentNullException.ThrowIfNull(word);
        ArgumentNullException.ThrowIfNull(known);
        if (word.Length is 0 or > LongestWord)
        {
            return null;
        }

        string? best = null;
        var least = Math.Max(1, word.Length / lettersAnEdit) + 1;
        foreach (var candidate in known)
        {
            if (candidate.Length is 0 or > LongestWord || Math.Abs(candidate.Length - word.Length) >= least)
            {
                continue;
            }

            var edits = Edits(word.ToUpperInvariant(), candidate.ToUpperInvariant());
            if (edits < least && edits < Math.Max(word.Length, candidate.Length))
            {
                (best, least) = (candidate, edits);
            }
        }

        return best;
    }

    /// <summary>Letters to add, drop, change or swap with a neighbour to turn one word into the other.</summary>
    private static int Edits(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            rows[i, 0] = i;
        }

        for (var j = 0; j <= b.Length; j++)
        {
            rows[0, j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = rows[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                rows[i, j] = Math.Min(change, Math.Min(rows[i - 1, j], rows[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
                }
            }
        }

        return rows[a.Length, b.Length];
    }
}
