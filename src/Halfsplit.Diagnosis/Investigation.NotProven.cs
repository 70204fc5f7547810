using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>How many suspects that are still alive are looked at.</summary>
    private const int MostRivals = 6;

    /// <summary>A quick look must come so near before it is worth a full one.</summary>
    private const double Promising = 0.5;

    /// <summary>Cars that a check must be safe for.</summary>
    private const int CarsToSpare = 40;

    private (Assessment Of, ImmutableArray<OpenSuspect> Rivals)? _notProven;

    /// <summary>
    /// The suspects alive beside those that the present finding mends, likeliest first, each with the cheapest check that
    /// would tell it from the blamed one, and what is not at hand for that check. Empty without a finding.
    /// </summary>
    public ImmutableArray<OpenSuspect> NotProven()
    {
        var now = Assess();
        if (_notProven is { } known && ReferenceEquals(known.Of, now))
        {
            return known.Rivals;
        }

        var rivals = PresentFinding() is { } finding ? OpenBeside(now, finding) : [];
        _notProven = (now, rivals);
        return rivals;
    }

    private ImmutableArray<OpenSuspect> OpenBeside(Assessment now, Finding finding)
    {
        var blamed = now.LikeliestCar(finding.Blamed[0].Suspect);
        var living = Partition.Of(now.Posterior, ClassOf, CarsToSpare);
        var safety = new SafetyScreen(_forecaster, Options);
        var byMinutes = _allChecks.Values
            .Select(c => (Check: c, Minutes: Effort.WeighedMinutesOf(Circuit, Options, now.Position, c)))
            .OrderBy(c => c.Minutes).ThenBy(c => c.Check.Id, StringComparer.Ordinal)
            .Select(c => (c.Check, Lacks: Lacking.Of(Circuit, Options, now.GivenUp, now.SkippedChecks, c.Check)))
            .ToList();
        // What can be done now first, whatever it takes; only then what lacks something, the fewest things first. What was
        // read already has told what it can, but for a slip.
        var order = byMinutes.OrderBy(c => IsDone(now, c.Check)).ThenBy(c => c.Lacks.Length).ToList();
        return [.. finding.NotCleared.Where(s => !s.Suspect.IsNone).Take(MostRivals).Select(Open)];

        OpenSuspect Open(SuspectOdds rival)
        {
            var other = now.LikeliestCar(rival.Suspect);
            foreach (var (check, lacks) in order)
            {
                if (Parts(check, blamed, other, now) && safety.Allows(check, living, now.Repairs))
                {
                    return new OpenSuspect(rival, check, Effort.Of(Circuit, Options, now.Position, check), lacks);
                }
            }

            return new OpenSuspect(rival, null, null, []);
        }
    }

    private bool Parts(Check check, Hypothesis one, Hypothesis other, Assessment now)
    {
        var screening = new Screening(_forecaster);
        return Distinction.Between(
                check, CarefulLook.Of(_forecaster, screening, check, one, now.Repairs),
                CarefulLook.Of(_forecaster, screening, check, other, now.Repairs)) >= Promising
            && Distinction.Between(
                check, _forecaster.Of(one, check, now.Repairs), _forecaster.Of(other, check, now.Repairs)) >= Distinction.Apart;
    }
}
