namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>
/// Least expected cost to the end in a decision graph: depth first, with branch and bound and a memory of every state
/// seen. Exact but for the rounding of its sums, which are added in a fixed order whatever was pruned.
/// </summary>
/// <param name="graph">The graph.</param>
/// <param name="mostStates">States remembered before giving up.</param>
internal sealed class DecisionGraphValue<TState>(IDecisionGraph<TState> graph, int mostStates = int.MaxValue)
    where TState : notnull
{
    private readonly Dictionary<TState, Known> _known = [];
    private readonly Stack<List<DecisionChoice<TState>>> _lists = new();

    /// <summary>States seen so far.</summary>
    public int StateCount => _known.Count;

    /// <summary>True once more states were met than allowed; values are lower bounds from then on.</summary>
    public bool GaveUp { get; private set; }

    /// <summary>The least expected cost from a state; infinite if no way ends.</summary>
    public double Of(TState state) => Value(state, double.PositiveInfinity, out _);

    /// <summary>The cost of each choice of a state if all goes on as well as can be, in the graph's order.</summary>
    public IReadOnlyList<(int Action, double Value)> OfChoices(TState state) =>
        OfChoices(state, double.PositiveInfinity);

    /// <summary>The same, for choices that cost less than a limit only.</summary>
    public IReadOnlyList<(int Action, double Value)> OfChoices(TState state, double limit)
    {
        var choices = new List<DecisionChoice<TState>>();
        graph.AddChoices(state, choices);
        var values = new List<(int, double)>();
        foreach (var choice in choices)
        {
            var value = Value(choice, limit, out var exact);
            if (exact)
                values.Add((choice.Action, value));
        }

        return values;
    }

    /// <summary>The value if it is below the limit; else something that is not above the value, but not below the limit.</summary>
    private double Value(TState state, double limit, out bool exact)
    {
        var bound = 0.0;
        if (_known.TryGetValue(state, out var known))
        {
            exact = known.Exact;
            if (exact || known.Value >= limit)
                return known.Value;
            bound = known.Value;
        }
        else if (_known.Count >= mostStates)
        {
            GaveUp = true;
            exact = false;
            return graph.LowerBound(state);
        }

        var best = graph.EndCost(state);
        var choices = _lists.Count > 0 ? _lists.Pop() : [];
        graph.AddChoices(state, choices);
        SortByBound(choices);
        var rest = double.PositiveInfinity;
        foreach (var choice in choices)
        {
            var cut = Math.Min(best, limit);
            if (choice.Bound >= cut)
            {
                // Those after it cost no less.
                rest = Math.Min(rest, choice.Bound);
                break;
            }

            var value = Value(choice, cut, out var whole);
            if (!whole)
                rest = Math.Min(rest, value);
            else if (value < best)
                best = value;
        }

        choices.Clear();
        _lists.Push(choices);
        exact = !GaveUp && (best < limit || best <= rest);
        var result = exact ? best : Math.Max(bound, Math.Min(best, rest));
        _known[state] = new Known(result, exact);
        return result;
    }

    private double Value(DecisionChoice<TState> choice, double cut, out bool exact)
    {
        var outcomes = choice.Outcomes;
        Span<double> values = stackalloc double[outcomes.Length];
        for (var i = 0; i < outcomes.Length; i++)
            values[i] = outcomes[i].Bound;
        exact = true;
        for (var i = 0; i < outcomes.Length; i++)
        {
            var others = choice.Cost;
            for (var j = 0; j < outcomes.Length; j++)
                others += outcomes[j].Probability * (outcomes[j].Cost + (j == i ? 0 : values[j]));
            values[i] = Math.Max(values[i], Value(outcomes[i].Next, (cut - others) / outcomes[i].Probability, out exact));
            if (!exact || double.IsPositiveInfinity(values[i]))
                break;
        }

        var sum = choice.Cost;
        for (var i = 0; i < outcomes.Length; i++)
            sum += outcomes[i].Probability * (outcomes[i].Cost + values[i]);
        return sum;
    }

    private static void SortByBound(List<DecisionChoice<TState>> choices)
    {
        // By insertion: stable, and the lists are short.
        for (var i = 1; i < choices.Count; i++)
        {
            var moved = choices[i];
            var at = i;
            for (; at > 0 && choices[at - 1].Bound > moved.Bound; at--)
                choices[at] = choices[at - 1];
            choices[at] = moved;
        }
    }

    private readonly record struct Known(double Value, bool Exact);
}
