using System.Collections.Immutable;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>An assignment with its odds.</summary>
/// <param name="Settles">As in its hypotheses; empty for "none of these".</param>
/// <param name="Roles">Of its likeliest hypothesis; empty for "none of these".</param>
public sealed record PinOdds(string Settles, ImmutableArray<PinRole> Roles, double Odds);

/// <summary>
/// Finds which pin is which from measurements in any order: the odds of every assignment, and the measurement that is expected to
/// tell most about it. Serves the unknown relay and the cavities of a connector.
/// </summary>
public sealed class PinSearch
{
    /// <summary>An assignment is settled at these odds.</summary>
    public static readonly double SettledOdds = PinDefaults.Of("pin.settled");

    /// <summary>A measurement is offered where at these odds it harms nothing.</summary>
    private static readonly double SafeOdds = PinDefaults.Of("pin.safe");

    /// <summary>"None of these", before anything is measured.</summary>
    private static readonly double NoneShare = PinDefaults.Of("pin.none");

    /// <summary>An assignment counts as possible with at least this share of the likeliest one's odds.</summary>
    private const double StillPossible = 1e-3;

    /// <summary>Information too small to ask for, in bits.</summary>
    private const double WorthAsking = 1e-3;

    private readonly PinTable _table;
    private readonly double[] _odds;

    private PinSearch(PinTable table, ImmutableArray<(PinTest Test, PinValue Value)> readings)
    {
        _table = table;
        Readings = readings;
        _odds = Weigh(table, readings);
    }

    public PinPuzzle Puzzle => _table.Puzzle;

    public ImmutableArray<(PinTest Test, PinValue Value)> Readings { get; }

    public static PinSearch Begin(PinPuzzle puzzle) => new(new PinTable(puzzle), []);

    /// <summary>The same search with one reading more; the order of readings does not matter.</summary>
    public PinSearch With(PinTest test, PinValue value) => new(_table, Readings.Add((test, value)));

    /// <summary>Every assignment, the likeliest first; "none of these" among them.</summary>
    public ImmutableArray<PinOdds> Assignments =>
        [.. Enumerable.Range(0, _table.Count)
            .GroupBy(h => _table.GroupOf[h])
            .Select(g => Sum(g.ToList()))
            .OrderByDescending(o => o.Odds).ThenBy(o => o.Settles, StringComparer.Ordinal)];

    /// <summary>How many assignments are still possible, however many share the odds.</summary>
    public int Possible
    {
        get
        {
            var odds = Assignments.Where(a => a.Settles.Length > 0).Select(a => a.Odds).ToList();
            return odds.Count(o => o > StillPossible * odds[0]);
        }
    }

    /// <summary>
    /// Readings that the likeliest assignment can only take for slips, each as it was last taken: what was measured again and then
    /// fits is no longer among them.
    /// </summary>
    public ImmutableArray<(PinTest Test, PinValue Value)> Misfits
    {
        get
        {
            var likeliest = Puzzle.Hypotheses[Enumerable.Range(0, _table.None).MaxBy(h => _odds[h])];
            return [.. Readings.GroupBy(r => r.Test).Select(g => g.Last()).Where(r => PinLikelihood.IsSlip(r.Test, likeliest.Expects(r.Test), r.Value))];
        }
    }

    /// <summary>The odds of each detail that assignments leave open, such as what lies across a coil.</summary>
    public ImmutableArray<(string Detail, double Odds)> Details =>
        [.. Puzzle.Hypotheses.Select((h, i) => (h.Detail, Odds: _odds[i])).GroupBy(d => d.Detail)
            .Select(g => (g.Key, g.Sum(d => d.Odds))).OrderByDescending(d => d.Item2).ThenBy(d => d.Key, StringComparer.Ordinal)];

    /// <summary>The assignment that is settled; null where none is.</summary>
    public PinOdds? Settled
    {
        get
        {
            var sums = new double[_table.Groups];
            for (var h = 0; h < _table.Count; h++)
            {
                sums[_table.GroupOf[h]] += _odds[h];
            }

            var first = Array.IndexOf(sums, sums.Max());
            return sums[first] >= SettledOdds && first != _table.GroupOf[_table.None]
                ? Sum([.. Enumerable.Range(0, _table.Count).Where(h => _table.GroupOf[h] == first)])
                : null;
        }
    }

    /// <summary>What tells most about the assignment now; null where it is settled, or where nothing on offer would tell more.</summary>
    public PinTest? Next => Settled is null && Best() is { } best ? Puzzle.Offered[best] : null;

    internal PinTable Table => _table;

    /// <summary>The number of the best measurement on offer.</summary>
    internal int? Best()
    {
        var done = Readings.Select(r => r.Test).ToHashSet();
        int? best = null;
        var most = WorthAsking;
        for (var t = 0; t < Puzzle.Offered.Length; t++)
        {
            if (done.Contains(Puzzle.Offered[t]) || _table.AllowedOdds(t, _odds) < SafeOdds)
            {
                continue;
            }

            // The first of equals wins: without power before with it.
            var bits = _table.Information(t, _odds);
            if (bits > most + 1e-9)
            {
                (best, most) = (t, bits);
            }
        }

        return best;
    }

    private PinOdds Sum(List<int> hypotheses)
    {
        var likeliest = hypotheses.MaxBy(h => _odds[h]);
        return likeliest == _table.None
            ? new PinOdds("", [], _odds[likeliest])
            : new PinOdds(Puzzle.Hypotheses[likeliest].Settles, Puzzle.Hypotheses[likeliest].Roles, hypotheses.Sum(h => _odds[h]));
    }

    private static double[] Weigh(PinTable table, ImmutableArray<(PinTest Test, PinValue Value)> readings)
    {
        var hypotheses = table.Puzzle.Hypotheses;
        var logs = new double[table.Count];
        var all = hypotheses.Sum(h => h.Weight);
        for (var h = 0; h < hypotheses.Length; h++)
        {
            logs[h] = Math.Log(hypotheses[h].Weight / all * (1 - NoneShare));
        }

        logs[table.None] = Math.Log(NoneShare);
        foreach (var (test, value) in readings)
        {
            // Thousands of hypotheses share a handful of expectations.
            var known = new Dictionary<PinExpectation, double>(ReferenceEqualityComparer.Instance);
            for (var h = 0; h < table.Count; h++)
            {
                var expectation = h == table.None ? PinExpectation.Anything : hypotheses[h].Expects(test);
                if (!known.TryGetValue(expectation, out var log))
                {
                    known[expectation] = log = Math.Log(PinLikelihood.Of(test, expectation, value));
                }

                logs[h] += log;
            }
        }

        var highest = logs.Max();
        var shares = logs.Select(l => Math.Exp(l - highest)).ToArray();
        var sum = shares.Sum();
        return [.. shares.Select(s => s / sum)];
    }
}
