using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Tests.Play;
using Halfsplit.Simulation.Faults;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Planning;

/// <summary>A first sight of the next step, and readings prepared before they come.</summary>
public sealed class FirstSightTests
{
    [Fact]
    public void A_first_sight_follows_the_rules_is_the_same_every_time_and_names_a_check_that_tells_something()
    {
        var circuit = ShippedSheets.Load("headlamps");
        var complaint = circuit.Complaints.First(c => c.Name == "left headlamp dark");
        var (job, other) = (Investigation.Open(circuit, complaint), Investigation.Open(circuit, complaint));
        var car = new SimulatedCar(circuit, complaint.Load, [new Fault("F21", "open")]);
        for (var move = 0; move < 3; move++)
        {
            var sight = job.NextAtFirstSight();
            var step = job.Next();
            Assert.Equal(sight.Check?.Id, other.NextAtFirstSight().Check?.Id);
            if (step.Plan is null)
            {
                Assert.Equal(step.Check!.Id, sight.Check!.Id);
            }
            else if (sight.Check is { Kind: not CheckKind.Repair } seen)
            {
                Assert.True(job.Foresee(seen).Length > 1, seen.Id);
            }

            var answer = car.Answer(step.Check!);
            job.Record($"{move}", step.Check!, answer);
            other.Record($"{move}", step.Check!, answer);
        }
    }

    [Fact]
    public void Preparing_a_check_in_pieces_changes_no_odds_and_no_next_step()
    {
        var circuit = ShippedSheets.Load("headlamps");
        var complaint = circuit.Complaints.First(c => c.Name == "left headlamp dark");
        var (prepared, plain) = (Investigation.Open(circuit, complaint), Investigation.Open(circuit, complaint));
        var car = new SimulatedCar(circuit, complaint.Load, [new Fault("F21", "open")]);
        for (var move = 0; move < 3; move++)
        {
            var check = plain.Next().Check!;
            var pieces = 0;
            while (prepared.Prepare(check, 50 * pieces++, 50))
            {
            }

            Assert.True(pieces > 1);
            var answer = car.Answer(check);
            prepared.Record($"{move}", check, answer);
            plain.Record($"{move}", check, answer);
            Assert.Equal(plain.Suspects.Select(s => (s.Suspect.Id, s.Odds)), prepared.Suspects.Select(s => (s.Suspect.Id, s.Odds)));
            Assert.Equal(plain.Next().Check, prepared.Next().Check);
        }
    }
}
