using System.Collections.Immutable;
using Halfsplit.Evaluation.Players;

namespace Halfsplit.Evaluation.Play;

/// <summary>Every player there is, in the order of the tables.</summary>
public static class AllPlayers
{
    /// <summary>New players: those that keep what they have worked out share it among threads, not among runs.</summary>
    public static ImmutableArray<IPlayer> Make() =>
    [
        new EnginePlayer(), new SkilledPlayer(), new FixedOrderPlayer(), new CountingPlayer(), new LikeliestPartPlayer(),
        new EnginePlayer(looksAhead: false), new GreedyPlayer(), new ClairvoyantPlayer(),
    ];
}
