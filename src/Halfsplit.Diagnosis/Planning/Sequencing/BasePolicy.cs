namespace Halfsplit.Diagnosis.Planning.Sequencing;

/// <summary>
/// A quick policy that is never far off: of the checks that tell most bits about the repair per cost, the one after
/// which trying the repairs in their order would cost least; where none alone is worth it, the one that tells most; until
/// trying the repairs comes out cheaper. Gives the expected cost of following it.
/// </summary>
internal sealed class BasePolicy(RepairProblem problem, NodeBudget budget)
{
    /// <summary>Bits per cost below which a check is not worth a thought.</summary>
    private const double LeastScore = 1e-9;

    /// <summary>More than what rounding to nine places takes off.</summary>
    private const double Rounding = 1e-6;

    /// <summary>Checks whose worth is computed.</summary>
    private const int Weighed = 6;

    private readonly Informer _informer = new(problem);
    private readonly RepairChain _chain = new(problem);
    private readonly double[] _shown = new double[problem.StateCount];

    /// <summary>Arrays of odds that no branch holds at the moment.</summary>
    private readonly Stack<double[]> _spare = [];

    /// <summary>The weighted cost of following the policy from here.</summary>
    /// <param name="mass">Total weight below which no further check is looked into: what going on would take is estimated.</param>
    public PlanValue Value(double[] weights, int position, ulong used, double mass)
    {
        budget.Spend();
        var total = StateWeights.Total(weights);
        var repairs = _chain.Value(weights, position, used);
        var known = _chain.Known(weights, position, used);
        if (repairs.Cost - known.Cost <= CheapestCheck(position, used) * total)
        {
            // Even full knowledge saves no more than what the repairs in their order cost over the right one at once.
            return repairs;
        }

        if (total < mass)
        {
            var going = known + FindingOut(weights, total, position, used);
            return going.Cost < repairs.Cost ? going : repairs;
        }

        var best = BestCheck(weights, position, used, repairs.Cost);
        if (best < 0)
        {
            return repairs;
        }

        var value = PlanValue.Of(problem.Costs, position, best) * total;
        var after = problem.Costs.After(position, best);
        var next = _spare.Count > 0 ? _spare.Pop() : new double[weights.Length];
        for (var outcome = 0; outcome < problem.Checks[best].OutcomeCount && value.Cost < repairs.Cost; outcome++)
        {
            if (StateWeights.After(weights, problem.Checks[best], outcome, next) > 0)
            {
                value += Value(next, after, used | (1UL << best), mass);
            }
        }

        _spare.Push(next);
        return value.Cost < repairs.Cost ? value : repairs;
    }

    /// <summary>The repair with the best odds; <see cref="LookAhead.HandOver"/> where none cures anything.</summary>
    public int Likeliest(ReadOnlySpan<double> weights, ulong used) => _chain.Likeliest(weights, used);

    /// <summary>The checks that tell most per cost and the repairs with the best odds per cost.</summary>
    public IEnumerable<int> Candidates(double[] weights, int position, ulong used, int checks, int repairs)
    {
        var mending = new BestOf<int>(Math.Max(1, repairs));
        for (var repair = problem.Checks.Length; repair < problem.ActionCount; repair++)
        {
            if ((used >> repair & 1) == 0 && _chain.Score(weights, position, repair) is > 0 and var score)
            {
                mending.Offer(repair, score);
            }
        }

        return Telling(weights, position, used, Math.Max(1, checks)).Concat(mending.Items);
    }

    /// <summary>The checks that tell most bits per cost, most first.</summary>
    private List<int> Telling(double[] weights, int position, ulong used, int most)
    {
        var telling = new BestOf<int>(most);
        _informer.Look(weights);
        for (var check = 0; check < problem.Checks.Length; check++)
        {
            if ((used >> check & 1) == 0 && _informer.Bits(check) / problem.Costs.Cost(position, check) is > LeastScore and var score)
            {
                telling.Offer(check, score);
            }
        }

        return [.. telling.Items];
    }

    /// <summary>
    /// Estimate of what it takes to find out which repair is needed: the bits missing, each at the cost of those that come cheapest. (The
    /// repairs alone would make every way of many cheap checks look dear, since each leaves branches that are not looked into.)
    /// </summary>
    private PlanValue FindingOut(double[] weights, double total, int position, ulong used)
    {
        if (Telling(weights, position, used, 1) is not [var check])
        {
            return new PlanValue(double.PositiveInfinity, 0, 0);
        }

        var bits = PlanValue.Of(problem.Costs, position, check) * (total * _informer.Missing / _informer.Bits(check));
        return bits with { Estimated = bits.Cost };
    }

    private double CheapestCheck(int position, ulong used)
    {
        var cheapest = double.PositiveInfinity;
        for (var check = 0; check < problem.Checks.Length; check++)
        {
            if ((used >> check & 1) == 0)
            {
                cheapest = Math.Min(cheapest, problem.Costs.Cost(position, check));
            }
        }

        return cheapest;
    }

    /// <summary>The check to do if any is done; -1 where none tells anything.</summary>
    private int BestCheck(double[] weights, int position, ulong used, double repairs)
    {
        var best = -1;
        var least = repairs;
        foreach (var check in Telling(weights, position, used, Weighed))
        {
            best = best < 0 ? check : best;
            if (Math.Round(CostWith(check, weights, position, used, least), 9) is var cost && cost < least)
            {
                (best, least) = (check, cost);
            }
        }

        return best;
    }

    /// <summary>The weighted cost of one check and then the repairs in their order; no further than it takes to see that it is not below the least.</summary>
    private double CostWith(int check, double[] weights, int position, ulong used, double least)
    {
        var cost = problem.Costs.Cost(position, check) * StateWeights.Total(weights);
        var after = problem.Costs.After(position, check);
        for (var outcome = 0; outcome < problem.Checks[check].OutcomeCount && cost < least + Rounding; outcome++)
        {
            if (StateWeights.After(weights, problem.Checks[check], outcome, _shown) > 0)
            {
                cost += _chain.Value(_shown, after, used).Cost;
            }
        }

        return cost;
    }
}
