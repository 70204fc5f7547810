using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Findings;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>Probability of a slip from which a reading is doubtful.</summary>
    private const double DoubtfulFrom = 0.5;

    /// <summary>By how much some suspect's odds must move when a reading is left out, for it to be worth taking again.</summary>
    private const double MattersFrom = 0.1;

    /// <summary>How often a reading is asked for in all, the first time included.</summary>
    private const int MostAsked = 3;

    private (Assessment Of, ImmutableArray<DoubtfulReading> Found)? _doubts;

    /// <summary>The readings that were more likely slips than not, likeliest first.</summary>
    public ImmutableArray<DoubtfulReading> Doubts => DoubtsOf(Assess());

    private ImmutableArray<DoubtfulReading> DoubtsOf(Assessment now)
    {
        if (_doubts is { } known && ReferenceEquals(known.Of, now))
        {
            return known.Found;
        }

        var odds = now.Posterior.SlipOdds(_forecaster, now.Observations);
        ImmutableArray<DoubtfulReading> found = [.. now.Observations
            .Select((o, i) => (Reading: o, Odds: odds[i]))
            .Where(o => o.Odds > DoubtfulFrom)
            .OrderByDescending(o => Math.Round(o.Odds, 6))
            .ThenBy(o => o.Reading.Check.Id, StringComparer.Ordinal)
            .Select(o => new DoubtfulReading(o.Reading, o.Odds, Matters(now, o.Reading)))];
        _doubts = (now, found);
        return found;
    }

    /// <summary>Left out together with its repeats, would the odds be others.</summary>
    private bool Matters(Assessment now, Observation doubtful)
    {
        var without = Posterior.Of(
            now.Posterior.Space, _forecaster, now.Observations.RemoveAll(o => o.Check.Id == doubtful.Check.Id));
        for (var i = 0; i < without.SuspectOdds.Length; i++)
        {
            if (Math.Abs(without.SuspectOdds[i] - now.Posterior.SuspectOdds[i]) > MattersFrom)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>A reading that is doubted and that the odds hang on is taken again before anything else, at most twice.</summary>
    private NextStep? DoubtStep(Assessment now)
    {
        foreach (var doubt in DoubtsOf(now))
        {
            var taken = now.Observations.Count(o =>
                o.Check.Id == doubt.Check.Id && o.RepairsBefore.Length == now.Repairs.Length);
            if (taken is > 0 and < MostAsked && !now.SkippedChecks.Contains(doubt.Check.Id) && doubt.Matters
                && doubt.Check.Subject is not CheckSubject.SwapRelay)
            {
                return Step(
                    now, doubt.Check,
                    new Message("reason.doubtful", doubt.Reading.Value.ToString()!, Math.Round(100 * doubt.Odds)), null, []);
            }
        }

        return null;
    }
}
