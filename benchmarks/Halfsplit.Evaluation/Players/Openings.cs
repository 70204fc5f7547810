using Halfsplit.Diagnosis.Checks;
using Halfsplit.Evaluation.Play;

namespace Halfsplit.Evaluation.Players;

/// <summary>How work begins: the complaint is reproduced, the battery's posts are read.</summary>
internal static class Openings
{
    public static IEnumerable<Check> Of(Workplace place) =>
        [CheckCatalog.Reproduce(place.Circuit, place.Complaint), CheckCatalog.ReadPosts(place.Circuit)];

    /// <summary>When ideas have run out: whatever is left, likeliest first.</summary>
    public static IEnumerable<Move> BuyTheRest(Attempt attempt)
    {
        foreach (var (repair, _) in attempt.Place.Prior)
        {
            if (!attempt.WasTried(repair))
            {
                yield return new Move.Mend(repair);
            }
        }
    }
}
