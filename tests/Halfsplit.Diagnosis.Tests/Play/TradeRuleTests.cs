using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Readings;
using Xunit;
using static Halfsplit.Diagnosis.Tests.Play.ClosedLoopTests;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>Rules of the trade that must come out of the computation: common practice, no published source.</summary>
public sealed class TradeRuleTests
{
    private static Investigation Pump()
    {
        var circuit = ShippedSheets.Load("pump-feed");
        return Investigation.Open(circuit, circuit.Complaints[0]);
    }

    /// <summary>All the odds on resistance, but no break, in the pump's feed ahead of its plug.</summary>
    private static double ResistiveFeed(Investigation investigation) =>
        Odds(investigation, "S1.2~C3.4a resistive") + Odds(investigation, "C1.2b~S1.1 resistive") + Odds(investigation, "C1.2 resistive");

    [Fact]
    public void Battery_volts_across_a_dead_commanded_load_condemn_the_load()
    {
        var investigation = Pump();
        var car = new SimulatedCar(investigation.Circuit, "M1", Game.Fault("M1:open"));
        foreach (var id in (string[])["work of M1 | priming", "volts BAT.pos BAT.neg | key off", "volts C3.4b C3.3b | priming"])
        {
            var check = investigation.FindCheck(id)!;
            investigation.Record(id, check, car.Answer(check));
        }

        var pump = investigation.Suspects.Where(s => s.Suspect.Id.StartsWith("M1 ", StringComparison.Ordinal)).Sum(s => s.Odds);
        Assert.True(pump > 0.9, string.Join("; ", investigation.Suspects.Take(8).Select(s => $"{s.Suspect.Id} {s.Odds:0.000}")));
    }

    [Fact]
    public void Volts_on_an_unloaded_wire_clear_a_break_but_not_resistance()
    {
        var investigation = Pump();
        investigation.Record("1", investigation.FindCheck("work of M1 | priming")!, new ReadingParse.Word(AnswerWord.Silent));
        investigation.Record("2", investigation.FindCheck("volts BAT.pos BAT.neg | key off")!, Volts(12.6));
        var open = Odds(investigation, "S1.2~C3.4a open");
        var resistive = ResistiveFeed(investigation);

        // Pump unplugged, key to priming, nothing flows: full volts at the plug.
        investigation.Record("3", investigation.FindCheck("volts C3.4a BODY | priming; unplug C3")!, Volts(12.5));

        Assert.True(Odds(investigation, "S1.2~C3.4a open") < 0.05 * open, "a break would show");
        Assert.True(ResistiveFeed(investigation) > 0.8 * resistive, "resistance would not");
    }

    [Fact]
    public void A_loaded_reading_drops_the_resistive_feed()
    {
        var investigation = Pump();
        investigation.Record("1", investigation.FindCheck("work of M1 | priming")!, new ReadingParse.Word(AnswerWord.Silent));
        investigation.Record("2", investigation.FindCheck("volts BAT.pos BAT.neg | key off")!, Volts(12.6));
        var resistive = ResistiveFeed(investigation);
        var lamp = investigation.FindCheck("lamp 55 W C3.4a C3.3a of M1 | priming; unplug C3")!;
        investigation.Record("3", lamp, Volts(12.1));

        // A slip leaves about a thirtieth, a joint that comes and goes and was good just then (5 % times 40 %) a fiftieth.
        Assert.True(ResistiveFeed(investigation) < 0.06 * resistive, $"{ResistiveFeed(investigation)} of {resistive}");
    }

    [Fact]
    public void A_continuity_beep_does_not_clear_half_an_ohm_in_the_ground_wire()
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var weak = circuit.Complaints.First(c => c.Is == LoadCondition.Weak);
        var investigation = Investigation.Open(circuit, weak);
        var before = Odds(investigation, "C3.3a~G2 resistive");
        investigation.Record("1", investigation.FindCheck("continuity C3.3a BODY | key off; unplug C3")!, new ReadingParse.Word(AnswerWord.Beeps));

        Assert.True(Odds(investigation, "C3.3a~G2 resistive") > 0.9 * before);
    }

    [Fact]
    public void A_relay_that_clicks_has_a_good_coil_but_its_contacts_stay_suspect()
    {
        var investigation = Pump();
        var coil = Odds(investigation, "K2 coil open");
        var contacts = Odds(investigation, "K2 contact open");
        investigation.Record("1", investigation.FindCheck("click of K2 | priming")!, new ReadingParse.Word(AnswerWord.Clicks));

        Assert.True(Odds(investigation, "K2 coil open") < 0.2 * coil);
        Assert.True(Odds(investigation, "K2 contact open") > contacts);
    }

    [Fact]
    public void A_fuse_blown_by_a_short_blows_again_when_only_the_fuse_is_replaced()
    {
        var investigation = Pump();
        investigation.Record("look", investigation.FindCheck("fuse of F19 | key off")!, new ReadingParse.Word(AnswerWord.Blown));
        investigation.Record("repair", investigation.FindCheck("repair of F19 replace F19 | key off")!, new ReadingParse.Word(AnswerWord.Done));
        investigation.Record("proof", investigation.FindCheck("proof work of M1 | priming")!, new ReadingParse.Word(AnswerWord.Silent));
        investigation.Record("again", investigation.FindCheck("fuse of F19 | key off")!, new ReadingParse.Word(AnswerWord.Blown));

        var shorts = investigation.Suspects
            .Where(s => s.Suspect.Id.Contains("short", StringComparison.Ordinal) || s.Suspect.Id == "M1 seized")
            .Sum(s => s.Odds);
        Assert.True(shorts > 0.8, string.Join("; ", investigation.Suspects.Take(6).Select(s => $"{s.Suspect.Id} {s.Odds:0.00}")));
    }
}
