using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Xunit;
using static Halfsplit.Diagnosis.Tests.Play.ClosedLoopTests;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>Doubtful readings, faults that come and go, and what lies outside the sheet.</summary>
public sealed class DoubtTests
{
    private static Investigation Pump()
    {
        var circuit = ShippedSheets.Load("pump-feed");
        return Investigation.Open(circuit, circuit.Complaints[0]);
    }

    private static void Say(Investigation investigation, string id, ReadingValue value, string? entry = null)
    {
        var check = investigation.FindCheck(id);
        Assert.True(check is not null, id);
        investigation.Record(entry ?? id, check, value);
    }

    private static ReadingParse.Word Word(AnswerWord word) => new(word);

    [Fact]
    public void A_reading_that_nothing_explains_is_pointed_out_and_asked_for_again()
    {
        var investigation = Pump();
        Say(investigation, "work of M1 | priming", Word(AnswerWord.Silent));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        Say(investigation, "volts F19.1p BODY | priming", Volts(12.5));
        Say(investigation, "volts F1.2p BODY | priming", Volts(1.25), "slip");
        Say(investigation, "volts F19.2p BODY | priming", Volts(12.5));

        var doubt = Assert.Single(investigation.Doubts);
        Assert.Equal("slip", doubt.Id);
        Assert.InRange(doubt.Odds, 0.5, 1);
        Assert.Equal(doubt.Odds, investigation.SlipOdds("slip"), 9);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(0.1)]
    [InlineData(1000)]
    public void A_mistaken_point_or_unit_is_asked_about(double factor)
    {
        var investigation = Pump();
        Say(investigation, "work of M1 | priming", Word(AnswerWord.Silent));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        Say(investigation, "volts F19.1p BODY | priming", Volts(12.5 * factor));

        var next = investigation.Next();
        Assert.Equal("volts F19.1p BODY | priming", next.Check!.Id);
        Assert.Equal("care.leads", Assert.IsType<Message>(next.Reason.Arguments[2]).Code);
    }

    [Fact]
    public void A_clamp_is_laid_on_again_as_well_where_much_hangs_on_it()
    {
        var circuit = ShippedSheets.Load("headlamps");
        var investigation = Investigation.Open(circuit, circuit.Complaints.First(c => c.Name == "left headlamp dark"));
        Say(investigation, "work of LH | dipped beam", Word(AnswerWord.Dark));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        Say(investigation, "work of RH | main beam", Word(AnswerWord.Bright));
        Say(investigation, "amps-clamp of BAT.pos~F1.1 | main beam", new ReadingParse.Number(3.2, Quantity.Amperes, 0.1), "clamp");

        Assert.True(investigation.SlipOdds("clamp") < 0.5);
        var next = investigation.Next();
        Assert.Equal("amps-clamp of BAT.pos~F1.1 | main beam", next.Check!.Id);
        Assert.Equal("care.clamp", Assert.IsType<Message>(next.Reason.Arguments[2]).Code);
    }

    [Fact]
    public void A_repeat_with_the_right_leads_takes_the_slip_back()
    {
        var investigation = Pump();
        Say(investigation, "work of M1 | priming", Word(AnswerWord.Silent));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        var before = Odds(investigation, "M1 open");
        Say(investigation, "volts F19.1p BODY | priming", Volts(0.0));
        var believed = Odds(investigation, "M1 open");
        Say(investigation, "volts F19.1p BODY | priming", Volts(12.52), "2");

        Assert.True(believed < 0.1 * before, $"{believed} of {before}");
        Assert.True(Odds(investigation, "M1 open") > 0.8 * before, $"{Odds(investigation, "M1 open")} of {before}");
    }

    [Fact]
    public void The_same_wrong_reading_twice_is_never_certain()
    {
        var investigation = Pump();
        Say(investigation, "work of M1 | priming", Word(AnswerWord.Silent));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        Say(investigation, "volts F19.2p BODY | priming", Volts(12.5));
        Say(investigation, "volts F19.1p BODY | priming", Volts(0.01), "1");
        var once = investigation.SlipOdds("1");
        for (var i = 2; i < 6; i++)
        {
            Say(investigation, "volts F19.1p BODY | priming", Volts(0.01), $"{i}");
        }

        // Volts behind the fuse and none before it: the same wrong pin, however often.
        Assert.True(once > 0.5, $"{once}");
        Assert.True(investigation.SlipOdds("1") > 0.25, $"{investigation.SlipOdds("1")}");
    }

    [Fact]
    public void A_load_that_works_at_the_moment_keeps_the_joints_alive_and_the_harness_is_moved()
    {
        var investigation = Pump();
        var joint = Odds(investigation, "C3.4 open");
        Say(investigation, "work of M1 | priming", Word(AnswerWord.Runs));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));

        Assert.True(investigation.WorksNow);
        Assert.True(Odds(investigation, "C3.4 open") > joint, "a joint can be good for a while");
        Assert.True(Odds(investigation, "M1 seized") < 0.01, "what is seized can't");
        Assert.True(Odds(investigation, "none of these") < 0.5);
        var next = investigation.Next();
        Assert.Equal(CheckSubject.Wiggle, next.Check!.Subject);
        Assert.Equal("reason.move-harness", next.Reason.Code);
    }

    [Fact]
    public void What_jumps_is_blamed_and_mended()
    {
        var investigation = Pump();
        Say(investigation, "work of M1 | priming", Word(AnswerWord.Runs));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        for (var i = 0; i < 12 && investigation.Next().Check is { } check; i++)
        {
            if (check.Kind == CheckKind.Repair)
            {
                Assert.Contains("C3", check.RepairId, StringComparison.Ordinal);
                return;
            }

            investigation.Record($"{i}", check, check.Subject switch
            {
                CheckSubject.Wiggle => Word(check.Probe.About == "C3" ? AnswerWord.Jumps : AnswerWord.Steady),
                CheckSubject.LoadWork => Word(AnswerWord.Runs),
                CheckSubject.PinFit => Word(check.Probe.About == "C3" ? AnswerWord.Loose : AnswerWord.Tight),
                _ => Word(AnswerWord.NotSure),
            });
        }

        var at = investigation.Suspects.Where(s => s.Suspect.Id.StartsWith("C3", StringComparison.Ordinal)).Sum(s => s.Odds);
        Assert.True(at > 0.5, string.Join("; ", investigation.Suspects.Take(6).Select(s => $"{s.Suspect.Id} {s.Odds:0.00}")));
    }

    [Fact]
    public void Where_one_joint_jumped_it_is_looked_at_and_not_waited_for()
    {
        var circuit = ShippedSheets.Load("fan-one-relay");
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        var whole = new SimulatedCar(circuit, circuit.Complaints[0].Load, []);
        var jumped = false;
        var asked = new List<string>();
        for (var i = 0; i < 12; i++)
        {
            var next = investigation.Next();
            Assert.True(next.Check is not null, next.Reason.Code + " " + string.Join("; ", investigation.Suspects.Take(6).Select(s => $"{s.Suspect.Id} {s.Odds:0.00}")));
            if (next.Check is { Kind: CheckKind.Repair } or { Subject: CheckSubject.PinFit }
                && (next.Check.RepairId ?? next.Check.Probe.About!).Contains("C5", StringComparison.Ordinal))
            {
                Assert.True(jumped);
                return;
            }

            asked.Add($"{next.Check!.Id} {next.Reason.Code}");
            jumped |= next.Check.Subject == CheckSubject.Wiggle && next.Check.Probe.About == "C5";
            investigation.Record($"{i}", next.Check, next.Check.Subject == CheckSubject.Wiggle
                ? Word(next.Check.Probe.About == "C5" ? AnswerWord.Jumps : AnswerWord.Steady)
                : whole.Answer(next.Check));
        }

        Assert.Fail("C5 was neither looked at nor mended: " + string.Join("; ", asked));
    }

    [Fact]
    public void An_absurd_reading_taken_twice_speaks_no_less_for_none_of_these()
    {
        var circuit = ShippedSheets.Load("horn");
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        Say(investigation, "work of HH | horn pressed", Word(AnswerWord.Silent));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        Say(investigation, "volts F6.1p BODY | key off", Volts(5.4));
        Say(investigation, "volts F6.1p BODY | key off", Volts(5.4), "again");
        var twice = Odds(investigation, "none of these");
        Say(investigation, "volts F6.1p BODY | key off", Volts(5.4), "and again");

        Assert.True(Odds(investigation, "none of these") > 0.8 * twice, $"{twice} {Odds(investigation, "none of these")}");
    }

    [Fact]
    public void Posts_that_can_not_be_reached_are_not_asked_for()
    {
        var circuit = ShippedSheets.Load("horn");
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        Say(investigation, "work of HH | horn pressed", Word(AnswerWord.Silent));
        investigation.Skip("out of reach", investigation.Next().Check!, "engine bay");

        Assert.DoesNotContain("BAT.", investigation.Next().Check!.Id, StringComparison.Ordinal);
    }

    [Fact]
    public void A_short_is_mended_and_then_the_fuse_that_it_blew_is_renewed()
    {
        var circuit = ShippedSheets.Load("indicators");
        var complaint = circuit.Complaints[0];
        var car = new SimulatedCar(circuit, complaint.Load, Game.Fault("LSP~C3.1a:short-to-ground"));
        var investigation = Investigation.Open(circuit, complaint);
        for (var i = 0; i < 40; i++)
        {
            var next = investigation.Next();
            if (next.Check is { Kind: CheckKind.Repair, RepairId: "mend-wire LSP~C3.1a" })
            {
                Assert.Contains("F16", next.Finding!.Repair.Renews);
                Assert.Contains(next.Effort!.Steps, s => s.Code == "repair.renew-fuse");
                Assert.True(next.Effort.Minutes > next.Finding.Repair.Minutes + 1);
                return;
            }

            investigation.Record($"{i}", next.Check!, car.Answer(next.Check!));
        }

        Assert.Fail("The short was not blamed.");
    }

    [Fact]
    public void Where_nothing_moves_it_the_person_waits_and_is_then_told_what_lies_outside()
    {
        var investigation = Pump();
        Say(investigation, "work of M1 | priming", Word(AnswerWord.Runs));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        var codes = new List<string>();
        for (var i = 0; i < 20; i++)
        {
            var next = investigation.Next();
            codes.Add(next.Reason.Code);
            if (next.Check is null)
            {
                break;
            }

            investigation.Record($"{i}", next.Check, next.Check.Subject == CheckSubject.Wiggle
                ? Word(AnswerWord.Steady)
                : next.Check.TakesNumber ? Volts(12.6) : Word(AnswerWord.Runs));
        }

        Assert.Contains("reason.wait-for-it", codes);
        Assert.Equal("reason.works-now", codes[^1]);
        var outside = investigation.Next().Outside;
        Assert.NotNull(outside);
        Assert.Contains(outside.Causes, c => c.Code == "outside.empty-tank");
    }

    [Fact]
    public void A_number_that_jumps_blames_the_joints_on_its_path()
    {
        var investigation = Pump();
        Say(investigation, "work of M1 | priming", Word(AnswerWord.Silent));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        var joint = Odds(investigation, "F19.2 open");
        var elsewhere = Odds(investigation, "M1 seized");
        Say(investigation, "volts F19.2 BODY | priming; remove F19", Volts(0), "unused");
        investigation.Withdraw("unused");
        Say(investigation, "volts C1.2a BODY | priming", new ReadingParse.Number(11.9, Quantity.Volts, 0.1) { Unsteady = true });

        Assert.True(Odds(investigation, "F19.2 open") > 1.5 * joint);
        Assert.True(Odds(investigation, "M1 seized") < elsewhere);
    }

    [Fact]
    public void Readings_that_fit_nothing_lead_outside_the_sheet()
    {
        var investigation = Pump();
        Say(investigation, "work of M1 | priming", Word(AnswerWord.Silent));
        Say(investigation, "volts BAT.pos BAT.neg | key off", Volts(12.6));
        foreach (var (id, volts) in ((string, double)[])[
            ("volts F19.1p BODY | priming", 5.1), ("volts F19.2p BODY | priming", 8.3), ("volts F1.2p BODY | priming", 2.2),
            ("volts F18.1p BODY | priming", 7.4), ("volts F18.2p BODY | priming", 3.3), ("volts F2.1p BODY | priming", 9.7), ("volts F3.1p BODY | priming", 1.1),
            ("volts F4.2p BODY | priming", 10.9), ("volts F3.2p BODY | priming", 6.1), ("volts F1.1p BODY | priming", 4.4)])
        {
            Say(investigation, id, Volts(volts));
        }

        var outside = investigation.OutsideTheSheet;
        Assert.NotNull(outside);
        Assert.InRange(outside.Odds, 0.15, 1);
        Assert.Contains(outside.Causes, c => c.Code == "outside.sheet-differs");
        Assert.NotEmpty(outside.Compare);
    }
}
