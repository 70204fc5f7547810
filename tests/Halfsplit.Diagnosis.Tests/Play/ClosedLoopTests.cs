using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>The engine against hidden cars, from the complaint to the proven repair.</summary>
[Trait("Pace", "slow")]
public sealed class ClosedLoopTests
{
    private const string NoPump = "pump does not run";

    [Theory]
    [InlineData("pump-feed", NoPump, "G2:open", "clean-ground G2")]
    [InlineData("pump-feed", NoPump, "G2:resistive:30", "clean-ground G2")]
    [InlineData("pump-feed", NoPump, "M1:open", "replace M1")]
    [InlineData("pump-feed", NoPump, "M1:seized", "replace M1")]
    [InlineData("pump-feed", NoPump, "K2:contact-open", "replace K2")]
    [InlineData("pump-feed", NoPump, "K2:coil-open", "replace K2")]
    [InlineData("pump-feed", NoPump, "K1:stuck", "replace K1")]
    [InlineData("pump-feed", NoPump, "F19:open", "replace F19")]
    [InlineData("pump-feed", NoPump, "S1:tripped", "reset-or-replace S1")]
    [InlineData("pump-feed", NoPump, "C3.4:resistive:8", "mend-contact C3.4")]
    [InlineData("pump-feed", NoPump, "K2.87~C1.2a:short-to-ground", "mend-wire K2.87~C1.2a")]
    [InlineData("pump-feed", "engine starves under load", "C3.3:resistive:0.7", "mend-contact C3.3")]
    [InlineData("cooling-fan", "fan never runs", "FAN:open", "replace FAN")]
    [InlineData("cooling-fan", "fan never runs", "K6:contact-open", "replace K6")]
    [InlineData("cooling-fan", "fan has no low speed", "R1:open", "replace R1")]
    [InlineData("headlamps", "left headlamp dark", "LH.56b:open", "replace LH")]
    public void A_fault_is_found_and_its_repair_is_proven(string sheet, string complaint, string fault, string repair)
    {
        var played = Game.Play(sheet, complaint, fault);

        Assert.True(played.IsProven, played.ToString());
        Assert.Equal(repair, played.Findings[^1].Repair.Id);
        // However often readings agree; what is shown ends at "over 99 %" anyway.
        Assert.All(played.Findings, f => Assert.InRange(f.Odds, 0.0, 1 - 1e-9));
    }

    [Fact]
    public void The_first_checks_reproduce_the_complaint_and_read_the_posts()
    {
        var played = Game.Play("pump-feed", NoPump, "G2:open");

        Assert.Equal("work of M1 | priming", played.Moves[0].Check.Id);
        Assert.Equal("volts BAT.pos BAT.neg | key off", played.Moves[1].Check.Id);
    }

    [Fact]
    public void Before_a_pump_is_bought_its_feed_has_to_carry_current_and_a_second_fault_is_found()
    {
        // The pump is open, and the wire that feeds it has burnt to 15 ohms: nothing flows, so battery volts stand at
        // the plug all the same.
        var played = Game.Play("pump-feed", NoPump, "M1:open", "S1.2~C3.4a:resistive:15");

        var lamp = played.Moves.Select(m => m.Check).ToList().FindIndex(c => c.Subject == CheckSubject.LampGlow && c.Probe.About == "M1");
        var bought = played.Moves.Select(m => m.Check).ToList().FindIndex(c => c.RepairId == "replace M1");
        Assert.True(lamp >= 0, played.ToString());
        Assert.True(bought < 0 || lamp < bought, played.ToString());
        Assert.True(played.IsProven, played.ToString());
        Assert.Contains(played.Findings, f => f.Repair.Id == "mend-wire S1.2~C3.4a");
        Assert.Contains(played.Findings, f => f.Repair.Id == "replace M1");
    }

    [Fact]
    public void What_hid_behind_a_mended_fault_is_found_without_a_wrong_repair()
    {
        var played = Game.Play("cooling-fan", "engine overheats", "F14:open", "K6:contact-open");

        Assert.True(played.IsProven, played.ToString());
        Assert.Equal(["replace F14", "replace K6"], played.Findings.Select(f => f.Repair.Id));
    }

    [Fact]
    public void A_repair_that_does_not_cure_is_evidence_and_the_job_goes_on()
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var complaint = circuit.Complaints[0];
        var investigation = Investigation.Open(circuit, complaint);
        var repair = investigation.FindCheck("repair of M1 replace M1 | key off")!;
        investigation.Record("repair", repair, new ReadingParse.Word(AnswerWord.Done));

        var proof = investigation.Next().Check!;
        Assert.Equal(CheckKind.Proof, proof.Kind);
        var before = Odds(investigation, "M1 open");
        investigation.Record("proof", proof, new ReadingParse.Word(AnswerWord.Silent));

        Assert.True(Odds(investigation, "M1 open") < 0.2 * before);
        Assert.NotEqual(CheckKind.Repair, investigation.Next().Check!.Kind);
    }

    [Fact]
    public void Nothing_that_is_read_twice_over_makes_certainty()
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        var check = investigation.FindCheck("volts F19.2p BODY | priming")!;
        investigation.Record("1", check, Volts(12.4));
        var once = Odds(investigation, "M1 open");
        for (var i = 2; i < 8; i++)
        {
            investigation.Record($"{i}", check, Volts(12.4));
        }

        // The same volts on the same tab say next to nothing more about the pump.
        Assert.InRange(Odds(investigation, "M1 open"), 0.8 * once, 1.25 * once);
    }

    internal static double Odds(Investigation investigation, string suspect) =>
        investigation.Suspects.Where(s => s.Suspect.Id == suspect).Sum(s => s.Odds);

    internal static ReadingValue Volts(double volts, double step = 0.01) =>
        new ReadingParse.Number(volts, Quantity.Volts, step);
}
