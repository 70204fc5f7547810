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

    /// <summary>A word that more than this share of the shelf answers says too little by itself: a lamp, an engine.</summary>
    private const double SaysLittle = 0.25;

    private static readonly ImmutableArray<Indexed> Index = [.. CircuitShelf.Complaints.Select(c => new Indexed(
        c,
        SearchWords.Cut(c.Name), SearchWords.Cut(c.Load),
        [.. SearchWords.Cut(c.Sheet.Title), .. c.Sheet.Words.SelectMany(w => SearchWords.Cut(w)), c.Sheet.System, $"{c.Sheet.NominalVolts}v"],
        SearchWords.Cut(c.Sheet.Summary)))];

    /// <summary>The best first; everything, in the shelf's order, for an empty question. Nothing where only words that say little are understood, and others are not.</summary>
    public static ImmutableArray<ShelvedComplaint> Find(string question)
    {
        var asked = ShelfQuestion.Read(question);
        if (asked is { Meanings.IsEmpty: true, Amps.IsEmpty: true, Unknown.IsEmpty: true })
        {
            return CircuitShelf.Complaints;
        }

        var worths = asked.Meanings.Select(m => Index.Select(entry => m.Max(entry.Worth)).ToArray()).ToList();
        if (!asked.Unknown.IsEmpty && asked.Amps.IsEmpty && worths.TrueForAll(w => Answering(w) > SaysLittle * Index.Length))
        {
            return [];
        }

        // Whoever names the fuse knows that it is in the load's way.
        var answers = worths.ConvertAll(Rated);
        var found = Index.Select((entry, i) => (entry.Complaint, Score: answers.Sum(a => a[i])))
            .Where(f => asked.Amps.IsEmpty ? f.Score > 0 : asked.Amps.All(r => f.Complaint.Fuses.Any(u => u.Amps == r)))
            .ToList();
        var best = found.Count == 0 ? 0 : found.Max(f => f.Score);
        var said = SearchWords.Cut(question);
        return [.. found.Where(f => f.Score >= WorthShowing * best)
            .OrderByDescending(f => Said(said, SearchWords.Cut(f.Complaint.Name))).ThenByDescending(f => f.Score).Select(f => f.Complaint)];
    }

    /// <summary>Who says just what a sheet says gets that first, and then who says a stretch of it.</summary>
    private static int Said(ImmutableArray<string> said, ImmutableArray<string> name) =>
        said.SequenceEqual(name) ? 2
        : said.Length > 1 && $" {string.Join(' ', name)} ".Contains($" {string.Join(' ', said)} ", StringComparison.Ordinal) ? 1
        : 0;

    private static int Answering(double[] worth) => worth.Count(w => w > 0);

    /// <summary>What one word of the question is worth for each complaint: the fewer answer, the more.</summary>
    private static double[] Rated(double[] worth)
    {
        var rarity = Math.Log(1 + (double)Index.Length / Math.Max(1, Answering(worth)));
        return [.. worth.Select(w => w * rarity)];
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
            there.IsEmpty ? 0 : words.Sum(w => there.Max(t => ShelfQuestion.Alike(w, t))) / words.Length;
    }
}
