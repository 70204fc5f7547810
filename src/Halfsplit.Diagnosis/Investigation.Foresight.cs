using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Safety;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>Odds of the outcomes followed from which their average stands for all.</summary>
    private const double MostlyFollowed = 0.5;

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

    /// <summary>
    /// Following the plan beside buying now, also where a rule decided the step: then what planning without the rule gives, and the step's own
    /// minutes. Null once a repair is being proven or put back.
    /// </summary>
    /// <param name="step">What is asked now.</param>
    public Comparison? Compare(NextStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        if (step.IsProven || step.Check?.Kind is CheckKind.Proof or CheckKind.PutBack)
        {
            return null;
        }

        if (step.Plan is { } plan)
        {
            return new Comparison(plan.Best.Way, plan.BuyNow == plan.Best ? null : plan.BuyNow);
        }

        var planned = Planned(Assess());
        return new Comparison(OwnValue(step) + planned.Best.Way, planned.BuyNow);
    }

    private PlanBranch Foretell(int depth, double leastOdds, double odds, double minutes, Action? onStep)
    {
        var step = Next();
        onStep?.Invoke();
        minutes += step.Effort?.Minutes ?? 0;
        if (step.Check is not { Kind: not CheckKind.Repair } check)
        {
            return new PlanBranch(step, minutes, step.Plan?.Best.Way, Compare(step), []);
        }

        var compared = Compare(step);
        var outcomes = ImmutableArray.CreateBuilder<(ForeseenOutcome Outcome, PlanBranch? Next)>();
        foreach (var outcome in Foresee(check))
        {
            PlanBranch? next = null;
            if (depth > 1 && odds * outcome.Odds >= leastOdds)
            {
                var entry = $"foretold {depth}";
                Record(entry, check, outcome.Typical);
                next = Foretell(depth - 1, leastOdds, odds * outcome.Odds, minutes, onStep);
                Withdraw(entry);
            }

            outcomes.Add((outcome, next));
        }

        var ahead = Ahead(step, compared, outcomes);
        return new PlanBranch(
            step, minutes, ahead, ahead is { } follow && compared is not null ? compared with { Follow = follow } : compared, outcomes.ToImmutable());
    }

    /// <summary>
    /// As the plan has it. Where a rule decided there is none: then the step's own minutes and what follows its outcomes on average, or, where
    /// hardly any was followed, what planning from here gives.
    /// </summary>
    private PlanValue? Ahead(NextStep step, Comparison? compared, IReadOnlyList<(ForeseenOutcome Outcome, PlanBranch? Next)> outcomes)
    {
        var (followed, sum) = (0.0, default(PlanValue));
        foreach (var (outcome, next) in outcomes)
        {
            if (next?.Ahead is { } ahead)
            {
                followed += outcome.Odds;
                sum += ahead * outcome.Odds;
            }
        }

        return step.Plan is null && followed > MostlyFollowed ? OwnValue(step) + (sum * (1 / followed)) : compared?.Follow;
    }

    private PlanValue OwnValue(NextStep step)
    {
        var own = step.Effort?.Minutes ?? 0;
        var risk = step.Check is { } check ? Risk.MinutesOf(Circuit, check) : 0;
        return new PlanValue(Options.EconomyInUse.Worth(own + risk), own, 0);
    }
}
