using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Tests.Play;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Planning;

/// <summary>A dearer check may come first for what it tells, and never by more than the estimates leave open; that is said, and nothing else is taken for it.</summary>
public sealed class PlanOrderTests
{
    [Theory]
    [InlineData("pump-feed", "M1:open", "G2:resistive:2", "K2:contact-open")]
    [InlineData("headlamps", "G5:resistive:0.5", "K8:contact-open")]
    public void A_check_that_is_dearer_than_the_next_comes_first_by_what_it_tells(string sheet, params string[] faults)
    {
        var circuit = ShippedSheets.Load(sheet);
        var byTelling = 0;
        foreach (var fault in faults)
        {
            var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
            var car = new SimulatedCar(circuit, circuit.Complaints[0].Load, Game.Fault(fault));
            for (var i = 0; i < 8 && investigation.Next() is { Check: { } check } next && next.Finding is null; i++)
            {
                byTelling += next.Plan is { } plan && IsExplained(plan) ? 1 : 0;
                investigation.Record($"{i}", check, car.Answer(check));
            }
        }

        Assert.True(byTelling > 0, "no plan of these began with a dearer check");
    }

    [Fact]
    public void A_check_before_handing_over_does_not_come_first_by_what_it_tells()
    {
        var investigation = Investigation.Open(ShippedSheets.Load("horn"), ShippedSheets.Load("horn").Complaints[0]);
        var check = investigation.RankedNow()[0].Check;
        var handOver = new PlannedStep(null, [], 0, 0, new PlanValue(100, 0, 0));

        Assert.False(new Plan([new PlannedStep(check, [], 1, 0, new PlanValue(101, 9, 0)), handOver], 1).IsFirstByTelling);
    }

    private static bool IsExplained(Plan plan)
    {
        var cheapest = plan.Steps.MinBy(s => s.Way.Cost)!;
        if (plan.Best.Check is not null && !cheapest.IsHandOver)
        {
            Assert.True(plan.Best.Way.Cost <= cheapest.Way.Cost + (PlanningProblem.Slack * cheapest.Way.Estimated) + 1e-9);
            Assert.Equal(plan.Best.Way.Cost > cheapest.Way.Cost + 1e-9, plan.IsFirstByTelling);
        }

        return plan.IsFirstByTelling;
    }
}
