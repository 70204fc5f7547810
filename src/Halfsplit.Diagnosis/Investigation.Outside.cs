using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Findings;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>
    /// Odds of "none of these" from which the person is told where else to look; several times what they are beforehand.
    /// </summary>
    private const double OutsideFrom = 0.15;

    private const int MostCompared = 3;

    /// <summary>Where to look when nothing on the sheet fits; null while something does.</summary>
    public OutsideAdvice? OutsideTheSheet
    {
        get
        {
            var now = Assess();
            return now.Posterior.NoneOdds >= OutsideFrom ? Advice(now) : null;
        }
    }

    /// <summary>The two faults that fit together where no single one does: the likeliest pair, if it leads.</summary>
    public SuspectOdds? LeadingPair => Assess().Suspects[0] is { Suspect.Modes.Length: > 1 } pair ? pair : null;

    /// <summary>Nothing more that can be done here would help: says where else to look.</summary>
    private NextStep Outside(Assessment now, Message reason) =>
        new(null, null, reason, [], null, [], false)
        {
            // A job that is handed over for its cost alone has its suspects on the sheet.
            Outside = reason.Code == "reason.hand-over" && now.Posterior.NoneOdds < OutsideFrom ? null : Advice(now),
        };

    private OutsideAdvice Advice(Assessment now) => new(
        now.Posterior.NoneOdds, OutsideAdvice.CausesFor(Circuit, (Load)Circuit[Complaint.Load]), Disagreeing(now));

    /// <summary>The readings that speak most against the likeliest suspect.</summary>
    private ImmutableArray<Observation> Disagreeing(Assessment now)
    {
        var none = now.Posterior.Space.Hypotheses.First(h => h.IsNone);
        // A suspect that foretells nothing definite, such as one that chatters, disagrees with nothing.
        foreach (var suspect in now.Suspects.Where(s => !s.Suspect.IsNone))
        {
            var car = now.LikeliestCar(suspect.Suspect);
            ImmutableArray<Observation> against = [.. now.Observations
                .Select(o => (Reading: o, Against: Posterior.LogLikelihoodOf(_forecaster, none, o) - Posterior.LogLikelihoodOf(_forecaster, car, o)))
                .Where(o => o.Against > 0)
                .OrderByDescending(o => Math.Round(o.Against, 6))
                .ThenBy(o => o.Reading.Check.Id, StringComparer.Ordinal)
                .Take(MostCompared)
                .Select(o => o.Reading)];
            if (against.Length > 0)
            {
                return against;
            }
        }

        return [];
    }
}
