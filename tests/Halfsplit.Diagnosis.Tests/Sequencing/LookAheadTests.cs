using Halfsplit.Benchmarks.Sequencing;
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
            var planned = PolicyValue.Of(problem, new PlannerPolicy(3000).Choose);
            Assert.True(planned >= optimum * (1 - 1e-9), $"seed {seed}: {planned} is under {optimum}");
            excess += (planned / optimum) - 1;
        }

        Assert.InRange(excess / Problems, 0, 0.01);
    }

    [Fact]
    public void A_larger_budget_never_expects_more_cost_and_the_same_budget_always_the_same()
    {
        for (var seed = 70_000; seed < 70_000 + Problems; seed++)
        {
            var problem = RandomProblem.Create(seed);
            IReadOnlyList<PlannedAction> Rank(int nodes) => new LookAhead(problem, nodes).Rank(problem.Weights, problem.Costs.Start, 0);
            Assert.Equal(Rank(200), Rank(200));
            var (few, more, most) = (Rank(1)[0].Value.Cost, Rank(200)[0].Value.Cost, Rank(3000)[0].Value.Cost);
            Assert.True(more <= few + 1e-9 && most <= more + 1e-9, $"seed {seed}: {few}, {more}, {most}");
        }
    }
}
