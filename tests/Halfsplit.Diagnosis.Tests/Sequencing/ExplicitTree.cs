using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>A decision tree written out: each node's choices with cost, and where they lead with which probability.</summary>
internal sealed class ExplicitTree(Dictionary<string, (double Cost, (double Probability, string Next)[] Outcomes)[]> nodes)
    : IDecisionGraph<string>
{
    public double EndCost(string state) => nodes.ContainsKey(state) ? double.PositiveInfinity : 0;

    public double LowerBound(string state) => 0;

    public void AddChoices(string state, List<DecisionChoice<string>> choices)
    {
        if (!nodes.TryGetValue(state, out var written))
            return;
        for (var i = 0; i < written.Length; i++)
        {
            choices.Add(DecisionChoice<string>.Of(
                i, written[i].Cost, [.. written[i].Outcomes.Select(o => new DecisionOutcome<string>(o.Probability, 0, o.Next, 0))]));
        }
    }
}
