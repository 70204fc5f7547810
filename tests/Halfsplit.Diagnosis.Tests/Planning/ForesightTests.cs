using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Diagnosis.Tests.Play;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Planning;

/// <summary>What each answer to a check would leave.</summary>
public sealed class ForesightTests
{
    public static TheoryData<string> Sheets => ["cooling-fan", "headlamps", "pump-feed"];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void An_outcome_s_typical_number_lies_in_its_range_and_the_odds_add_up(string sheet)
    {
        var circuit = ShippedSheets.Load(sheet);
        var complaint = circuit.Complaints[0];
        var job = Investigation.Open(circuit, complaint);
        var car = new SimulatedCar(circuit, complaint.Load, job.Suspects.First(s => !s.Suspect.IsNone).Faults[0]);
        for (var move = 0; move < 4 && job.Next().Check is { } check; move++)
        {
            var outcomes = job.Foresee(check);
            Assert.InRange(outcomes.Sum(o => o.Odds), 0.8, 1 + 1e-9);
            Assert.All(outcomes, o => Assert.True(
                o.Typical is not ReadingParse.Number number
                    || (number.Value >= (o.Low ?? double.NegativeInfinity) - number.Resolution
                        && number.Value <= (o.High ?? double.PositiveInfinity) + number.Resolution),
                $"{check.Id}: {o.Typical} is not in {o.Low} to {o.High}"));
            job.Record($"{move}", check, car.Answer(check));
        }
    }

    [Fact]
    public void What_is_foretold_leaves_the_job_as_it_was()
    {
        var circuit = ShippedSheets.Load("headlamps");
        var job = Investigation.Open(circuit, circuit.Complaints[0]);
        var before = job.Suspects;

        var tree = job.Foretell(3, 0.05);

        Assert.Equal(before.Select(s => (s.Suspect.Id, s.Odds)), job.Suspects.Select(s => (s.Suspect.Id, s.Odds)));
        Assert.Equal(job.Next().Check, tree.Step.Check);
        Assert.Contains(tree.Outcomes, o => o.Next is not null);
    }

    [Fact]
    public void Buying_now_is_priced_beside_the_plan_also_where_a_rule_decides()
    {
        var circuit = ShippedSheets.Load("headlamps");
        var job = Investigation.Open(circuit, circuit.Complaints[0]);
        var car = new SimulatedCar(circuit, circuit.Complaints[0].Load, Game.Fault("G5:resistive:3"));
        var byRule = 0;
        for (var move = 0; move < 20 && job.Next() is { Check: { Kind: not Checks.CheckKind.PutBack } check } step; move++)
        {
            var compared = job.Compare(step);
            if (check.Kind == Checks.CheckKind.Proof)
            {
                Assert.Null(compared);
            }
            else
            {
                byRule += step.Plan is null ? 1 : 0;
                Assert.True(compared!.Follow.Minutes >= step.Effort!.Minutes, $"{check}: {compared.Follow}");
                Assert.True(step.Plan is not null || compared.BuyNow!.Repairs.Any(r => r.Price.Middle > 0));
                var own = step.Plan is null ? job.Options.EconomyInUse.Worth(step.Effort!.Minutes + Risk.MinutesOf(circuit, check)) : 0;
                Assert.True(compared.BuyNow is null || compared.BuyNow.Way.Cost >= 0.98 * (compared.Follow.Cost - own), $"{check}: {compared}");
            }

            job.Record($"{move}", check, car.Answer(check));
        }

        Assert.True(byRule >= 2);
    }

    [Fact]
    public void Each_branch_tells_what_it_is_expected_to_take_to_the_end()
    {
        var circuit = ShippedSheets.Load("headlamps");
        var job = Investigation.Open(circuit, circuit.Complaints[0]);

        var tree = job.Foretell(3, 0.05);

        var branches = Branches(tree).ToList();
        Assert.Contains(branches, b => b.Step.Plan is null);
        Assert.All(branches, b =>
        {
            Assert.NotNull(b.Compared);
            Assert.True(b.Ahead?.Minutes >= b.Step.Effort!.Minutes, $"{b.Step.Check}: {b.Ahead}");
            Assert.True(b.Ahead?.Cost >= job.Options.EconomyInUse.Worth(b.Ahead!.Value.Minutes) + b.Ahead.Value.Price - 1e-6, $"{b.Step.Check}: {b.Ahead}");
        });
        var first = tree.Outcomes[0].Next!;
        Assert.InRange(tree.Ahead!.Value.Minutes - tree.Step.Effort!.Minutes, 0.8 * first.Ahead!.Value.Minutes, 1.2 * first.Ahead.Value.Minutes);

        static IEnumerable<PlanBranch> Branches(PlanBranch branch) =>
            branch.Outcomes.Select(o => o.Next).OfType<PlanBranch>().SelectMany(Branches).Prepend(branch);
    }
}
