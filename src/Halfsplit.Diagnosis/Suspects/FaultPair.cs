namespace Halfsplit.Diagnosis.Suspects;

/// <summary>Two ways to fail that may be there at once, ordered by their ids.</summary>
internal sealed record FaultPair(TriedDegrees First, TriedDegrees Second)
{
    public string Id => $"{First.Mode.Id} + {Second.Mode.Id}";

    public static FaultPair Of(TriedDegrees one, TriedDegrees other) =>
        StringComparer.Ordinal.Compare(one.Mode.Id, other.Mode.Id) <= 0 ? new FaultPair(one, other) : new FaultPair(other, one);
}
