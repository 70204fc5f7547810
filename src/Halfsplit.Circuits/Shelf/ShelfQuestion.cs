using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Circuits.Shelf;

/// <summary>What a person asks the shelf for, in the shelf's own words.</summary>
/// <param name="Meanings">For each word that says something what it may mean, each meaning one or more words that belong together.</param>
/// <param name="Amps">Ratings of the fuses that are asked for.</param>
/// <param name="Unknown">Words that no sheet and no table has, even joined, misspelt or with umlauts written out.</param>
public sealed record ShelfQuestion(
    ImmutableArray<ImmutableArray<ImmutableArray<string>>> Meanings, ImmutableArray<string> Amps, ImmutableArray<string> Unknown)
{
    /// <summary>Words of one stem: at least so many letters alike, and so many more at the end of either.</summary>
    private const int LeastStem = 4;
    private const int MostEnding = 3;

    /// <summary>Two words written as one have at least so many letters each.</summary>
    private const int LeastHalf = 3;

    /// <summary>One letter in so many may be wrong; in shorter words a wrong letter makes another word.</summary>
    private const int LettersAnEdit = 4;

    private const double OneOfMany = 0.9, OfOneStem = 0.5;

    private static readonly FrozenSet<string> OfTheShelf = CircuitShelf.Complaints
        .SelectMany(c => (IEnumerable<string>)[c.Name, c.Load, c.Sheet.Title, c.Sheet.Summary, c.Sheet.System, $"{c.Sheet.NominalVolts}v", .. c.Sheet.Words])
        .SelectMany(t => SearchWords.Cut(t)).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>A number beside one of these is that of its amps.</summary>
    private static readonly FrozenSet<string> Fuse = FrozenSet.Create(StringComparer.Ordinal, "fuse", "fuses", "sicherung", "sicherungen");

    private static readonly FrozenSet<string> Ratings = CircuitShelf.Complaints.SelectMany(c => c.Fuses).Select(f => f.Amps).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Never fails: what is not understood is among the unknown words.</summary>
    public static ShelfQuestion Read(string text)
    {
        var meanings = ImmutableArray.CreateBuilder<ImmutableArray<ImmutableArray<string>>>();
        var (amps, unknown) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<string>());
        var words = SearchWords.Cut(text);
        for (var i = 0; i < words.Length; i++)
        {
            var word = words[i];
            if (SearchWords.IsAmps(word))
            {
                amps.Add(word[..^1]);
            }
            else if (Ratings.Contains(word) && ((i > 0 && Fuse.Contains(words[i - 1])) || (i + 1 < words.Length && Fuse.Contains(words[i + 1]))))
            {
                amps.Add(word);
            }
            else if (Means(word) is { } means)
            {
                meanings.AddRange(means.Where(m => !m.IsEmpty));
            }
            else
            {
                unknown.Add(word);
            }
        }

        return new ShelfQuestion(meanings.ToImmutable(), amps.ToImmutable(), unknown.ToImmutable());
    }

    /// <summary>How far two words are one: 1 the same, a little less one and many, half of one stem.</summary>
    internal static double Alike(string asked, string there)
    {
        if (asked == there)
        {
            return 1;
        }

        if (asked + "s" == there || there + "s" == asked)
        {
            return OneOfMany;
        }

        if (asked.Length >= 2 && there.StartsWith(asked, StringComparison.Ordinal))
        {
            return OfOneStem;
        }

        var alike = 0;
        while (alike < asked.Length && alike < there.Length && asked[alike] == there[alike])
        {
            alike++;
        }

        return alike >= LeastStem && asked.Length - alike <= MostEnding && there.Length - alike <= MostEnding ? OfOneStem : 0;
    }

    /// <summary>What a word may mean, as it is or with its umlauts no longer written out; then as two words; then without its slips of the pen.</summary>
    /// <returns>What each of the words in it may mean; null where nothing is near.</returns>
    private static ImmutableArray<ImmutableArray<ImmutableArray<string>>>? Means(string word)
    {
        var umlauts = word.Replace("ae", "a", StringComparison.Ordinal).Replace("oe", "o", StringComparison.Ordinal).Replace("ue", "u", StringComparison.Ordinal);
        var forms = new[] { word, umlauts }.Distinct().ToList();
        return forms.Select(AsItIs).FirstOrDefault(m => m is not null) is { } means ? [means]
            : forms.Select(Joined).FirstOrDefault(j => j is not null) is { } joined ? joined
            : forms.Select(Nearest).FirstOrDefault(n => n is not null) is { } near && AsItIs(near) is { } meant ? [meant]
            : null;
    }

    private static ImmutableArray<ImmutableArray<string>>? AsItIs(string word) =>
        SearchWords.Means(word) ?? (OfTheShelf.Any(there => Alike(word, there) > 0) ? [[word]] : null);

    private static ImmutableArray<ImmutableArray<ImmutableArray<string>>>? Joined(string word)
    {
        for (var cut = LeastHalf; cut <= word.Length - LeastHalf; cut++)
        {
            if (Whole(word[..cut]) is { } first && Whole(word[cut..]) is { } second)
            {
                return [first, second];
            }
        }

        return null;
    }

    /// <summary>Of a word within another nothing may be missing, and it must say something.</summary>
    private static ImmutableArray<ImmutableArray<string>>? Whole(string word) =>
        SearchWords.Means(word) is { } means ? (means.IsEmpty ? null : means) : OfTheShelf.Contains(word) ? [[word]] : null;

    /// <summary>Hardly anybody gets the first letter wrong; to look at those words alone makes "tire" no "fire".</summary>
    private static string? Nearest(string word) => word.Length < LettersAnEdit
        ? null
        : Spelling.Nearest(word, SearchWords.Known.Concat(OfTheShelf).Where(k => k[0] == word[0] && k.Length >= LettersAnEdit).Order(StringComparer.Ordinal), LettersAnEdit);
}
