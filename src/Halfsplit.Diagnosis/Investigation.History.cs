using System.Collections.Immutable;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>How each reading moved a suspect's odds.</summary>
    /// <param name="suspect">One of <see cref="Suspects"/>.</param>
    public SuspectHistory HistoryOf(Suspect suspect)
    {
        ArgumentNullException.ThrowIfNull(suspect);
        var now = Explained();
        double After(int readings) => OddsAfter(now, readings).GetValueOrDefault(suspect.Id);
        var steps = ImmutableArray.CreateBuilder<HistoryStep>();
        var final = After(now.Observations.Length);
        for (var i = 0; i < now.Observations.Length; i++)
        {
            var reading = now.Observations[i];
            var without = Odds(Judge(now.Observations.RemoveAt(i))).GetValueOrDefault(suspect.Id);
            steps.Add(new HistoryStep(reading.Id, reading.Check, After(i), After(i + 1), without, final));
        }

        var complaint = Odds(Posterior.Of(_unnoticed, _forecaster, [])).GetValueOrDefault(suspect.Id);
        return new SuspectHistory(suspect, ShareByWeight(suspect), complaint, steps.ToImmutable()) { Noticed = NoticedSteps(suspect, final) };
    }

    /// <summary>The suspect's share among all failures of this circuit, whatever they cause; pairs by the product of theirs.</summary>
    private double ShareByWeight(Suspect suspect)
    {
        if (suspect.IsNone)
        {
            return FailureWeights.NoneOfTheseShare / (1 + FailureWeights.NoneOfTheseShare);
        }

        var all = FaultCatalog.For(_forecaster.Simulator).Sum(_singles.WeightOf) * (1 + FailureWeights.NoneOfTheseShare);
        return suspect.Modes.Aggregate(suspect.Modes.Length == 1 ? 1.0 : FailureWeights.PairShare, (share, mode) => share * _singles.WeightOf(mode) / all);
    }
}
