namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>What is known and how things stand while a <see cref="RepairProblem"/> is worked on.</summary>
/// <param name="Alive">States still possible, one bit each.</param>
/// <param name="Checks">Outcomes of the checks done, packed by <see cref="BeliefSpace"/>.</param>
/// <param name="Failed">Repairs tried in vain, one bit each.</param>
/// <param name="Position">How things stand.</param>
internal readonly record struct Belief(ulong Alive, ulong Checks, uint Failed, int Position)
{
    public override int GetHashCode() => HashCode.Combine(Alive, Checks, Failed, Position);
}
