using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Coverage;

/// <summary>Puts suspects together of which no check at hand tells any from any other.</summary>
internal sealed class Grouping
{
    private readonly string[] _classes;
    private readonly Posterior _prior;

    public Grouping(HypothesisSpace space, Posterior prior, string[] classes, IReadOnlyList<CarPair> left)
    {
        _classes = classes;
        _prior = prior;
        var likeliest = Make(space, left.Where(p => p.IsLikeliest), onlyAtWorst: false);
        var together = likeliest.SelectMany(g => g.Members.SelectMany(a => g.Members.Select(b => (a, b)))).ToHashSet();
        var worst = Make(space, left.Where(p => !together.Contains((p.A, p.B))), onlyAtWorst: true);
        Groups = [.. likeliest
            .Concat(worst)
            .OrderBy(g => g.OnlyAtWorst)
            .ThenByDescending(g => Math.Round(g.Members.Sum(i => prior.SuspectOdds[i]), 9))
            .ThenBy(g => space.Suspects[g.Members[0]].Id, StringComparer.Ordinal)];
    }

    public IReadOnlyList<Group> Groups { get; }

    private List<Group> Make(HypothesisSpace space, IEnumerable<CarPair> pairs, bool onlyAtWorst)
    {
        var alike = pairs.SelectMany(p => new[] { (p.A, p.B), (p.B, p.A) }).ToHashSet();
        var order = alike.Select(p => p.Item1).Distinct()
            .OrderByDescending(i => Math.Round(_prior.SuspectOdds[i], 9)).ThenBy(i => space.Suspects[i].Id, StringComparer.Ordinal);
        var groups = new List<List<int>>();
        foreach (var suspect in order)
        {
            // Everybody in a group is like everybody else in it: likeness does not pass from neighbour to neighbour.
            var home = groups.Find(g => g.TrueForAll(other => _classes[other] == _classes[suspect] || alike.Contains((other, suspect)))
                && g.Exists(other => alike.Contains((other, suspect))));
            if (home is null)
            {
                groups.Add([suspect]);
            }
            else
            {
                home.Add(suspect);
            }
        }

        return [.. groups.Where(g => g.Count > 1).Select(g => new Group(g, onlyAtWorst))];
    }

    /// <param name="Members">Indexes of the suspects, likeliest first.</param>
    public sealed record Group(List<int> Members, bool OnlyAtWorst);
}
