namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>
/// An AND/OR graph of choices and chances without cycles: in each state one may end or choose, chance leads on. What is
/// wanted is the least expected cost to the end.
/// </summary>
internal interface IDecisionGraph<TState>
    where TState : notnull
{
    /// <summary>Cost of ending here; infinite where that is not allowed.</summary>
    double EndCost(TState state);

    /// <summary>A cost that no way to the end from here goes below, but for rounding; 0 will do, more prunes better.</summary>
    double LowerBound(TState state);

    /// <summary>Adds what can be chosen here, in a fixed order.</summary>
    void AddChoices(TState state, List<DecisionChoice<TState>> choices);
}

/// <summary>Something that can be chosen.</summary>
/// <param name="Action">Number of the action.</param>
/// <param name="Cost">What it costs whatever comes of it; 0 or more.</param>
/// <param name="Outcomes">What may come of it and is not yet the end; their probabilities add up to one or less.</param>
/// <param name="Bound">Cost plus the lower bounds of the outcomes, weighed.</param>
internal sealed record DecisionChoice<TState>(int Action, double Cost, DecisionOutcome<TState>[] Outcomes, double Bound)
    where TState : notnull
{
    /// <summary>A choice with its bound summed from its outcomes.</summary>
    public static DecisionChoice<TState> Of(int action, double cost, DecisionOutcome<TState>[] outcomes)
    {
        var bound = cost;
        foreach (ref readonly var outcome in outcomes.AsSpan())
            bound += outcome.Probability * (outcome.Cost + outcome.Bound);
        return new DecisionChoice<TState>(action, cost, outcomes, bound);
    }
}

/// <summary>What may come of a choice.</summary>
/// <param name="Probability">Above 0.</param>
/// <param name="Cost">What this outcome costs in addition; 0 or more.</param>
/// <param name="Next">Where it leads.</param>
/// <param name="Bound">Lower bound of <paramref name="Next"/>.</param>
internal readonly record struct DecisionOutcome<TState>(double Probability, double Cost, TState Next, double Bound)
    where TState : notnull;
