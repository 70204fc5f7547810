using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>How many of the likeliest suspects have their severity worked out more finely than its step.</summary>
    private const int Refined = 12;

    /// <summary>Everything that follows from the entries; made anew when they change.</summary>
    private sealed record Assessment(
        ImmutableArray<Observation> Observations,
        ImmutableArray<Repair> Repairs,
        ImmutableHashSet<string> GivenUp,
        ImmutableHashSet<string> SkippedChecks,
        Position Position,
        Posterior Posterior,
        ImmutableArray<SuspectOdds> Suspects)
    {
        /// <summary>Nothing is repaired yet and the load works at the moment.</summary>
        public bool IsFaultAway { get; init; }

        /// <summary>How the car stood right after the last repair.</summary>
        public required Position AfterRepair { get; init; }

        /// <summary>What the job has opened, pulled and bridged is back in place.</summary>
        public bool IsPutBack { get; init; }

        public Hypothesis LikeliestCar(Suspect suspect)
        {
            Hypothesis? best = null;
            foreach (var car in Posterior.Space.Hypotheses)
            {
                if (Posterior.Space.Suspects[car.Suspect] == suspect
                    && (best is null || Posterior.Odds[car.Index] > Posterior.Odds[best.Index]))
                {
                    best = car;
                }
            }

            return best!;
        }
    }

    private Assessment Assess()
    {
        if (_assessment is not null)
        {
            return _assessment;
        }

        var observations = ImmutableArray.CreateBuilder<Observation>();
        var repairs = ImmutableArray<Repair>.Empty;
        var givenUp = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        var skipped = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        var position = Position.Start(Circuit);
        var reproduce = CheckCatalog.Reproduce(Circuit, Complaint).Id;
        var isAway = false;
        var isPutBack = false;
        var afterRepair = position;
        foreach (var entry in _entries)
        {
            if (entry.Value is null)
            {
                skipped.Add(entry.Check.Id);
                if (entry.GivenUp is { } place)
                {
                    givenUp.Add(place);
                }

                continue;
            }

            position = position.After(Circuit, entry.Check);
            if (entry.Check.Kind == CheckKind.PutBack)
            {
                isPutBack = true;
            }
            else if (entry.Check.Subject == CheckSubject.Repair
                && entry.Value is Readings.ReadingParse.Word { Answer: var word } && word == Readings.AnswerWord.Done)
            {
                repairs = repairs.Add(RepairNamed(entry.Check));
                isAway = false;
                isPutBack = false;
                afterRepair = position;
            }
            else if (entry.Value is not Readings.ReadingParse.Word { Answer: var answer } || answer != Readings.AnswerWord.NotSure)
            {
                var seen = new Observation(entry.Id, entry.Check, entry.Value, repairs);
                if (entry.Check.Id == reproduce && repairs.Length == 0)
                {
                    isAway = Passes(seen);
                }

                observations.Add(isAway ? seen with { IsFaultAway = true } : seen);
            }
            else
            {
                skipped.Add(entry.Check.Id);
            }
        }

        skipped.UnionWith(AskedOnTheBench());
        var posterior = Judge(observations.ToImmutable());
        return _assessment = new Assessment(
            observations.ToImmutable(), repairs, givenUp.ToImmutable(), skipped.ToImmutable(), position, posterior,
            Rank(posterior, observations.ToImmutable()))
        {
            IsFaultAway = isAway,
            IsPutBack = isPutBack,
            AfterRepair = afterRepair,
        };
    }

    private ImmutableArray<SuspectOdds> Rank(Posterior posterior, ImmutableArray<Observation> observations = default)
    {
        var space = posterior.Space;
        var best = new Hypothesis?[space.Suspects.Length];
        foreach (var car in space.Hypotheses)
        {
            if (best[car.Suspect] is not { } other || posterior.Odds[car.Index] > posterior.Odds[other.Index])
            {
                best[car.Suspect] = car;
            }
        }

        return [.. space.Suspects
            .Select((suspect, i) => (Suspect: suspect, Odds: posterior.SuspectOdds[i], Car: best[i]!))
            // Equal but for the last digits is equal: those differ from machine to machine.
            .OrderByDescending(s => Math.Round(s.Odds, 9))
            .ThenBy(s => s.Suspect.Id, StringComparer.Ordinal)
            .Select((s, place) =>
            {
                var faults = place < Refined && !observations.IsDefault
                    ? Posterior.Refined(_forecaster, s.Car, observations)
                    : s.Car.Faults;
                return new SuspectOdds(s.Suspect, s.Odds, faults.Length > 0 ? faults[^1].Severity : null, faults);
            })];
    }
}
