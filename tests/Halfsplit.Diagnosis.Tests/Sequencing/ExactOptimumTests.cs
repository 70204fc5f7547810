using CsCheck;
using Halfsplit.Benchmarks.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

public sealed class ExactOptimumTests
{
    /// <summary>What sums of some thousand products may differ by when added in another order.</summary>
    private const double Rounding = 1e-12;

    private static readonly Gen<int> Seeds = Gen.Int[0, 1_000_000];

    [Fact]
    public void The_optimum_is_that_of_plain_enumeration() => Seeds.Sample(
        seed =>
        {
            var problem = RandomProblem.Create(seed, 4, 3);
            AssertEqual(PlainEnumeration.Optimum(problem), Optimum(problem));
        },
        iter: 40);

    [Fact]
    public void Following_the_exact_policy_costs_the_optimum() => Seeds.Sample(
        seed =>
        {
            var problem = RandomProblem.Create(seed, 6, 6);
            var exact = ExactPolicy.Solve(problem)!;
            AssertEqual(exact.Value, PolicyValue.Of(problem, exact.Choose));
        },
        iter: 40);

    [Fact]
    public void No_policy_costs_less_than_the_optimum() => Seeds.Sample(
        seed =>
        {
            var problem = RandomProblem.Create(seed, 6, 6);
            var least = Optimum(problem) * (1 - Rounding);
            RepairPolicy[] policies =
            [
                RepairOrder.Choose, OneStepWorth.Choose, new OneStepInformation(0.95).Choose, new OneStepInformation(1).Choose,
                (p, standing) => AnyAction(p, standing, seed), (p, standing) => AnyAction(p, standing, seed + 1),
            ];
            foreach (var policy in policies)
                Assert.True(PolicyValue.Of(problem, policy) >= least, $"seed {seed}");
        },
        iter: 60);

    // Policy improvement (Howard 1960), from memory.
    [Fact]
    public void A_roll_out_never_costs_more_than_the_policy_it_follows() => Seeds.Sample(
        seed =>
        {
            var problem = RandomProblem.Create(seed, 6, 6);
            RepairPolicy[] policies = [RepairOrder.Choose, OneStepWorth.Choose, new OneStepInformation(0.95).Choose];
            foreach (var policy in policies)
            {
                var (improved, plain) = (PolicyValue.Of(problem, new RollOut(policy).Choose), PolicyValue.Of(problem, policy));
                Assert.True(improved <= plain * (1 + Rounding), $"seed {seed}: {improved} {plain}");
            }
        },
        iter: 40);

    [Fact]
    public void The_least_of_the_first_actions_is_the_optimum() => Seeds.Sample(
        seed =>
        {
            var problem = RandomProblem.Create(seed, 5, 5);
            var exact = ExactPolicy.Solve(problem)!;
            var values = exact.ActionValues();
            AssertEqual(exact.Value, Math.Min(problem.HandOver, values.Min(v => v.Value)));
            Assert.All(exact.BestActions(), best => AssertEqual(
                exact.Value, best == RepairStanding.HandOver ? problem.HandOver : values.Single(v => v.Action == best).Value));
        },
        iter: 40);

    [Fact]
    public void Neither_one_more_check_nor_its_being_free_ever_raises_the_optimum() => Seeds.Sample(
        seed =>
        {
            var problem = RandomProblem.Create(seed, 5, 5);
            var last = problem.Checks.Length - 1;
            var without = problem with { Checks = problem.Checks[..last], Costs = new LastCheckCosts(problem.Costs, last, null) };
            var free = problem with { Costs = new LastCheckCosts(problem.Costs, last, double.Epsilon) };
            var (least, with, most) = (Optimum(free), Optimum(problem), Optimum(without));
            Assert.True(least <= with * (1 + Rounding) && with <= most * (1 + Rounding), $"seed {seed}: {least} {with} {most}");
        },
        iter: 40);

    [Fact]
    public void A_problem_too_large_for_what_is_allowed_has_no_value() =>
        Assert.Null(ExactPolicy.Solve(RandomProblem.Create(7), mostBeliefs: 3));

    [Fact]
    public void Where_nothing_cures_for_certain_and_handing_over_is_not_allowed_the_cost_has_no_bound()
    {
        var problem = new RepairProblem(
            [0.5, 0.5], [new(2, [1, 0, 0, 1])], [new([1, 0], 0), new([0, 0.9], 0)], new ConstantCosts(1, 1, 1), double.PositiveInfinity);
        Assert.Equal(double.PositiveInfinity, Optimum(problem));
        // The first repair, in half the cases the second, and in one of twenty handing over.
        AssertEqual(1 + 0.5 + (0.05 * 20), Optimum(problem with { HandOver = 20 }));
    }

    [Fact]
    public void A_policy_that_goes_in_circles_is_found_out() => Assert.Throws<InvalidOperationException>(
        () => PolicyValue.Of(RandomProblem.Create(3), (_, _) => 0));

    [Fact]
    public void Places_opened_and_connectors_parted_never_make_a_detour_pay() => Seeds.Sample(
        seed => Assert.False(new RouteCosts(RandomProblem.Create(seed)).DetoursPay), iter: 100);

    [Fact]
    public void A_detour_that_pays_is_noticed()
    {
        // From afar the repair costs 100; the check costs 1 and leads near, where the repair costs 10.
        var problem = new RepairProblem(
            [0.5, 0.5], [new(2, [1, 0, 0, 1])], [new([1, 1], 0)], new NearAndFar(), double.PositiveInfinity);
        Assert.True(new RouteCosts(problem).DetoursPay);
        Assert.Equal(11, new RouteCosts(problem).Route(0, 1));
        Assert.True(ExactPolicy.Solve(problem)!.DetoursPay);
        Assert.Equal(11, Optimum(problem));
    }

    private static double Optimum(RepairProblem problem) => ExactPolicy.Solve(problem)!.Value;

    private static void AssertEqual(double expected, double actual)
    {
        if (!double.IsInfinity(expected) || !double.IsInfinity(actual))
            Assert.InRange(actual, expected * (1 - Rounding), expected * (1 + Rounding));
    }

    /// <summary>Something not done yet, the same at the same point; hands over when nothing is left.</summary>
    private static int AnyAction(RepairProblem problem, RepairStanding standing, int seed)
    {
        var undone = Enumerable.Range(0, problem.ActionCount)
            .Where(a => a < problem.Checks.Length ? standing.Shown[a] < 0 : !standing.Failed[a - problem.Checks.Length]).ToList();
        var sum = standing.Shown.Aggregate(seed, (hash, shown) => (hash * 31) + shown);
        return undone.Count == 0 ? RepairStanding.HandOver : undone[new Draws((ulong)(uint)sum).Whole(0, undone.Count - 1)];
    }

    /// <summary>The costs of another problem with one check at another cost that changes nothing, or taken out.</summary>
    private sealed class LastCheckCosts(IChangeCosts costs, int check, double? cost) : IChangeCosts
    {
        public int Start => costs.Start;

        public double Cost(int position, int action) =>
            action == check && cost is { } free ? free : costs.Cost(position, Original(action));

        public int After(int position, int action) =>
            action == check && cost is not null ? position : costs.After(position, Original(action));

        private int Original(int action) => cost is null && action >= check ? action + 1 : action;
    }

    private sealed class NearAndFar : IChangeCosts
    {
        public int Start => 0;

        public double Cost(int position, int action) => action == 0 ? 1 : position == 0 ? 100 : 10;

        public int After(int position, int action) => action == 0 ? 1 : position;
    }
}
