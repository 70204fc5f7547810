namespace Halfsplit.Bench.Motors;

/// <summary>The commutator of a motor with two brushes.</summary>
public static class Commutator
{
    /// <summary>Ripples in a turn: with an odd number of bars the two brushes change over in turns.</summary>
    public static int RipplesPerTurn(int bars) => bars % 2 == 0 ? bars : 2 * bars;
}
