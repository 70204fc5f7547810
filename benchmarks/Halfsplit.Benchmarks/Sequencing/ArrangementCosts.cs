using System.Numerics;
using Halfsplit.Diagnosis.Planning.Sequencing;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>
/// Costs as in a car: places that once opened stay open, connectors that are unplugged for one check and mated for the
/// next, a key that is turned, and turned off before a connector is touched.
/// </summary>
/// <param name="Open">Cost of opening each place.</param>
/// <param name="Connectors">Place of each connector, and the cost of parting it and of mating it.</param>
/// <param name="Turn">Cost of turning the key on or off.</param>
/// <param name="Needs">What each action needs.</param>
internal sealed record ArrangementCosts(
    double[] Open, (int Place, double Part, double Mate)[] Connectors, double Turn, ActionNeeds[] Needs) : IChangeCosts
{
    // A position is: places open, then connectors parted, then the key, one bit each.
    public int Start => 0;

    public double Cost(int position, int action) => Change(position, Needs[action], out _);

    public int After(int position, int action)
    {
        Change(position, Needs[action], out var after);
        return after;
    }

    private double Change(int position, ActionNeeds needs, out int after)
    {
        var open = position & ((1 << Open.Length) - 1);
        var parted = (position >> Open.Length) & ((1 << Connectors.Length) - 1);
        var key = position >> (Open.Length + Connectors.Length);
        var wanted = (parted | needs.Parted) & ~needs.Mated;
        var cost = needs.Cost;
        var places = needs.Places;
        for (var c = 0; c < Connectors.Length; c++)
        {
            if (((wanted ^ parted) >> c & 1) != 0)
            {
                places |= 1 << Connectors[c].Place;
                cost += (wanted >> c & 1) != 0 ? Connectors[c].Part : Connectors[c].Mate;
            }
        }

        if (wanted != parted && key == 1)
        {
            cost += Turn;
            key = 0;
        }

        if (needs.Key is { } turned && turned != key)
        {
            cost += Turn;
            key = turned;
        }

        for (var missing = (uint)(places & ~open); missing != 0; missing &= missing - 1)
            cost += Open[BitOperations.TrailingZeroCount(missing)];
        after = open | places | (wanted << Open.Length) | (key << (Open.Length + Connectors.Length));
        return cost;
    }
}

/// <summary>What an action needs.</summary>
/// <param name="Cost">Its own cost when all is in place; above 0.</param>
/// <param name="Places">Places that must be open, one bit each.</param>
/// <param name="Parted">Connectors that must be parted, one bit each.</param>
/// <param name="Mated">Connectors that must be mated, one bit each.</param>
/// <param name="Key">1 on, 0 off; null if it does not matter.</param>
internal sealed record ActionNeeds(double Cost, int Places, int Parted, int Mated, int? Key);
