namespace Halfsplit.Diagnosis.Planning.Sequencing;

/// <summary>
/// Trying repairs one after the other without a further check, in the order of odds per cost (what a wrong one costs in
/// addition included), until handing over is cheaper. With one repair per fault and fixed costs that order is the best
/// (J. B. Kadane and H. A. Simon, 1977).
/// </summary>
internal sealed class RepairChain(RepairProblem problem)
{
    private readonly (int State, double Cure)[][] _cures = [.. problem.Repairs.Select(r => r.Cures
        .Select((cure, state) => (State: state, Cure: cure))
        .Where(c => c.Cure > 0)
        .ToArray())];

    private readonly int[][] _sharing = Sharing(problem);

    private readonly double[] _left = new double[problem.StateCount];

    private readonly PlanValue[] _known = new PlanValue[problem.StateCount];

    /// <summary>Weight of what each repair would cure of what is left; 0 for those no longer open.</summary>
    private readonly double[] _cured = new double[problem.Repairs.Length];

    /// <summary>What each repair takes from each position; null until asked for.</summary>
    private readonly List<Stand?> _stands = [];

    /// <summary>The weighted cost down to the end.</summary>
    public PlanValue Value(ReadOnlySpan<double> weights, int position, ulong used)
    {
        weights.CopyTo(_left);
        for (var repair = 0; repair < _cures.Length; repair++)
        {
            _cured[repair] = (used >> (problem.Checks.Length + repair) & 1) == 0 ? Cured(_left, repair) : 0;
        }

        var total = StateWeights.Total(weights);
        var spent = default(PlanValue);
        var best = new PlanValue(problem.HandOver * total, 0, 0);
        for (var tried = 0; tried < problem.Repairs.Length; tried++)
        {
            var stand = From(position);
            var repaired = Best(stand.PerCost);
            if (repaired < 0)
            {
                break;
            }

            spent += stand.Values[repaired] * total;
            foreach (var (state, cure) in _cures[repaired])
            {
                total -= _left[state] * cure;
                _left[state] *= 1 - cure;
            }

            foreach (var repair in _sharing[repaired])
            {
                _cured[repair] = _cured[repair] > 0 ? Cured(_left, repair) : 0;
            }

            _cured[repaired] = 0;

            // Rounding leaves specks of weight where nothing is left.
            total = total < 1e-12 ? 0 : total;
            spent += new PlanValue(problem.Repairs[repaired].WrongCost * total, 0, 0);
            position = stand.After[repaired];
            var end = total > 0 ? spent + new PlanValue(problem.HandOver * total, 0, 0) : spent;
            best = end.Cost < best.Cost ? end : best;
            if (total <= 0 || spent.Cost > best.Cost)
            {
                break;
            }
        }

        return best;
    }

    /// <summary>Odds of a cure, per cost.</summary>
    public double Score(ReadOnlySpan<double> weights, int position, int action)
    {
        var cured = Cured(weights, action - problem.Checks.Length);
        return cured / (StateWeights.Total(weights) * (problem.Costs.Cost(position, action) + problem.Repairs[action - problem.Checks.Length].WrongCost));
    }

    /// <summary>The repair that cures with the best odds, as an action; <see cref="LookAhead.HandOver"/> where none cures anything.</summary>
    public int Likeliest(ReadOnlySpan<double> weights, ulong used)
    {
        var (likeliest, most) = (LookAhead.HandOver, 0.0);
        for (var repair = 0; repair < _cures.Length; repair++)
        {
            var action = problem.Checks.Length + repair;
            if ((used >> action & 1) == 0 && Cured(weights, repair) is var cured && cured > most * (1 + 1e-11))
            {
                (likeliest, most) = (action, cured);
            }
        }

        return likeliest;
    }

    /// <summary>The weighted cost if the state were known: the cheapest repair that is sure to cure it, or handing over.</summary>
    public PlanValue Known(ReadOnlySpan<double> weights, int position, ulong used)
    {
        _known.AsSpan().Fill(new PlanValue(problem.HandOver, 0, 0));
        var stand = From(position);
        for (var repair = 0; repair < _cures.Length; repair++)
        {
            if ((used >> (problem.Checks.Length + repair) & 1) != 0)
            {
                continue;
            }

            foreach (var (state, _) in _cures[repair])
            {
                _known[state] = stand.Values[repair].Cost < _known[state].Cost ? stand.Values[repair] : _known[state];
            }
        }

        var known = default(PlanValue);
        for (var state = 0; state < weights.Length; state++)
        {
            known += weights[state] > 0 ? _known[state] * weights[state] : default;
        }

        return known;
    }

    /// <summary>The repair with the best odds per cost; -1 where none cures anything.</summary>
    private int Best(ReadOnlySpan<double> perCost)
    {
        var chosen = -1;
        var best = 0.0;
        for (var repair = 0; repair < perCost.Length; repair++)
        {
            // Equal but for the last digits is equal: those differ from machine to machine.
            if (_cured[repair] * perCost[repair] is var score && score > best * (1 + 1e-11))
            {
                (chosen, best) = (repair, score);
            }
        }

        return chosen;
    }

    private Stand From(int position)
    {
        while (_stands.Count <= position)
        {
            _stands.Add(null);
        }

        return _stands[position] ??= new Stand(problem, position);
    }

    private double Cured(ReadOnlySpan<double> weights, int repair)
    {
        var cured = 0.0;
        foreach (var (state, cure) in _cures[repair])
        {
            cured += weights[state] * cure;
        }

        return cured;
    }

    /// <summary>For each repair those that cure some of the same states, itself included.</summary>
    private static int[][] Sharing(RepairProblem problem) => [.. problem.Repairs.Select(one => problem.Repairs
        .Select((other, number) => (Other: other, Number: number))
        .Where(o => Enumerable.Range(0, problem.StateCount).Any(s => one.Cures[s] > 0 && o.Other.Cures[s] > 0))
        .Select(o => o.Number)
        .ToArray())];

    /// <summary>The repairs as they stand from one position.</summary>
    private sealed class Stand
    {
        public Stand(RepairProblem problem, int position)
        {
            var count = problem.Repairs.Length;
            (PerCost, Values, After) = (new double[count], new PlanValue[count], new int[count]);
            for (var repair = 0; repair < count; repair++)
            {
                var action = problem.Checks.Length + repair;
                Values[repair] = PlanValue.Of(problem.Costs, position, action);
                After[repair] = problem.Costs.After(position, action);
                PerCost[repair] = 1 / (Values[repair].Cost + problem.Repairs[repair].WrongCost);
            }
        }

        /// <summary>One over what each costs if it turns out wrong.</summary>
        public double[] PerCost { get; }

        /// <summary>What each takes.</summary>
        public PlanValue[] Values { get; }

        /// <summary>Where each leaves things.</summary>
        public int[] After { get; }
    }
}
