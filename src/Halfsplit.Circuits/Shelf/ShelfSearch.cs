using System.Collections.Immutable;

namespace Halfsplit.Circuits.Shelf;

/// <summary>
/// Finds complaints by words that a person would use. A word counts for more the fewer complaints answer it, and for more in the
/// complaint or the load's name than in what the sheet says of itself. A number of amps asks for the load's fuse.
/// </summary>
public static class ShelfSearch
{
    /// <summary>Complaints that answer less than this share of the best one are left out.</summary>
    private const double WorthShowing = 0.6;

    /// <summary>Words of one stem: at least so many letters alike, and so many more at the end of either.</summary>
    private const int LeastStem = 4;
    private const int MostEnding = 3;

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
        var ratings = asked.Select(a => a[0]).Where(SearchWords.IsAmps).Select(a => a[..^1]).ToList();
        var answers = asked.Where(a => !SearchWords.IsAmps(a[0])).Select(Answers).ToList();
        var found = Index.Select((entry, i) => (entry.Complaint, Score: answers.Sum(a => a[i])))
            .Where(f => ratings.Count > 0 ? ratings.All(r => f.Complaint.Fuses.Contains(r)) : f.Score > 0)
            .ToList();
        var best = found.Count == 0 ? 0 : found.Max(f => f.Score);
        return [.. found.Where(f => f.Score >= WorthShowing * best).OrderByDescending(f => f.Score).Select(f => f.Complaint)];
    }

    /// <summary>What one word of the question is worth for each complaint.</summary>
    private static double[] Answers(ImmutableArray<string> words)
    {
        var worth = Index.Select(entry => entry.Worth(words)).ToArray();
        var many = worth.Count(w => w > 0);
        var rarity = Math.Log(1 + (double)Index.Length / Math.Max(1, many));
        return [.. worth.Select(w => w * rarity)];
    }

    private static bool Alike(string asked, string there)
    {
        if (asked == there || (asked.Length >= 2 && there.StartsWith(asked, StringComparison.Ordinal)))
        {
            return true;
        }

        var alike = 0;
        while (alike < asked.Length && alike < there.Length && asked[alike] == there[alike])
        {
            alike++;
        }

        return alike >= LeastStem && asked.Length - alike <= MostEnding && there.Length - alike <= MostEnding;
    }

    private sealed record Indexed(
        ShelvedComplaint Complaint, ImmutableArray<string> Name, ImmutableArray<string> Load, ImmutableArray<string> OfSheet,
        ImmutableArray<string> Summary)
    {
        public double Worth(ImmutableArray<string> words) =>
            Has(Name, words) ? 1 : Has(Load, words) ? 0.9 : Has(OfSheet, words) ? 0.6 : Has(Summary, words) ? 0.25 : 0;

        private static bool Has(ImmutableArray<string> there, ImmutableArray<string> words) => there.Any(t => words.Any(w => Alike(w, t)));
    }
}
