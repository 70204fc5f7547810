using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>Probability of a slip from which a reading is doubtful.</summary>
    private const double DoubtfulFrom = 0.5;

    /// <summary>Share of all odds that must move when a reading is left out, for it to be worth taking again.</summary>
    private const double MattersFrom = 0.15;

    /// <summary>How often a doubtful reading is asked for in all, the first time included.</summary>
    private const int MostAsked = 3;

    /// <summary>How many readings of a job are taken again in all, before only doubtful ones are.</summary>
    private const int MostTakenAgain = 8;

    /// <summary>Minutes that are lost, all in all, by believing a slip that the odds hang on; an assumption.</summary>
    private const double LostByBelieving = 120;

    /// <summary>Odds of a repair from which the reading that it hangs on is taken again.</summary>
    private const double DecisiveOdds = 0.6;

    /// <summary>Odds above which no slip explains what was read.</summary>
    private const double BeyondASlip = 0.9995;

    /// <summary>Share of a repair's odds that must be gone without a reading, for that to be what it hangs on.</summary>
    private const double DecisiveShare = 0.7;

    /// <summary>Minutes that taking it again may cost.</summary>
    private const double ConfirmingMinutes = 1;

    private (Assessment Of, ImmutableArray<DoubtfulReading> Found)? _doubts;

    /// <summary>The readings that were more likely slips than not, likeliest first.</summary>
    public ImmutableArray<DoubtfulReading> Doubts => DoubtsOf(Assess());

    /// <summary>Probability that a reading was a slip; 0 where there is no such reading.</summary>
    /// <param name="entry">Its name, as given to <see cref="Record"/>.</param>
    public double SlipOdds(string entry)
    {
        var now = Assess();
        var odds = SlipOddsOf(now);
        for (var i = 0; i < odds.Length; i++)
        {
            if (now.Observations[i].Id == entry)
            {
                return odds[i];
            }
        }

        return 0;
    }

    private ImmutableArray<DoubtfulReading> DoubtsOf(Assessment now)
    {
        if (_doubts is { } known && ReferenceEquals(known.Of, now))
        {
            return known.Found;
        }

        var odds = SlipOddsOf(now);
        ImmutableArray<DoubtfulReading> found = [.. MostDoubtful(now.Observations, odds)
            .Where(o => o.Odds > DoubtfulFrom)
            .Select(o => new DoubtfulReading(o.Reading, o.Odds, Matters(now, o.Reading)))];
        _doubts = (now, found);
        return found;
    }

    /// <summary>The likeliest slips first.</summary>
    private static IEnumerable<(Observation Reading, double Odds)> MostDoubtful(
        ImmutableArray<Observation> observations, ImmutableArray<double> slipOdds) =>
        observations
            .Select((o, i) => (Reading: o, Odds: slipOdds[i]))
            .OrderByDescending(o => Math.Round(o.Odds, 6))
            .ThenBy(o => o.Reading.Check.Id, StringComparer.Ordinal);

    /// <summary>Left out together with its repeats, would the odds be others.</summary>
    private bool Matters(Assessment now, Observation doubtful)
    {
        var without = Posterior.Of(
            now.Posterior.Space, _forecaster, now.Observations.RemoveAll(o => o.Check.Id == doubtful.Check.Id));
        var moved = 0.0;
        for (var i = 0; i < without.SuspectOdds.Length; i++)
        {
            moved += 0.5 * Math.Abs(without.SuspectOdds[i] - now.Posterior.SuspectOdds[i]);
        }

        return moved > MattersFrom;
    }

    /// <summary>
    /// A reading that is doubted and that the odds hang on is taken again before anything else, at most twice. A reading
    /// that is not doubted is taken again once, if that costs less than believing it would on average.
    /// </summary>
    private NextStep? DoubtStep(Assessment now)
    {
        var odds = SlipOddsOf(now);
        var repeats = now.Observations.GroupBy(o => (o.Check.Id, o.RepairsBefore.Length)).Sum(g => g.Count() - 1);
        foreach (var i in Enumerable.Range(0, odds.Length).OrderByDescending(i => Math.Round(odds[i], 6)))
        {
            var (reading, doubt) = (now.Observations[i], odds[i]);
            var taken = now.Observations.Count(o =>
                o.Check.Id == reading.Check.Id && o.RepairsBefore.Length == now.Repairs.Length);
            var pays = doubt > DoubtfulFrom
                ? taken < MostAsked
                // Leads, clamps and displays are easily got wrong; what was only looked at looks the same again.
                : taken < 2 && reading.Check.Subject.IsOfAnInstrument() && repeats < MostTakenAgain
                    && doubt * LostByBelieving > Effort.WeighedMinutesOf(Circuit, Options, now.Position, reading.Check);
            if (pays && taken > 0 && reading.Check.Kind is not (CheckKind.Swap or CheckKind.Bench)
                && !now.SkippedChecks.Contains(reading.Check.Id) && Matters(now, reading))
            {
                return Step(
                    now, reading.Check,
                    new Message(
                        doubt > DoubtfulFrom ? "reason.doubtful" : "reason.hangs-on-it", reading.Value, Math.Round(100 * doubt),
                        new Message(reading.Check.Probe.Instrument == Instrument.AmpsClamp ? "care.clamp" : "care.leads")),
                    null, []);
            }
        }

        return null;
    }

    /// <summary>
    /// Read twice before you buy: where one reading alone makes the repair the likeliest, and taking it again costs next
    /// to nothing from where the leads are, it is taken again once. Slips that show just what another fault would show
    /// can't be seen in any other way.
    /// </summary>
    private NextStep? DecisiveStep(Assessment now, ClassOdds top)
    {
        if (top.Odds is < DecisiveOdds or > BeyondASlip)
        {
            return null;
        }

        var suspects = top.Suspects.Select(s => s.Suspect.Id).ToHashSet(StringComparer.Ordinal);
        var decisive = now.Observations
            .Where(o => o.Check.Subject.IsOfAnInstrument() && o.Check.Kind is not (CheckKind.Proof or CheckKind.Swap or CheckKind.Bench)
                && o.RepairsBefore.Length == now.Repairs.Length && !now.SkippedChecks.Contains(o.Check.Id)
                && now.Observations.Count(other => other.Check.Id == o.Check.Id) == 1
                && Effort.MinutesOf(Circuit, Options, now.Position, o.Check) <= ConfirmingMinutes)
            .Select(o => (Reading: o, Odds: OddsWithout(now, o, suspects)))
            .Where(o => o.Odds < DecisiveShare * top.Odds)
            .OrderBy(o => Math.Round(o.Odds, 6)).ThenBy(o => o.Reading.Check.Id, StringComparer.Ordinal)
            .Select(o => o.Reading)
            .FirstOrDefault();
        return decisive is null
            ? null
            : Step(now, decisive.Check, new Message("reason.decisive", decisive.Value), null, []);
    }

    private double OddsWithout(Assessment now, Observation left, HashSet<string> suspects)
    {
        var posterior = Posterior.Of(now.Posterior.Space, _forecaster, now.Observations.Remove(left));
        var odds = 0.0;
        for (var i = 0; i < posterior.SuspectOdds.Length; i++)
        {
            odds += suspects.Contains(posterior.Space.Suspects[i].Id) ? posterior.SuspectOdds[i] : 0;
        }

        return odds;
    }

    private (Assessment Of, ImmutableArray<double> Odds)? _slips;

    private ImmutableArray<double> SlipOddsOf(Assessment now)
    {
        if (_slips is not { } known || !ReferenceEquals(known.Of, now))
        {
            _slips = known = (now, now.Posterior.SlipOdds(_forecaster, now.Observations));
        }

        return known.Odds;
    }
}
