using Halfsplit.Diagnosis.Checks;
using Halfsplit.Evaluation.Play;

namespace Halfsplit.Evaluation.Players;

/// <summary>Buys the likeliest part, then the next.</summary>
public sealed class LikeliestPartPlayer : IPlayer
{
    public string Name => "likeliest-part";

    public IEnumerable<Move> Play(Attempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        return Openings.Of(attempt.Place).Take(1).Select(c => (Move)new Move.Look(c)).Concat(Openings.BuyTheRest(attempt));
    }
}

/// <summary>Knows what is wrong: the least that any player could spend.</summary>
public sealed class ClairvoyantPlayer : IPlayer
{
    public string Name => "clairvoyant";

    public IEnumerable<Move> Play(Attempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        foreach (var fault in attempt.Car.Hidden)
        {
            if (attempt.Place.RepairOf(fault) is { } repair)
            {
                yield return new Move.Mend(repair);
            }
        }
    }
}
