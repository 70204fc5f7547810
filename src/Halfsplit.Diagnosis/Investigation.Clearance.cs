using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>Odds from which a suspect that a reading brought down is worth naming as cleared by it.</summary>
    private const double WasAlive = 0.005;

    /// <summary>How far the odds must fall for that.</summary>
    private const double ClearingFactor = 5;

    /// <summary>How many of the likeliest suspects are tried as the car in which a reading is looked at.</summary>
    private const int CarsTried = 5;

    private readonly Dictionary<string, Clearance> _clearances = new(StringComparer.Ordinal);
    private readonly List<IReadOnlyDictionary<string, double>> _oddsAfter = [];
    private Assessment? _explained;
    private double[]? _serviceOhms;

    /// <summary>
    /// What a reading cleared and what it could not, judged in the likeliest car of all readings so far. Null if the entry is
    /// no reading. Kept until the entries change.
    /// </summary>
    /// <param name="entry">Name of the entry, as given to <see cref="Record"/>.</param>
    public Clearance? ClearanceOf(string entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var now = Explained();
        if (_clearances.TryGetValue(entry, out var known))
        {
            return known;
        }

        for (var i = 0; i < now.Observations.Length; i++)
        {
            if (now.Observations[i].Id == entry)
            {
                return _clearances[entry] = Clear(now, i);
            }
        }

        return null;
    }

    private Clearance Clear(Assessment now, int index)
    {
        var reading = now.Observations[index];
        var (notCleared, proven, inDoubt) = LimitsOf(now, reading);
        return new Clearance(
            reading.Id, reading.Check, ClearedBy(now, index), notCleared, proven,
            inDoubt ? [new Message("clearance.in-doubt")] : ClearanceWords.Reasons(reading, notCleared), ClearanceWords.Assurances(proven));
    }

    private (ImmutableArray<ResistanceLimit> NotCleared, ImmutableArray<ResistanceLimit> Proven, bool InDoubt) LimitsOf(
        Assessment now, Observation reading)
    {
        var inDoubt = false;
        _serviceOhms ??= [.. OhmsRange.Of(_forecaster.Simulator).Select(r => r.AtMostAmps)];
        foreach (var suspect in now.Suspects.Where(s => !s.Suspect.IsNone && s.Odds >= WorthNaming).Take(CarsTried))
        {
            var search = LimitSearch.For(_forecaster, reading, now.LikeliestCar(suspect.Suspect), suspect.Faults);
            if (search is { Fits: true })
            {
                var (notCleared, proven) = Limits.Of(search, _forecaster, _serviceOhms);
                return (notCleared, proven, false);
            }

            inDoubt |= search is not null;
        }

        // A reading that no likely car gives is in doubt, and clears nothing.
        return ([], [], inDoubt);
    }

    private ImmutableArray<OddsMove> ClearedBy(Assessment now, int index)
    {
        var before = OddsAfter(now, index);
        var after = OddsAfter(now, index + 1);
        return [.. _singles.Suspects
            .Select(s => new OddsMove(s, before.GetValueOrDefault(s.Id), after.GetValueOrDefault(s.Id)))
            .Where(m => m.Before >= WasAlive && m.After * ClearingFactor <= m.Before)
            .OrderByDescending(m => Math.Round(m.Before - m.After, 9))
            .ThenBy(m => m.Suspect.Id, StringComparer.Ordinal)];
    }

    /// <summary>The odds by suspect after so many readings, as the person saw them then.</summary>
    private IReadOnlyDictionary<string, double> OddsAfter(Assessment now, int readings)
    {
        while (_oddsAfter.Count <= readings)
        {
            var count = _oddsAfter.Count;
            _oddsAfter.Add(Odds(count == now.Observations.Length ? now.Posterior : Judge(now.Observations[..count])));
        }

        return _oddsAfter[readings];
    }

    private static Dictionary<string, double> Odds(Posterior posterior)
    {
        var odds = new Dictionary<string, double>(StringComparer.Ordinal);
        for (var i = 0; i < posterior.Space.Suspects.Length; i++)
        {
            odds[posterior.Space.Suspects[i].Id] = posterior.SuspectOdds[i];
        }

        return odds;
    }

    /// <summary>The present assessment; what was explained of an earlier one is forgotten.</summary>
    private Assessment Explained()
    {
        var now = Assess();
        if (!ReferenceEquals(now, _explained))
        {
            _clearances.Clear();
            var kept = Math.Min(_oddsAfter.Count, SameReadings(now) + 1);
            _oddsAfter.RemoveRange(kept, _oddsAfter.Count - kept);
            _explained = now;
        }

        return now;
    }

    /// <summary>How many readings from the first on are those that were explained before.</summary>
    private int SameReadings(Assessment now)
    {
        var same = 0;
        while (_explained is { } before && same < Math.Min(before.Observations.Length, now.Observations.Length)
            && before.Observations[same].Equals(now.Observations[same]))
        {
            same++;
        }

        return same;
    }
}
