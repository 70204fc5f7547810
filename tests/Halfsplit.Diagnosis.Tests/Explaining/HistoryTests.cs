using Xunit;

namespace Halfsplit.Diagnosis.Tests.Explaining;

public sealed class HistoryTests
{
    private static readonly string[] Checks =
        ["work of M1 | priming", "volts BAT.pos BAT.neg | key off", "work of L1 | key on", "click of K2 | priming"];

    [Theory]
    [InlineData("M1 open")]
    [InlineData("G2 open")]
    [InlineData("none of these")]
    public void The_steps_lead_from_the_complaint_to_the_present_odds_without_a_gap(string name)
    {
        var investigation = Readings.Of("pump-feed", "M1:open", Checks);
        var suspect = investigation.Suspects.First(s => s.Suspect.Id == name);
        var history = investigation.HistoryOf(suspect.Suspect);

        Assert.Equal(Checks.Length, history.Steps.Length);
        Assert.Equal(history.AfterComplaint, history.Steps[0].Before, 12);
        for (var i = 1; i < history.Steps.Length; i++)
        {
            Assert.Equal(history.Steps[i - 1].After, history.Steps[i].Before, 12);
        }

        Assert.Equal(suspect.Odds, history.Odds, 12);
        Assert.InRange(history.Weight, 1e-6, 0.5);
    }

    [Fact]
    public void A_step_says_what_the_person_saw_then()
    {
        var history = Readings.Of("pump-feed", "M1:open", Checks) is var all
            ? all.HistoryOf(all.Suspects.First(s => s.Suspect.Id == "G2 open").Suspect) : null!;
        var then = Readings.Of("pump-feed", "M1:open", Checks[..2]);
        var without = Readings.Of("pump-feed", "M1:open", [.. Checks[..2], Checks[3]]);

        Assert.Equal(then.Suspects.First(s => s.Suspect.Id == "G2 open").Odds, history.Steps[2].Before, 9);
        Assert.Equal(without.Suspects.First(s => s.Suspect.Id == "G2 open").Odds, history.Steps[2].Without, 9);
        // The lamp on the same ground shines: that ground is not open.
        Assert.InRange(history.Steps[2].Factor, 0, 0.05);
        Assert.InRange(history.Steps[2].FactorAsLast, 0, 0.05);
    }
}
