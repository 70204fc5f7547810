using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>What each answer to a check would leave: the outcomes that the planner weighs, for people to read.</summary>
internal sealed class Foresight(Forecaster forecaster, Partition partition, HypothesisSpace space)
{
    /// <summary>Outcomes rarer than this are left out.</summary>
    private const double LeastOdds = 0.01;

    private const int MostLeft = 3;

    /// <summary>Neighbouring ranges whose leading suspects' odds differ by less say the same.</summary>
    private const double Same = 0.2;

    /// <summary>The outcomes of a check, likeliest first.</summary>
    /// <param name="outlooks">One per car of the partition.</param>
    public ImmutableArray<ForeseenOutcome> Of(Check check, Outlook[] outlooks)
    {
        var rows = Information.Outcomes(check, outlooks, out var count);
        double[] cuts = check.Answers.Length > 0 ? [] : Information.Cuts(outlooks);
        var weights = new double[count][];
        var honest = new double[count][];
        for (var outcome = 0; outcome < count; outcome++)
        {
            weights[outcome] = new double[partition.Cars.Count];
            honest[outcome] = new double[partition.Cars.Count];
            for (var car = 0; car < weights[outcome].Length; car++)
            {
                var odds = rows[(car * count) + outcome];
                honest[outcome][car] = partition.Weights[car] * odds;
                weights[outcome][car] = partition.Weights[car] * (((1 - Information.Slip) * odds) + (Information.Slip / count));
            }
        }

        var found = new List<ForeseenOutcome>();
        for (var outcome = 0; outcome < count;)
        {
            var (first, last) = (outcome, outcome + 1);
            var sum = weights[first];
            // Ranges beside each other that leave the same are one; a word is never joined to another.
            while (last <= cuts.Length && check.Answers.Length == 0 && LeaveTheSame(sum, weights[last]))
            {
                sum = [.. sum.Zip(weights[last++], (a, b) => a + b)];
            }

            var total = sum.Sum();
            if (total >= LeastOdds)
            {
                found.Add(new ForeseenOutcome(
                    Typical(check, outlooks, honest, first, last, cuts), Limit(first - 1, cuts), Limit(last - 1, cuts), total, Left(sum, total)));
            }

            outcome = last;
        }

        return [.. found.OrderByDescending(f => Math.Round(f.Odds, 9))];
    }

    private static double? Limit(int cut, double[] cuts) => cut >= 0 && cut < cuts.Length ? cuts[cut] : null;

    private bool LeaveTheSame(double[] a, double[] b)
    {
        var (leftA, leftB) = (Left(a, a.Sum()), Left(b, b.Sum()));
        return b.Sum() < LeastOdds || (leftA[0].Suspect == leftB[0].Suspect && Math.Abs(leftA[0].Odds - leftB[0].Odds) < Same);
    }

    private ImmutableArray<(Suspect Suspect, double Odds)> Left(double[] weights, double total)
    {
        var odds = new double[space.Suspects.Length];
        for (var car = 0; car < weights.Length; car++)
        {
            odds[partition.Cars[car].Suspect] += weights[car] / total;
        }

        return [.. Enumerable.Range(0, odds.Length)
            .OrderByDescending(i => Math.Round(odds[i], 9)).ThenBy(i => space.Suspects[i].Id, StringComparer.Ordinal)
            .Take(MostLeft)
            .Select(i => (space.Suspects[i], odds[i]))];
    }

    /// <summary>A word of the group; OL; or the number of the likeliest car that shows one in this range without a slip.</summary>
    private ReadingValue Typical(Check check, Outlook[] outlooks, double[][] honest, int first, int last, double[] cuts)
    {
        if (check.Answers.Length > 0)
        {
            return new ReadingParse.Word(check.Answers[first][0]);
        }

        if (first > cuts.Length)
        {
            return new ReadingParse.OverLimit();
        }

        var (best, most) = (-1, 0.0);
        for (var outcome = first; outcome < last; outcome++)
        {
            for (var car = 0; car < outlooks.Length; car++)
            {
                if (!outlooks[car].IsBroad && honest[outcome][car] > most)
                {
                    (best, most) = (car, honest[outcome][car]);
                }
            }
        }

        // A car with a wide spread may reach into this range with its mean beside it.
        var typical = Math.Clamp(
            best < 0 ? 0 : outlooks[best].Mean, Limit(first - 1, cuts) ?? double.NegativeInfinity, Limit(last - 1, cuts) ?? double.PositiveInfinity);
        return DisplayedNumber.Of(forecaster.Simulator.Meter, check.Probe.Instrument, typical);
    }
}
