using System.Globalization;

namespace Halfsplit.Diagnosis.Planning.Sequencing;

/// <summary>
/// Expected bits of a check about which repair is needed. States that the same repairs cure are of one class: telling
/// them apart is worth nothing. Works on the states that matter, class by class.
/// </summary>
internal sealed class Informer
{
    /// <summary>Share of all weight below which a state does not sway which check tells most.</summary>
    private const double Negligible = 1e-3;

    private readonly RepairProblem _problem;
    private readonly int[] _class;
    private readonly int[] _order;
    private readonly int[] _states;
    private readonly double[] _weights;
    private readonly double[] _ofClass;
    private readonly double[] _ofOutcome;
    private int _count;
    private double _total;
    private double _uncertainty;

    public Informer(RepairProblem problem)
    {
        _problem = problem;
        _class = Classes(problem);
        _order = [.. Enumerable.Range(0, problem.StateCount).OrderBy(s => _class[s]).ThenBy(s => s)];
        _states = new int[problem.StateCount];
        _weights = new double[problem.StateCount];
        var most = problem.Checks.Select(c => c.OutcomeCount).DefaultIfEmpty(1).Max();
        _ofClass = new double[most];
        _ofOutcome = new double[most];
    }

    /// <summary>Takes the odds that the following questions are about.</summary>
    public void Look(ReadOnlySpan<double> weights)
    {
        var least = Negligible * StateWeights.Total(weights);
        _count = 0;
        _total = 0;
        foreach (var state in _order)
        {
            if (weights[state] > least)
            {
                _states[_count] = state;
                _weights[_count++] = weights[state];
                _total += weights[state];
            }
        }

        _uncertainty = Entropy(_total);
        var sum = 0.0;
        for (var i = 0; i < _count; i++)
        {
            sum += _weights[i];
            if (i + 1 == _count || _class[_states[i + 1]] != _class[_states[i]])
            {
                _uncertainty -= Entropy(sum);
                sum = 0;
            }
        }
    }

    /// <summary>Bits missing to know which repair is needed.</summary>
    public double Missing => _uncertainty / _total;

    /// <summary>Bits that the check is expected to tell.</summary>
    public double Bits(int check)
    {
        var (count, odds) = (_problem.Checks[check].OutcomeCount, _problem.Checks[check].Odds);
        var ofClass = _ofClass.AsSpan(0, count);
        var ofOutcome = _ofOutcome.AsSpan(0, count);
        ofClass.Clear();
        ofOutcome.Clear();
        var known = 0.0;
        for (var i = 0; i < _count; i++)
        {
            var row = odds.AsSpan(_states[i] * count, count);
            for (var outcome = 0; outcome < row.Length; outcome++)
            {
                ofClass[outcome] += _weights[i] * row[outcome];
            }

            if (i + 1 < _count && _class[_states[i + 1]] == _class[_states[i]])
            {
                continue;
            }

            for (var outcome = 0; outcome < ofClass.Length; outcome++)
            {
                known += Entropy(ofClass[outcome]);
                ofOutcome[outcome] += ofClass[outcome];
                ofClass[outcome] = 0;
            }
        }

        var left = -known;
        foreach (var total in ofOutcome)
        {
            left += Entropy(total);
        }

        return Math.Max(0, (_uncertainty - left) / _total);
    }

    private static double Entropy(double weight) => weight > 0 ? weight * Math.Log2(weight) : 0;

    private static int[] Classes(RepairProblem problem)
    {
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        var classes = new int[problem.StateCount];
        for (var state = 0; state < classes.Length; state++)
        {
            var key = string.Join(' ', problem.Repairs.Select(r => r.Cures[state].ToString("R", CultureInfo.InvariantCulture)));
            classes[state] = known.TryGetValue(key, out var number) ? number : known[key] = known.Count;
        }

        return classes;
    }
}
