using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Xunit;
using static Halfsplit.Diagnosis.Tests.Play.ClosedLoopTests;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>What proves a repair follows from what was repaired; the job ends when the car is put back.</summary>
[Trait("Pace", "slow")]
public sealed class ProofTests
{
    /// <summary>Repairs at once and answers every proof as the healthy car; gives the steps after the repair.</summary>
    private static (List<NextStep> Steps, Investigation Investigation) Prove(
        string sheet, string complaint, string repair, Func<Check, ReadingValue?>? otherwise = null, Action<Investigation>? before = null)
    {
        var circuit = ShippedSheets.Load(sheet);
        var about = circuit.Complaints.First(c => c.Name == complaint);
        var investigation = Investigation.Open(circuit, about);
        before?.Invoke(investigation);
        var target = repair[(repair.IndexOf(' ', StringComparison.Ordinal) + 1)..];
        investigation.Record("repair", investigation.FindCheck($"repair of {target} {repair} | key off")!, Done());
        var car = new SimulatedCar(circuit, about.Load);
        var steps = new List<NextStep>();
        for (var i = 0; i < 15; i++)
        {
            var next = investigation.Next();
            steps.Add(next);
            if (next.Check is not { Kind: CheckKind.Proof or CheckKind.PutBack } check)
            {
                break;
            }

            Assert.Equal(check, investigation.FindCheck(check.Id));
            investigation.Record($"proof {i}", check, otherwise?.Invoke(check) ?? car.Answer(check));
        }

        return (steps, investigation);
    }

    private static ReadingParse.Word Done() => new(AnswerWord.Done);

    [Fact]
    public void A_new_pump_is_proven_by_work_volts_repeats_and_five_minutes_of_running_then_the_car_is_put_back()
    {
        var (steps, _) = Prove("pump-feed", "pump does not run", "replace M1");

        var subjects = steps.Where(s => s.Check?.Kind == CheckKind.Proof).Select(s => s.Check!.Subject).ToList();
        Assert.Equal([CheckSubject.LoadWork, CheckSubject.Number], subjects.Take(2));
        Assert.Contains(CheckSubject.WorkAgain, subjects);
        Assert.Contains(CheckSubject.WorkHot, subjects);
        Assert.InRange(subjects.Count, 4, 7);
        Assert.Equal(CheckKind.PutBack, steps[^2].Check!.Kind);
        Assert.False(steps[^2].IsProven);
        Assert.Contains(steps[^2].PutBack, i => i.Id.StartsWith("close ", StringComparison.Ordinal));
        Assert.Equal(steps[^2].PutBack.Sum(i => i.Minutes), steps[^2].Effort!.Minutes, 2);
        Assert.True(steps[^1].IsProven);
    }

    [Fact]
    public void A_cleaned_ground_is_moved_by_hand_its_drop_is_read_and_what_shares_it_must_work()
    {
        var (steps, _) = Prove("headlamps", "both headlamps dim", "clean-ground G5");

        var proofs = steps.Where(s => s.Check?.Kind == CheckKind.Proof).Select(s => s.Check!).ToList();
        Assert.Contains(proofs, c => c.Subject == CheckSubject.Wiggle && c.Probe.About == "G5");
        Assert.Contains(proofs, c => c.Subject == CheckSubject.LoadWork && c.Probe.About != "LH");
        Assert.True(steps[^1].IsProven);
    }

    [Fact]
    public void The_drop_of_a_cleaned_ground_is_read_at_that_ground_whatever_else_stands_open()
    {
        var (steps, _) = Prove("headlamps", "both headlamps dim", "clean-ground G5", before: i => i.Record(
            "fuse", i.FindCheck("volts F23.2p BAT.neg | main beam")!, Volts(12.4)));

        var drop = Assert.Single(steps, s => s.Reason.Code == "reason.proof-drop").Check!;
        Assert.Contains("G5", new[] { drop.Probe.Red?.Part, drop.Probe.Black?.Part });
    }

    [Theory]
    [InlineData("fans-series-parallel", "left fan stands", "replace FANL", "fans low")]
    [InlineData("fans-series-parallel", "engine overheats", "clean-ground G2", "fans low")]
    public void A_sibling_is_not_looked_at_where_it_may_be_slow_with_nothing_wrong(string sheet, string complaint, string repair, string condition)
    {
        var (steps, investigation) = Prove(sheet, complaint, repair);

        Assert.DoesNotContain(steps, s => s.Reason.Code == "reason.proof-sibling" && s.Check!.Arrangement.Condition == condition);
        Assert.True(investigation.IsProven);
    }

    [Fact]
    public void A_fuse_that_was_blown_has_to_carry_a_healthy_current_and_stay_whole()
    {
        var (steps, _) = Prove("pump-feed", "pump does not run", "replace F19", before: investigation => investigation.Record(
            "look", investigation.FindCheck("fuse of F19 | key off")!, new ReadingParse.Word(AnswerWord.Blown)));

        var codes = steps.Where(s => s.Check?.Kind == CheckKind.Proof).Select(s => s.Reason.Code).ToList();
        Assert.Contains("reason.proof-fuse-amps", codes);
        Assert.Contains("reason.proof-fuse-whole", codes);
    }

    [Fact]
    public void A_fuse_that_draws_too_much_is_not_proven()
    {
        var (steps, investigation) = Prove(
            "pump-feed", "pump does not run", "replace F19",
            check => check.Probe switch
            {
                { Instrument: Simulation.Instruments.Instrument.AmpsClamp } => new ReadingParse.Number(14.2, Quantity.Amperes, 0.01),
                { Red.Part: "F19" } => Volts(0.09, 0.0001),
                _ => null,
            },
            investigation => investigation.Record(
                "look", investigation.FindCheck("fuse of F19 | key off")!, new ReadingParse.Word(AnswerWord.Blown)));

        Assert.Contains(steps, s => s.Reason.Code == "reason.proof-fuse-amps");
        Assert.False(steps[^1].IsProven);
        Assert.NotEqual(CheckKind.PutBack, steps[^1].Check?.Kind);
        Assert.False(investigation.Next().IsProven);
    }

    [Fact]
    public void A_mended_contact_that_jumps_when_it_is_moved_is_not_proven()
    {
        var (steps, _) = Prove(
            "pump-feed", "pump does not run", "mend-contact C3.4",
            check => check.Subject == CheckSubject.Wiggle ? new ReadingParse.Word(AnswerWord.Jumps) : null);

        Assert.Contains(steps, s => s.Check?.Subject == CheckSubject.Wiggle);
        Assert.False(steps[^1].IsProven);
        Assert.DoesNotContain(steps, s => s.Check?.Kind == CheckKind.PutBack);
    }

    [Fact]
    public void The_minutes_of_putting_back_are_those_of_what_was_opened_on_the_way()
    {
        var played = Game.Play("pump-feed", "pump does not run", "C3.4:resistive:8");

        Assert.True(played.IsProven, played.ToString());
        Assert.Equal(CheckKind.PutBack, played.Moves[^1].Check.Kind);
        Assert.Equal(["last-look"], played.Investigation.PutBackList.Select(i => i.Id));
    }

    /// <summary>The fan runs again, and the leads go to the same dead pin at every proof.</summary>
    [Fact]
    public void A_proof_that_fails_at_one_pin_is_taken_at_another_before_anything_is_given_up()
    {
        var circuit = ShippedSheets.Load("cooling-fan");
        var complaint = circuit.Complaints.First(c => c.Name == "fan never runs");
        var car = new SimulatedCar(circuit, complaint.Load, Game.Fault("G1:open"));
        var investigation = Investigation.Open(circuit, complaint);
        var proofs = new List<string>();
        var step = investigation.Next();
        for (var move = 0; move < 45 && step.Check is { } check; move++)
        {
            var value = car.Answer(check);
            if (check.Kind == CheckKind.Proof && check.Subject == CheckSubject.Number && (proofs.Count == 0 || proofs[0] == check.Id))
            {
                proofs.Add(check.Id);
                value = new ReadingParse.Number(0.02, Quantity.Volts, 0.01);
            }

            investigation.Record($"{move}", check, value);
            step = investigation.Next();
        }

        Assert.True(step.IsProven);
        Assert.InRange(proofs.Count, 2, 3);
    }
}
