using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Instruments;

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
        for (var outcome = 0; outcome < count; outcome++)
        {
            weights[outcome] = new double[partition.Cars.Count];
            for (var car = 0; car < weights[outcome].Length; car++)
            {
                var odds = ((1 - Information.Slip) * rows[(car * count) + outcome]) + (Information.Slip / count);
                weights[outcome][car] = partition.Weights[car] * odds;
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
                    Typical(check, outlooks, sum, first, cuts.Length), Limit(first - 1, cuts), Limit(last - 1, cuts), total, Left(sum, total)));
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

    /// <summary>A word of the group; OL; or the number that the likeliest car of this range would show.</summary>
    private ReadingValue Typical(Check check, Outlook[] outlooks, double[] weights, int outcome, int cuts)
    {
        if (check.Answers.Length > 0)
        {
            return new ReadingParse.Word(check.Answers[outcome][0]);
        }

        if (outcome > cuts)
        {
            return new ReadingParse.OverLimit();
        }

        var best = -1;
        for (var car = 0; car < weights.Length; car++)
        {
            best = !outlooks[car].IsBroad && (best < 0 || weights[car] > weights[best]) ? car : best;
        }

        var meter = forecaster.Simulator.Meter;
        var value = best < 0 ? 0 : outlooks[best].Mean;
        var step = meter.Resolution(check.Probe.Instrument, value);
        var quantity = check.Probe.Instrument switch
        {
            Instrument.Ohms => Quantity.Ohms,
            Instrument.AmpsClamp or Instrument.AmpsInline => Quantity.Amperes,
            _ => Quantity.Volts,
        };
        return new ReadingParse.Number((Math.Round(value / step) * step) + 0.0, quantity, step);
    }
}
