using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>Odds of what explains the readings badly or not at all from which pairs of faults are tried.</summary>
    private const double PairsFrom = 0.2;

    /// <summary>How many of the best suspects of each view take part in pairs.</summary>
    private const int PairCandidates = 8;

    /// <summary>How many readings are left out one after the other, each in turn, before only the most doubtful are.</summary>
    private const int MostLeftOut = 20;

    /// <summary>How many of the most doubtful: each takes as long as weighing all the others, and one of many says little.</summary>
    private const int DoubtfulLeftOut = 6;

    /// <summary>How many of the likeliest suspects a second one is sought beside; an assumption.</summary>
    private const int MostComplemented = 3;

    /// <summary>How many suspects that may have hidden behind a mended fault are tried.</summary>
    private const int MostHidden = 40;

    /// <summary>Single faults first; where none fits, pairs too; where none of those does, the best of them in finer degrees.</summary>
    private Posterior Judge(ImmutableArray<Observation> observations)
    {
        var posterior = Posterior.Of(_singles, _forecaster, observations);
        if (observations.Length < 3 || !(RepairDidNotCure(observations) || IsUnexplained(observations, posterior)))
        {
            return posterior;
        }

        var candidates = CandidatesForPairs(observations, posterior);
        var hidden = HiddenPairs(observations).ToList();
        var pairs = PairsOf(candidates, hidden);
        var withPairs = WithPairs(pairs);
        if (!IsUnexplained(observations, withPairs))
        {
            return withPairs;
        }

        pairs = PairsOf([.. candidates.Union(Complements(posterior, WithPairs))], hidden);
        return WithPairs(NarrowedPairs.Of(_singles, pairs, WithPairs(pairs), space => Posterior.Of(space, _forecaster, observations)));

        Posterior WithPairs(IReadOnlyList<FaultPair> tried) => Posterior.Of(_singles.WithPairs(tried), _forecaster, observations);
    }

    /// <summary>
    /// What best explains, beside one of the likeliest suspects, the readings that this one does not: where many readings
    /// contradict it, leaving out any one of them does not bring the other fault to light.
    /// </summary>
    private IEnumerable<FaultMode> Complements(Posterior posterior, Func<IReadOnlyList<FaultPair>, Posterior> weigh)
    {
        var all = _singles.Suspects.Where(s => s.Modes.Length == 1).Select(s => TriedDegrees.Coarse(s.Modes[0])).ToList();
        foreach (var one in Rank(posterior).Where(s => s.Suspect.Modes.Length == 1).Take(MostComplemented))
        {
            var first = TriedDegrees.Coarse(one.Suspect.Modes[0]);
            var found = weigh([.. all.Where(o => o.Mode.Part != first.Mode.Part).Select(o => FaultPair.Of(first, o))]);
            foreach (var pair in NarrowedPairs.BestOf(found).Take(PairCandidates))
            {
                yield return pair.Suspect.Modes.First(m => m.Id != first.Mode.Id);
            }
        }
    }

    /// <summary>Nothing fits well, or what fits best does so only if two readings were slips: as rare as two faults.</summary>
    private bool IsUnexplained(ImmutableArray<Observation> observations, Posterior posterior) =>
        posterior.UnexplainedOdds >= PairsFrom || posterior.SlipOdds(_forecaster, observations).Count(odds => odds > DoubtfulFrom) >= 2;

    /// <summary>A repair was done and its proof failed: one fault may have hidden another.</summary>
    private bool RepairDidNotCure(ImmutableArray<Observation> observations)
    {
        var latest = observations[^1].RepairsBefore.Length;
        return latest > 0 && observations.Any(o =>
            o.Check.Kind == CheckKind.Proof && o.RepairsBefore.Length == latest && !Passes(o));
    }

    /// <summary>What may have hidden behind what was mended, and the candidates with one another.</summary>
    private static List<FaultPair> PairsOf(List<FaultMode> candidates, List<FaultPair> hidden)
    {
        var degrees = candidates.ConvertAll(TriedDegrees.Coarse);
        var pairs = new Dictionary<string, FaultPair>(StringComparer.Ordinal);
        foreach (var pair in hidden.Concat(degrees.SelectMany((c, i) => degrees.Skip(i + 1).Select(o => FaultPair.Of(c, o)))))
        {
            if (pair.First.Mode.Part != pair.Second.Mode.Part)
            {
                pairs.TryAdd(pair.Id, pair);
            }
        }

        return [.. pairs.Values];
    }

    /// <summary>
    /// What each repair may have mended, to the degree that the readings before it show, with what alone explains the
    /// readings after it: a second fault that stood behind the first.
    /// </summary>
    private IEnumerable<FaultPair> HiddenPairs(ImmutableArray<Observation> observations)
    {
        var repairs = observations[^1].RepairsBefore;
        for (var done = 0; done < repairs.Length; done++)
        {
            var before = observations.Where(o => o.RepairsBefore.Length <= done).ToImmutableArray();
            var mended = Rank(Posterior.Of(_singles, _forecaster, before), before)
                .FirstOrDefault(s => s.Suspect.Modes.Length == 1 && RepairOf(s.Suspect.Modes[0]).Id == repairs[done].Id);
            if (mended is null)
            {
                continue;
            }

            var first = TriedDegrees.Only(mended.Suspect.Modes[0], mended.Faults[0]);
            var after = Posterior.Of(_singles, _forecaster, [.. observations.Where(o => o.RepairsBefore.Length > done)]);
            var hidden = Rank(after).Where(s => s.Suspect.Modes.Length == 1 && RepairOf(s.Suspect.Modes[0]).Id != repairs[done].Id);
            foreach (var suspect in hidden.Take(MostHidden))
            {
                yield return FaultPair.Of(
                    first, TriedDegrees.Left(suspect.Suspect.Modes[0], _singles.Suspects.IndexOf(suspect.Suspect), after));
            }
        }
    }

    /// <summary>
    /// Two faults each explain a part of the readings: the best suspects when any one reading is left out are the ones
    /// to pair, and the best beforehand.
    /// </summary>
    private List<FaultMode> CandidatesForPairs(ImmutableArray<Observation> observations, Posterior all)
    {
        var chosen = new Dictionary<string, FaultMode>(StringComparer.Ordinal);
        void Take(Posterior posterior, int most)
        {
            foreach (var suspect in Rank(posterior).Where(s => s.Suspect.Modes.Length == 1).Take(most))
            {
                chosen.TryAdd(suspect.Suspect.Id, suspect.Suspect.Modes[0]);
            }
        }

        Take(all, PairCandidates);
        Take(Posterior.Of(_singles, _forecaster, []), PairCandidates);
        foreach (var left in LeftOut(observations, all))
        {
            Take(Posterior.Of(_singles, _forecaster, observations.Remove(left)), PairCandidates);
        }

        return [.. chosen.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => c.Value)];
    }

    /// <summary>The readings to leave out in turn.</summary>
    private IEnumerable<Observation> LeftOut(ImmutableArray<Observation> observations, Posterior all) =>
        observations.Length <= MostLeftOut
            ? observations
            : MostDoubtful(observations, all.SlipOdds(_forecaster, observations)).Take(DoubtfulLeftOut).Select(o => o.Reading);
}
