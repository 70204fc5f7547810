namespace Halfsplit.Diagnosis.Planning.Sequencing;

/// <summary>Counts nodes, never time: the same plan on every machine.</summary>
internal sealed class NodeBudget(int nodes)
{
    public int Spent { get; private set; }

    public bool IsSpent => Spent >= nodes;

    public void Spend() => Spent++;
}
