namespace Halfsplit.Diagnosis.Pins;

/// <summary>What every hypothesis expects of every measurement on offer, worked out once.</summary>
internal sealed class PinTable
{
    private readonly int[][] _kind;
    private readonly double[][][] _shares;
    private readonly bool[][] _allowed;
    private readonly int[][] _usual;

    public PinTable(PinPuzzle puzzle)
    {
        Puzzle = puzzle;
        None = puzzle.Hypotheses.Length;
        Count = None + 1;
        var groups = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var hypothesis in puzzle.Hypotheses)
        {
            groups.TryAdd(hypothesis.Settles, groups.Count);
        }

        GroupOf = [.. puzzle.Hypotheses.Select(h => groups[h.Settles]), groups.Count];
        Groups = groups.Count + 1;
        var tests = puzzle.Offered.Length;
        (_kind, _shares, _allowed, _usual) = (new int[tests][], new double[tests][][], new bool[tests][], new int[tests][]);
        for (var t = 0; t < tests; t++)
        {
            var test = puzzle.Offered[t];
            var expected = puzzle.Hypotheses.Select(h => h.Expects(test)).Append(PinExpectation.Anything).ToList();
            var kinds = expected.Distinct().ToList();
            var outcomes = new PinOutcomes(kinds);
            _kind[t] = [.. expected.Select(e => kinds.IndexOf(e))];
            _shares[t] = [.. kinds.Select(outcomes.Shares)];
            _usual[t] = [.. expected.Select(outcomes.Usual)];
            _allowed[t] = [.. puzzle.Hypotheses.Select(h => h.Allows(test)), true];
        }
    }

    public PinPuzzle Puzzle { get; }

    /// <summary>The number of "none of these", behind all hypotheses.</summary>
    public int None { get; }

    /// <summary>Hypotheses and "none of these".</summary>
    public int Count { get; }

    public int[] GroupOf { get; }

    public int Groups { get; }

    /// <summary>The outcome that the hypothesis means; −1 where it has none.</summary>
    public int Usual(int test, int hypothesis) => _usual[test][hypothesis];

    public bool Allows(int test, int hypothesis) => _allowed[test][hypothesis];

    public double AllowedOdds(int test, double[] odds)
    {
        var sum = 0.0;
        for (var h = 0; h < Count; h++)
        {
            sum += _allowed[test][h] ? odds[h] : 0;
        }

        return sum;
    }

    /// <summary>Bits that a measurement is expected to tell about the assignment.</summary>
    public double Information(int test, double[] odds)
    {
        var shares = _shares[test];
        var outcomes = shares[0].Length;
        var joint = new double[Groups * outcomes];
        var group = new double[Groups];
        for (var h = 0; h < Count; h++)
        {
            var own = shares[_kind[test][h]];
            group[GroupOf[h]] += odds[h];
            for (var o = 0; o < outcomes; o++)
            {
                joint[(GroupOf[h] * outcomes) + o] += odds[h] * own[o];
            }
        }

        var bits = 0.0;
        for (var o = 0; o < outcomes; o++)
        {
            var outcome = 0.0;
            for (var g = 0; g < Groups; g++)
            {
                outcome += joint[(g * outcomes) + o];
            }

            for (var g = 0; g < Groups; g++)
            {
                var both = joint[(g * outcomes) + o];
                bits += both > 0 ? both * Math.Log2(both / (group[g] * outcome)) : 0;
            }
        }

        return bits;
    }
}
