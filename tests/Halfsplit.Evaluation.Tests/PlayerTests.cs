using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Evaluation.Play;
using Halfsplit.Evaluation.Players;
using Halfsplit.Jobs.Practice;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Evaluation.Tests;

[Trait("Pace", "slow")]
public sealed class PlayerTests
{
    private static readonly Variant Base = Variant.Find("base")!;
    private static readonly Workplace Lamps = Place("headlamps", "both headlamps dim");
    private static readonly Workplace Dark = Place("headlamps", "left headlamp dark");

    private static Workplace Place(string sheet, string complaint)
    {
        var circuit = ShippedSheets.Load(sheet);
        return new Workplace(circuit, circuit.Complaints.First(c => c.Name == complaint), Base);
    }

    /// <summary>A car of the sheet's own values without slips.</summary>
    private static Attempt Play(IPlayer player, Workplace place, params Fault[] faults)
    {
        var car = PracticeCar.Of(place.Simulator, place.Complaint, Meter.Default, [.. faults], new SeededChance(5));
        var attempt = new Attempt(place, new TestCar(car, new SlippingHand(place.Simulator.Network, 1, 0, false), null));
        attempt.Play(player);
        return attempt;
    }

    private static string Story(Attempt attempt) =>
        string.Join("\n", attempt.Log.Select(e => $"{e.Check.Id} => {e.Value}")) + "\n" + string.Join(", ", attempt.Repairs.Select(r => r.Repair.Id));

    public static TheoryData<string> Thinking => [.. AllPlayers.Make().Select(p => p.Name).Except(["likeliest-part", "fixed-order"])];

    [Theory]
    [MemberData(nameof(Thinking))]
    public void An_open_filament_is_found_at_once(string name)
    {
        var attempt = Play(AllPlayers.Make().First(p => p.Name == name), Dark, new Fault("LH.56b", FaultModes.Open));

        Assert.True(attempt.IsProven, Story(attempt));
        Assert.Equal("replace LH", Assert.Single(attempt.Repairs).Repair.Id);
    }

    [Fact]
    public void The_fixed_order_is_blind_to_a_bad_ground_that_beeps_and_buys_the_lamp()
    {
        var attempt = Play(new FixedOrderPlayer(), Lamps, new Fault("G5", FaultModes.Resistive, 0.5));

        Assert.Contains(attempt.Log, e => e.Check.Subject == CheckSubject.Buzzer && e.Value == new ReadingParse.Word(AnswerWord.Beeps));
        Assert.False(attempt.Repairs[0].Right, Story(attempt));
    }

    [Fact]
    public void The_skilled_order_finds_the_same_ground_by_its_drop()
    {
        var attempt = Play(new SkilledPlayer(), Lamps, new Fault("G5", FaultModes.Resistive, 0.5));

        Assert.True(attempt.IsProven, Story(attempt));
        Assert.True(attempt.Repairs[0].Right, Story(attempt));
        Assert.DoesNotContain(attempt.Log, e => e.Check.Subject == CheckSubject.Buzzer);
    }

    [Fact]
    public void The_skilled_order_follows_a_silent_relay_to_its_coil()
    {
        var attempt = Play(new SkilledPlayer(), Dark, new Fault("K8.85~G6", FaultModes.Open));

        Assert.True(attempt.IsProven, Story(attempt));
        Assert.Contains(attempt.Log, e => e.Check.Subject == CheckSubject.RelayClick);
        Assert.True(attempt.Repairs.Count <= 3, Story(attempt));
    }

    [Fact]
    public void The_skilled_order_finds_why_a_fuse_has_blown()
    {
        var attempt = Play(new SkilledPlayer(), Dark, new Fault("F21.2~C10.1a", FaultModes.ShortToGround));

        Assert.True(attempt.IsProven, Story(attempt));
        Assert.Contains(attempt.Log, e => e.Check.Subject == CheckSubject.LampGlow && e.Check.Arrangement.Removed.Contains("F21"));
    }

    [Fact]
    public void Everybody_gives_up_after_the_same_number_of_wrong_repairs()
    {
        // A stalk that rests: far down the list of whoever buys by likelihood.
        var attempt = Play(new LikeliestPartPlayer(), Dark, new Fault("LS.56b~K8.86", FaultModes.Open));

        Assert.False(attempt.IsProven);
        Assert.Equal(Attempt.MostWrong, attempt.Repairs.Count(r => !r.Right));
    }

    [Fact]
    public void The_clairvoyant_spends_least_and_everybody_proves_alike()
    {
        var fault = new Fault("C10.1", FaultModes.Open);
        var least = Play(new ClairvoyantPlayer(), Dark, fault);
        Assert.True(least.IsProven);
        foreach (var player in AllPlayers.Make())
        {
            var attempt = Play(player, Dark, fault);
            Assert.True(attempt.Minutes >= least.Minutes, player.Name);
            if (attempt.IsProven)
            {
                Assert.Equal(least.Proofs.Select(p => p.Check.Id), attempt.Proofs.Select(p => p.Check.Id));
            }
        }
    }

    [Fact]
    public void What_was_opened_is_closed_again_at_a_price()
    {
        var attempt = Play(new ClairvoyantPlayer(), Dark, new Fault("C10.1", FaultModes.Open));
        var minutes = attempt.Repairs[0].Repair.Minutes;

        // Opening the place of the plug, mending, proving; then half the opening again.
        Assert.True(attempt.Minutes > minutes + (1.5 * Dark.Circuit.FindPlace("left headlamp")!.OpenMinutes));
    }

    [Fact]
    public void Decisions_kept_from_earlier_cars_change_nothing()
    {
        var fresh = Play(new EnginePlayer(), Lamps, new Fault("G5", FaultModes.Resistive, 0.5));
        var player = new EnginePlayer();
        Play(player, Lamps, new Fault("G5", FaultModes.Resistive, 0.5));
        var again = Play(player, Lamps, new Fault("G5", FaultModes.Resistive, 0.5));

        Assert.True(player.Decisions.Kept > 0);
        Assert.Equal(Story(fresh), Story(again));
    }

    [Fact]
    public void One_step_takes_what_tells_most_per_minute_where_the_engine_has_planned_a_check_and_keeps_its_rules()
    {
        var attempt = Play(new EnginePlayer(looksAhead: false), Lamps, new Fault("G5", FaultModes.Resistive, 0.5));
        var engine = Lamps.Opened.Anew();
        var (ruled, otherwise) = (0, 0);
        foreach (var ((check, value), number) in attempt.Log.Select((entry, number) => (entry, number)))
        {
            var step = engine.Next();
            if (step.Check is null or { Kind: CheckKind.Repair })
            {
                break;
            }

            var isPlanned = step.Plan is { Best.Check: not null };
            Assert.Equal(isPlanned ? engine.RankedNow().MaxBy(r => Math.Round(r.Score, 9))!.Check.Id : step.Check.Id, check.Id);
            ruled += isPlanned ? 0 : 1;
            otherwise += check.Id == step.Check.Id ? 0 : 1;
            engine.Record(number.ToString(CultureInfo.InvariantCulture), check, value);
        }

        Assert.NotEqual(0, ruled);
        Assert.NotEqual(0, otherwise);
    }
}
