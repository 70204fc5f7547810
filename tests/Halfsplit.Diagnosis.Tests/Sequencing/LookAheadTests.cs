using Halfsplit.Benchmarks.Sequencing;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>The shipped planner beside the exact optimum.</summary>
public sealed class LookAheadTests
{
    private const int Problems = 60;

    [Fact]
    public void It_is_within_one_per_cent_of_the_optimum_on_average_and_never_below_it()
    {
        var excess = 0.0;
        for (var seed = 70_000; seed < 70_000 + Problems; seed++)
        {
            var problem = RandomProblem.Create(seed);
            var optimum = ExactPolicy.Solve(problem)!.Value;
            var planned = PolicyValue.Of(problem, new PlannerPolicy(3000, PlanningProblem.Slack).Choose);
            Assert.True(planned >= optimum * (1 - 1e-9), $"seed {seed}: {planned} is under {optimum}");
            excess += (planned / optimum) - 1;
        }

        Assert.InRange(excess / Problems, 0, 0.01);
    }

    [Fact]
    public void A_larger_budget_costs_less_on_average_and_the_same_budget_says_always_the_same()
    {
        int[] budgets = [1, 60, 3000];
        var costs = new double[budgets.Length];
        for (var seed = 70_000; seed < 70_000 + Problems; seed++)
        {
            var problem = RandomProblem.Create(seed);
            IReadOnlyList<PlannedAction> Rank() => new LookAhead(problem, 200, PlanningProblem.Slack).Rank(problem.Weights, problem.Costs.Start, 0);
            Assert.Equal(Rank(), Rank());
            for (var i = 0; i < budgets.Length; i++)
            {
                costs[i] += PolicyValue.Of(problem, new PlannerPolicy(budgets[i], 0).Choose);
            }
        }

        Assert.True(costs[2] < costs[1] && costs[1] < costs[0], string.Join(", ", costs));
    }

    [Fact]
    public void What_is_only_estimated_cannot_part_checks_so_the_one_that_tells_more_for_its_cost_comes_first()
    {
        const double Slack = 20;
        var others = 0;
        for (var seed = 70_000; seed < 70_000 + Problems; seed++)
        {
            var problem = RandomProblem.Create(seed);
            var cheapest = new LookAhead(problem, 60).Rank(problem.Weights, problem.Costs.Start, 0)[0];
            var preferred = new LookAhead(problem, 60, Slack).Rank(problem.Weights, problem.Costs.Start, 0)[0];
            var most = cheapest.Value.Cost + (Slack * cheapest.Value.Estimated);
            Assert.InRange(cheapest.Value.Estimated, 0, cheapest.Value.Cost);
            Assert.True(preferred.Value.Cost <= most, $"seed {seed}: {preferred.Value.Cost} is over {most}");
            Assert.Equal(cheapest.Action >= 0 && cheapest.Action < problem.Checks.Length, preferred.Action >= 0 && preferred.Action < problem.Checks.Length);
            others += preferred.Action == cheapest.Action ? 0 : 1;
        }

        Assert.InRange(others, 1, Problems - 1);
    }
}
