using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>What each answer to a check would leave, likeliest first; rare answers are left out.</summary>
    public ImmutableArray<ForeseenOutcome> Foresee(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        var now = Assess();
        return check.Kind == CheckKind.Repair ? [] : _planner.Foresee(now.Posterior, check, now.Repairs, ClassOf);
    }

    /// <summary>
    /// Works out what the cars would answer to a check, some of them at a time, before the answer comes: recording it then
    /// takes no simulation. Changes no result.
    /// </summary>
    /// <param name="from">The first car, counted from 0.</param>
    /// <param name="count">How many.</param>
    /// <returns>False when there are no more cars.</returns>
    public bool Prepare(Check check, int from, int count)
    {
        ArgumentNullException.ThrowIfNull(check);
        var now = Assess();
        var cars = now.Posterior.Space.Hypotheses;
        for (var i = from; i < Math.Min(from + count, cars.Length); i++)
        {
            _forecaster.Of(cars[i], check, now.Repairs);
        }

        return from + count < cars.Length;
    }

    /// <summary>
    /// The tree of checks for the likeliest outcomes. Each branch is planned as the job itself would be, with a typical
    /// answer in place of the real one.
    /// </summary>
    /// <param name="depth">How many steps deep; at least 1.</param>
    /// <param name="leastOdds">Branches less likely than this are not followed.</param>
    /// <param name="onStep">Called after each step planned; for showing progress.</param>
    public PlanBranch Foretell(int depth, double leastOdds, Action? onStep = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(depth, 1);
        return Foretell(depth, leastOdds, 1, 0, onStep);
    }

    private PlanBranch Foretell(int depth, double leastOdds, double odds, double minutes, Action? onStep)
    {
        var step = Next();
        onStep?.Invoke();
        minutes += step.Effort?.Minutes ?? 0;
        if (depth == 1 || step.Check is not { Kind: not CheckKind.Repair } check)
        {
            return new PlanBranch(step, minutes, step.Check is { Kind: not CheckKind.Repair } last
                ? [.. Foresee(last).Select(o => (o, (PlanBranch?)null))]
                : []);
        }

        var outcomes = ImmutableArray.CreateBuilder<(ForeseenOutcome, PlanBranch?)>();
        foreach (var outcome in Foresee(check))
        {
            PlanBranch? next = null;
            if (odds * outcome.Odds >= leastOdds)
            {
                var entry = $"foretold {depth}";
                Record(entry, check, outcome.Typical);
                next = Foretell(depth - 1, leastOdds, odds * outcome.Odds, minutes, onStep);
                Withdraw(entry);
            }

            outcomes.Add((outcome, next));
        }

        return new PlanBranch(step, minutes, outcomes.ToImmutable());
    }
}
