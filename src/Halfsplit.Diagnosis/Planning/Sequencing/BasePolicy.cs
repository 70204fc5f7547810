namespace Halfsplit.Diagnosis.Planning.Sequencing;

/// <summary>
/// A quick policy that is never far off: the check that tells most bits about the repair per cost, until trying the
/// repairs in the order of odds per cost comes out cheaper. Gives the expected cost of following it.
/// </summary>
internal sealed class BasePolicy(RepairProblem problem, NodeBudget budget)
{
    /// <summary>Bits per cost below which a check is not worth a thought.</summary>
    public const double LeastScore = 1e-9;

    private readonly Informer _informer = new(problem);
    private readonly RepairChain _chain = new(problem);

    /// <summary>The weighted cost of following the policy from here.</summary>
    /// <param name="mass">Total weight below which repairs are tried without further checks.</param>
    public PlanValue Value(double[] weights, int position, ulong used, double mass)
    {
        budget.Spend();
        var total = Belief.Total(weights);
        var repairs = _chain.Value(weights, position, used);
        if (total < mass || !CanPay(weights, total, position, used, repairs.Cost))
        {
            return repairs;
        }

        var (best, _) = BestCheck(weights, position, used);
        if (best < 0)
        {
            return repairs;
        }

        var value = PlanValue.Of(problem.Costs, position, best) * total;
        var after = problem.Costs.After(position, best);
        var next = new double[weights.Length];
        for (var outcome = 0; outcome < problem.Checks[best].OutcomeCount && value.Cost < repairs.Cost; outcome++)
        {
            if (Belief.After(weights, problem.Checks[best], outcome, next) > 0)
            {
                value += Value(next, after, used | (1UL << best), mass);
            }
        }

        return value.Cost < repairs.Cost ? value : repairs;
    }

    /// <summary>The checks that tell most per cost and the repairs with the best odds per cost.</summary>
    public IEnumerable<int> Candidates(double[] weights, int position, ulong used, int checks, int repairs)
    {
        var telling = new BestOf<int>(Math.Max(1, checks));
        _informer.Look(weights);
        for (var check = 0; check < problem.Checks.Length; check++)
        {
            if ((used >> check & 1) == 0 && _informer.Bits(check) / problem.Costs.Cost(position, check) is > LeastScore and var score)
            {
                telling.Offer(check, score);
            }
        }

        var mending = new BestOf<int>(Math.Max(1, repairs));
        for (var repair = problem.Checks.Length; repair < problem.ActionCount; repair++)
        {
            if ((used >> repair & 1) == 0 && _chain.Score(weights, position, repair) is > 0 and var score)
            {
                mending.Offer(repair, score);
            }
        }

        return telling.Items.Concat(mending.Items);
    }

    /// <summary>
    /// Even full knowledge saves no more than what the repairs in their order cost over the right one at once: where
    /// that is less than the cheapest check, none pays.
    /// </summary>
    private bool CanPay(double[] weights, double total, int position, ulong used, double repairs)
    {
        var cheapest = double.PositiveInfinity;
        for (var check = 0; check < problem.Checks.Length; check++)
        {
            if ((used >> check & 1) == 0)
            {
                cheapest = Math.Min(cheapest, problem.Costs.Cost(position, check));
            }
        }

        return repairs - _chain.KnownCost(weights, position, used) > cheapest * total;
    }

    private (int Check, double Score) BestCheck(double[] weights, int position, ulong used)
    {
        _informer.Look(weights);
        var best = -1;
        var bestScore = LeastScore;
        for (var check = 0; check < problem.Checks.Length; check++)
        {
            // Equal but for the last digits is equal: those differ from machine to machine.
            if ((used >> check & 1) == 0
                && Math.Round(_informer.Bits(check) / problem.Costs.Cost(position, check), 9) is var score && score > bestScore)
            {
                (best, bestScore) = (check, score);
            }
        }

        return (best, bestScore);
    }
}
