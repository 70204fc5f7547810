using Halfsplit.Diagnosis.Planning.Sequencing;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>Costs that are the same wherever things stand.</summary>
internal sealed record ConstantCosts(params double[] Costs) : IChangeCosts
{
    public int Start => 0;

    public double Cost(int position, int action) => Costs[action];

    public int After(int position, int action) => 0;
}
