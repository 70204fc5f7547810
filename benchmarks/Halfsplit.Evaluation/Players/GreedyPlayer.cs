using Halfsplit.Evaluation.Play;

namespace Halfsplit.Evaluation.Players;

/// <summary>
/// The engine's odds with the plainest of policies: the check that tells most per minute, and the repair once its odds are
/// high or nothing more can be learnt.
/// </summary>
public sealed class GreedyPlayer : IPlayer
{
    private const double Enough = 0.95;

    public string Name => "greedy";

    public IEnumerable<Move> Play(Attempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        var engine = new EngineSeat(attempt);
        foreach (var first in Openings.Of(attempt.Place))
        {
            yield return new Move.Look(first);
            engine.Record(first, attempt.Answer);
        }

        while (true)
        {
            var finding = engine.Investigation.PresentFinding();
            var sure = finding is not null && finding.Odds >= Enough && !attempt.WasTried(finding.Repair);
            var best = sure ? null : engine.MostPerMinute();
            if (best is not null)
            {
                engine.Snapshot();
                yield return new Move.Look(best);
                engine.Record(best, attempt.Answer);
                continue;
            }

            if (finding is null || attempt.WasTried(finding.Repair))
            {
                yield break;
            }

            yield return engine.Blame(finding);
            engine.RecordRepair(finding.Repair);
        }
    }
}
