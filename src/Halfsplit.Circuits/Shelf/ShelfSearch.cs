using System.Collections.Immutable;

namespace Halfsplit.Circuits.Shelf;

/// <summary>
/// Finds complaints by words that a person would use. A word counts for more the fewer complaints answer it, and for more in the
/// complaint or the load's name than in what the sheet says of itself. A number of amps asks for the load's fuse.
/// </summary>
public static class ShelfSearch
{
    /// <summary>Complaints that answer less than this share of the best one are left out.</summary>
    private const double WorthShowing = 0.4;

    private const double WorthOfName = 1, WorthOfLoad = 0.5, WorthOfSheet = 0.5, WorthOfSummary = 0.1;

    /// <summary>Words of one stem: at least so many letters alike, and so many more at the end of either.</summary>
    private const int LeastStem = 4;
    private const int MostEnding = 3;

    private const double OneOfMany = 0.9, OfOneStem = 0.5;

    private static readonly ImmutableArray<Indexed> Index = [.. CircuitShelf.Complaints.Select(c => new Indexed(
        c,
        SearchWords.Cut(c.Name), SearchWords.Cut(c.Load),
        [.. SearchWords.Cut(c.Sheet.Title), .. c.Sheet.Words.SelectMany(w => SearchWords.Cut(w)), c.Sheet.System, $"{c.Sheet.NominalVolts}v"],
        SearchWords.Cut(c.Sheet.Summary)))];

    /// <summary>The best first; everything, in the shelf's order, for an empty question.</summary>
    public static ImmutableArray<ShelvedComplaint> Find(string question)
    {
        var asked = SearchWords.Asked(question);
        if (asked.IsEmpty)
        {
            return CircuitShelf.Complaints;
        }

        // Whoever names the fuse knows that it is in the load's way.
        var ratings = asked.Select(a => a[0][0]).Where(SearchWords.IsAmps).Select(a => a[..^1]).ToList();
        var answers = asked.Where(a => !SearchWords.IsAmps(a[0][0])).Select(Answers).ToList();
        var found = Index.Select((entry, i) => (entry.Complaint, Score: answers.Sum(a => a[i])))
            .Where(f => ratings.Count > 0 ? ratings.All(r => f.Complaint.Fuses.Contains(r)) : f.Score > 0)
            .ToList();
        // Who says just what a sheet says gets that first.
        var said = string.Join(' ', SearchWords.Cut(question));
        var best = found.Count == 0 ? 0 : found.Max(f => f.Score);
        return [.. found.Where(f => f.Score >= WorthShowing * best).OrderByDescending(f => string.Join(' ', SearchWords.Cut(f.Complaint.Name)) == said).ThenByDescending(f => f.Score).Select(f => f.Complaint)];
    }

    /// <summary>What one word of the question is worth for each complaint.</summary>
    private static double[] Answers(ImmutableArray<ImmutableArray<string>> meanings)
    {
        var worth = Index.Select(entry => meanings.Max(entry.Worth)).ToArray();
        var many = worth.Count(w => w > 0);
        var rarity = Math.Log(1 + (double)Index.Length / Math.Max(1, many));
        return [.. worth.Select(w => w * rarity)];
    }

    /// <summary>How far two words are one: 1 the same, a little less one and many, half of one stem.</summary>
    private static double Alike(string asked, string there)
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

    private sealed record Indexed(
        ShelvedComplaint Complaint, ImmutableArray<string> Name, ImmutableArray<string> Load, ImmutableArray<string> OfSheet,
        ImmutableArray<string> Summary)
    {
        /// <summary>What a meaning is worth here; of several words all are wanted.</summary>
        public double Worth(ImmutableArray<string> words) =>
            WorthOfName * Share(Name, words) + WorthOfLoad * Share(Load, words) + WorthOfSheet * Share(OfSheet, words)
            + WorthOfSummary * Share(Summary, words);

        /// <summary>How much of what is meant is there.</summary>
        private static double Share(ImmutableArray<string> there, ImmutableArray<string> words) =>
            there.IsEmpty ? 0 : words.Sum(w => there.Max(t => Alike(w, t))) / words.Length;
    }
}
