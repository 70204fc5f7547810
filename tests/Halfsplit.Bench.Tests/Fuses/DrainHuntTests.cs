using Halfsplit.Bench.Fuses;
using Xunit;

namespace Halfsplit.Bench.Tests.Fuses;

public sealed class DrainHuntTests
{
    [Fact]
    public void Fuses_that_resolve_the_excess_come_first_and_the_finest_before_the_others()
    {
        var plan = Plan(0.1, "F1 40A", "F2 10A", "F3 5A", "F4 20A");

        Assert.Equal(["F3", "F2", "F4", "F1"], plan.Lines.Select(l => l.Fuse.Name));
        Assert.Equal([true, true, true, false], plan.Lines.Select(l => l.CanResolve));
    }

    // A car simulated here: 20 mA asleep, and 330 mA more through F7.
    [Fact]
    public void The_circuit_that_draws_is_found_and_the_rest_explained()
    {
        var answer = DrainHuntAnswer.Of(Plan(0.35, "F1 10A = 0.1", "F7 20A = 1.1", "F9 15A = 0"));

        Assert.Equal("bench-hunt.found", answer.Judgements[0].Code);
        Assert.StartsWith("F7 carries 325 mA", Said.Text(answer.Judgements[0]), StringComparison.Ordinal);
        Assert.DoesNotContain(answer.Judgements, j => j.Code is "bench-hunt.elsewhere" or "bench-hunt.go-on");
    }

    [Fact]
    public void A_path_without_a_fuse_is_thought_of() =>
        Assert.Contains(DrainHuntAnswer.Of(Plan(0.6, "F1 5A = 0", "F2 7.5A = 0")).Judgements, j => j.Code == "bench-hunt.elsewhere");

    [Fact]
    public void Fuses_not_measured_yet_come_before_other_paths() =>
        Assert.Contains(DrainHuntAnswer.Of(Plan(0.6, "F1 5A = 0", "F2 7.5A")).Judgements, j => j.Code == "bench-hunt.go-on");

    [Fact]
    public void No_fuse_is_pulled_before_everything_else_is_done()
    {
        var steps = DrainHuntAnswer.Of(Plan(0.6, "F1 5A", "F2 40A")).Steps.Select(s => s.Code).ToList();

        Assert.Equal("bench-hunt.prepare", steps[0]);
        Assert.Equal("bench-hunt.total", steps[1]);
        Assert.Contains("bench-hunt.unfused", steps);
        Assert.Equal("bench-hunt.pull-last", steps[^1]);
    }

    [Fact]
    public void A_car_that_sleeps_well_has_nothing_to_find() =>
        Assert.Equal(["bench-hunt.nothing-to-find"], DrainHuntAnswer.Of(Plan(0.03, "F1 5A")).Judgements.Select(j => j.Code));

    [Fact]
    public void What_is_impossible_is_refused_with_the_range()
    {
        Said.Refused(HuntFuse.Parse("F1"), "F12", "0.4");
        Said.Refused(DrainHunt.Of(new HuntQuestion([Said.Good(HuntFuse.Parse("F1 5A"))], 40, 0.05, 1e-4)), "0 A", "10 A");
        Said.Refused(DrainHunt.Of(new HuntQuestion([], 1, 0.05, 1e-4)), "--fuse", "one");
    }

    private static HuntPlan Plan(double total, params string[] fuses) =>
        Said.Good(DrainHunt.Of(new HuntQuestion([.. fuses.Select(f => Said.Good(HuntFuse.Parse(f)))], total, 0.05, 1e-4)));
}
