using Halfsplit.Diagnosis.Planning.Sequencing;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>
/// Small problems drawn at random: faults along a path behind places and connectors, checks that halve the path or
/// part it some other way, repairs with prices. Sizes, prices and noise are assumptions; no published set is known.
/// </summary>
internal static class RandomProblem
{
    /// <summary>The problem of a seed; every second one has checks that never err.</summary>
    /// <param name="seed">Any number.</param>
    /// <param name="mostStates">4 or more.</param>
    /// <param name="mostChecks">1 or more.</param>
    public static RepairProblem Create(int seed, int mostStates = 8, int mostChecks = 10)
    {
        var draws = new Draws((ulong)seed);
        var states = draws.Whole(4, mostStates);
        var weights = new double[states];
        for (var s = 0; s < states; s++)
            weights[s] = 0.02 - Math.Log(1 - draws.Unit());
        var sum = weights.Sum();
        for (var s = 0; s < states; s++)
            weights[s] /= sum;

        var places = new double[draws.Whole(2, 4)];
        for (var p = 0; p < places.Length; p++)
            places[p] = draws.Between(1, 20);
        var connectors = new (int, double, double)[draws.Whole(0, 2)];
        for (var c = 0; c < connectors.Length; c++)
            connectors[c] = (draws.Whole(0, places.Length - 1), draws.Between(0.5, 3), draws.Between(0.5, 2));

        var needs = new List<ActionNeeds>();
        var errs = seed % 2 == 1;
        var checks = new ProblemCheck[draws.Whole(Math.Min(4, mostChecks), mostChecks)];
        for (var c = 0; c < checks.Length; c++)
        {
            checks[c] = Check(draws, states, errs);
            needs.Add(CheckNeeds(draws, places.Length, connectors.Length));
        }

        var repairs = Repairs(draws, states, places.Length, connectors.Length, needs);
        var sure = Enumerable.Range(0, states).All(s => repairs.Any(r => r.Cures[s] >= 1));
        var handOver = sure && draws.Chance(0.3) ? double.PositiveInfinity : draws.Between(80, 400);
        return new RepairProblem(
            weights, checks, repairs, new ArrangementCosts(places, connectors, draws.Between(0.2, 1.5), [.. needs]), handOver);
    }

    private static ProblemCheck Check(Draws draws, int states, bool errs)
    {
        var kind = draws.Unit();
        var outcomes = kind < 0.8 ? 2 : 3;
        var cut = draws.Whole(1, states - 1);
        var noise = errs ? (double[])[0, 0.02, 0.05, 0.1] : [0];
        var err = noise[draws.Whole(0, noise.Length - 1)];
        var odds = new double[states * outcomes];
        for (var s = 0; s < states; s++)
        {
            var shown = kind < 0.5 ? (s < cut ? 0 : 1) : draws.Whole(0, outcomes - 1);
            var blind = errs && draws.Chance(0.1);
            for (var o = 0; o < outcomes; o++)
                odds[(s * outcomes) + o] = blind ? 1.0 / outcomes : o == shown ? 1 - err : err / (outcomes - 1);
        }

        return new ProblemCheck(outcomes, odds);
    }

    private static ActionNeeds CheckNeeds(Draws draws, int places, int connectors)
    {
        var connector = connectors > 0 && draws.Chance(0.5) ? 1 << draws.Whole(0, connectors - 1) : 0;
        var parted = draws.Chance(0.6) ? connector : 0;
        return new ActionNeeds(
            draws.Between(0.5, 4), draws.Chance(0.7) ? 1 << draws.Whole(0, places - 1) : 0, parted, connector & ~parted,
            draws.Chance(0.3) ? null : draws.Whole(0, 1));
    }

    private static ProblemRepair[] Repairs(
        Draws draws, int states, int places, int connectors, List<ActionNeeds> needs)
    {
        var cures = new List<double[]>();
        for (var s = 0; s < states; s++)
        {
            if (s == 0 || draws.Chance(0.75))
                cures.Add(new double[states]);
            cures[^1][s] = draws.Chance(0.7) ? 1 : draws.Between(0.8, 0.98);
        }

        var whole = cures.Count < 8 && draws.Chance(0.5);
        if (whole)
        {
            // Replace the assembly: dear, but cures several faults.
            var first = draws.Whole(0, states - 2);
            var last = draws.Whole(first + 1, Math.Min(states - 1, first + 3));
            var assembly = new double[states];
            Array.Fill(assembly, 1, first, last - first + 1);
            cures.Add(assembly);
        }

        for (var r = 0; r < cures.Count; r++)
        {
            var price = draws.Chance(0.5) ? draws.Between(1, 15) : draws.Between(15, 120);
            if (whole && r == cures.Count - 1)
                price += 60;
            // Seeing whether it cured takes the key on and all connectors mated.
            needs.Add(new ActionNeeds(price + draws.Between(4, 20), 1 << draws.Whole(0, places - 1), 0, (1 << connectors) - 1, 1));
        }

        return [.. cures.Select(c => new ProblemRepair(c, 5))];
    }
}
