namespace Halfsplit.Diagnosis.Planning.Sequencing;

/// <summary>
/// Odds of the states along a way, not divided by the odds of the way itself: so expected costs simply add up.
/// </summary>
internal static class StateWeights
{
    public static double Total(ReadOnlySpan<double> weights)
    {
        var total = 0.0;
        foreach (var weight in weights)
        {
            total += weight;
        }

        return total;
    }

    /// <summary>The weights after a check showed an outcome; returns their total.</summary>
    public static double After(ReadOnlySpan<double> weights, ProblemCheck check, int outcome, Span<double> next)
    {
        var total = 0.0;
        for (var state = 0; state < weights.Length; state++)
        {
            total += next[state] = weights[state] * check.Odds[(state * check.OutcomeCount) + outcome];
        }

        return total;
    }

    /// <summary>The weights after a repair did not cure; returns their total.</summary>
    public static double AfterFailure(ReadOnlySpan<double> weights, ProblemRepair repair, Span<double> next)
    {
        var total = 0.0;
        for (var state = 0; state < weights.Length; state++)
        {
            total += next[state] = weights[state] * (1 - repair.Cures[state]);
        }

        return total;
    }
}
