using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Tests.Play;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Evidence;

/// <summary>A fault that is there at one reading and away at the next.</summary>
public sealed class FlickeringTests
{
    private static readonly string[] There = ["work of FAN | fan high", "volts BAT.pos BAT.neg | key off", "volts C8.2b BAT.neg | fan high"];

    private static readonly string[] Away = ["volts G1 BODY | fan high", "volts C8.1b C8.2b | fan high"];

    /// <summary>A fan whose ground is broken, but for the readings named.</summary>
    private static Investigation Fan(IEnumerable<string> there, IEnumerable<string> away)
    {
        var circuit = ShippedSheets.Load("cooling-fan");
        var complaint = circuit.Complaints.First(c => c.Name == "fan never runs");
        var investigation = Investigation.Open(circuit, complaint);
        foreach (var (ids, car) in new[]
        {
            (there, new SimulatedCar(circuit, complaint.Load, Game.Fault("G1:open"))), (away, new SimulatedCar(circuit, complaint.Load)),
        })
        {
            foreach (var id in ids)
            {
                var check = investigation.FindCheck(id) ?? throw new InvalidOperationException(id);
                investigation.Record(id, check, car.Answer(check));
            }
        }

        return investigation;
    }

    [Fact]
    public void Readings_that_contradict_each_other_speak_for_a_fault_that_comes_and_goes()
    {
        var steady = Fan([.. There, .. Away], []);
        var flickering = Fan(There, Away);

        Assert.InRange(steady.FlickeringOdds, 0, 0.1);
        Assert.False(steady.SeemsToComeAndGo);
        Assert.True(flickering.FlickeringOdds > 0.5, $"{flickering.FlickeringOdds:0.000}");
        Assert.True(flickering.SeemsToComeAndGo);
        Assert.True(flickering.Suspects.First(s => s.Suspect.IsNone).Odds < 0.5);
    }

    [Fact]
    public void A_reading_taken_while_the_fault_was_away_clears_nothing_for_good()
    {
        var steady = Fan([.. There, .. Away], []);
        var flickering = Fan(There, Away);
        static double Ground(Investigation investigation) =>
            investigation.Suspects.Where(s => s.Suspect.Modes.Any(m => m.Part.StartsWith("G1", StringComparison.Ordinal))).Sum(s => s.Odds);

        Assert.True(Ground(steady) > 0.9, $"{Ground(steady):0.000}");
        Assert.True(Ground(flickering) > 0.3, $"{Ground(flickering):0.000}");
    }
}
