using System.Numerics;
using Halfsplit.Diagnosis.Pins;

namespace Halfsplit.Diagnosis.Tests.Pins;

/// <summary>
/// How many measurements it takes, on average over the assignments, where no reading slips: of the search itself, and of the best
/// order of measurements that are safe whichever assignment is left, found by trying all.
/// </summary>
internal static class BestPlay
{
    /// <summary>No relay or connector here takes more.</summary>
    private const int Most = 60;

    /// <summary>Measurements that the search takes on average.</summary>
    public static double OfSearch(PinPuzzle puzzle)
    {
        ArgumentNullException.ThrowIfNull(puzzle);
        var weights = puzzle.Hypotheses.Sum(h => h.Weight);
        return Branch(PinSearch.Begin(puzzle), [.. Enumerable.Range(0, puzzle.Hypotheses.Length)], 0) / weights;
    }

    /// <summary>The sum of weight times measurements over hypotheses that have shown the same so far.</summary>
    private static double Branch(PinSearch search, List<int> alike, int taken)
    {
        var hypotheses = search.Puzzle.Hypotheses;
        if (taken == Most || search.Settled is not null || search.Best() is not { } best)
        {
            return taken * alike.Sum(h => hypotheses[h].Weight);
        }

        var test = search.Puzzle.Offered[best];
        return alike.GroupBy(h => search.Table.Usual(best, h))
            .Sum(g => Branch(search.With(test, Typical(hypotheses[g.First()].Expects(test))), [.. g], taken + 1));
    }

    /// <summary>The least number of measurements on average: none can do better.</summary>
    public static double Least(PinPuzzle puzzle)
    {
        ArgumentNullException.ThrowIfNull(puzzle);
        var table = new PinTable(puzzle);
        var least = new Exhaustive(table).Of(BigInteger.Pow(2, table.None) - 1);
        return least / puzzle.Hypotheses.Sum(h => h.Weight);
    }

    private static PinValue Typical(PinExpectation expectation) => expectation switch
    {
        PinExpectation.Near near => PinValue.Of(near.InDecades ? Math.Pow(10, near.Mean) : near.Mean),
        PinExpectation.OneOf one => PinValue.Of(one.Word),
        _ => PinValue.Of(double.PositiveInfinity),
    };

    /// <summary>Dynamic programming over sets of hypotheses that are still possible; a set is the bits of a number.</summary>
    private sealed class Exhaustive(PinTable table)
    {
        private readonly Dictionary<BigInteger, double> _known = [];

        /// <summary>Weight times measurements, summed over the set, by the best order.</summary>
        public double Of(BigInteger set)
        {
            var members = Members(set);
            var weight = members.Sum(h => table.Puzzle.Hypotheses[h].Weight);
            if (Groups(members).Max() >= PinSearch.SettledOdds * weight)
            {
                return 0;
            }

            if (_known.TryGetValue(set, out var known))
            {
                return known;
            }

            var best = double.PositiveInfinity;
            foreach (var (parts, bound) in Choices(members).OrderBy(c => c.Bound))
            {
                if (weight + bound >= best - 1e-9)
                {
                    break;
                }

                var sum = weight;
                foreach (var part in parts)
                {
                    sum += Of(part);
                    if (sum >= best)
                    {
                        break;
                    }
                }

                best = Math.Min(best, sum);
            }

            return _known[set] = best;
        }

        /// <summary>What each allowed measurement parts the set into, each different partition once, with a bound on what is left to do.</summary>
        private IEnumerable<(List<BigInteger> Parts, double Bound)> Choices(List<int> members)
        {
            var seen = new HashSet<string>(StringComparer.Ordinal);
            for (var t = 0; t < table.Puzzle.Offered.Length; t++)
            {
                var test = t;
                if (!members.TrueForAll(h => table.Allows(test, h) && table.Usual(test, h) >= 0))
                {
                    continue;
                }

                var parts = members.GroupBy(h => table.Usual(test, h)).Select(g => g.ToList()).ToList();
                var key = string.Join(';', parts.Select(p => string.Join(',', p)).Order(StringComparer.Ordinal));
                if (parts.Count > 1 && seen.Add(key))
                {
                    yield return (parts.ConvertAll(Set), parts.Sum(Bound));
                }
            }
        }

        /// <summary>No order does better than asking once where it is not settled yet.</summary>
        private double Bound(List<int> members)
        {
            var groups = Groups(members);
            var weight = groups.Sum();
            return groups.Max() >= PinSearch.SettledOdds * weight ? 0 : weight;
        }

        private List<double> Groups(List<int> members) =>
            [.. members.GroupBy(h => table.GroupOf[h]).Select(g => g.Sum(h => table.Puzzle.Hypotheses[h].Weight))];

        private List<int> Members(BigInteger set)
        {
            var members = new List<int>();
            for (var h = 0; h < table.None; h++)
            {
                if (!((set >> h) & BigInteger.One).IsZero)
                {
                    members.Add(h);
                }
            }

            return members;
        }

        private static BigInteger Set(List<int> members) => members.Aggregate(BigInteger.Zero, (set, h) => set | (BigInteger.One << h));
    }
}
