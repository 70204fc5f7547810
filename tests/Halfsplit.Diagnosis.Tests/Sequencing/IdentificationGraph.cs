using System.Numerics;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>Find which state holds with tests that pass or fail: a state of the graph is the set of states still possible.</summary>
/// <param name="priors">Odds of each state.</param>
/// <param name="costs">Cost of each test.</param>
/// <param name="fails">For each test, the states in which it fails, one bit each.</param>
internal sealed class IdentificationGraph(double[] priors, double[] costs, uint[] fails) : IDecisionGraph<uint>
{
    public uint Start => (1U << priors.Length) - 1;

    public double EndCost(uint state) => BitOperations.IsPow2(state) ? 0 : double.PositiveInfinity;

    // Without a bound of its own the search is plain dynamic programming.
    public double LowerBound(uint state) => 0;

    public void AddChoices(uint state, List<DecisionChoice<uint>> choices)
    {
        for (var test = 0; test < fails.Length; test++)
        {
            var (fail, pass) = (state & fails[test], state & ~fails[test]);
            if (fail != 0 && pass != 0)
            {
                choices.Add(DecisionChoice<uint>.Of(test, costs[test],
                    [new(Odds(fail) / Odds(state), 0, fail, 0), new(Odds(pass) / Odds(state), 0, pass, 0)]));
            }
        }
    }

    private double Odds(uint states)
    {
        var odds = 0.0;
        for (; states != 0; states &= states - 1)
            odds += priors[BitOperations.TrailingZeroCount(states)];
        return odds;
    }
}
