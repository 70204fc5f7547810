using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Tests.Play;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Evidence;

public sealed class SeverityTests
{
    /// <summary>The degrees simulated are 78 % apart; the readings place the true one between them.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(12)]
    public void The_degree_of_a_bad_joint_comes_out_within_a_fifth(double ohms)
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        var car = new SimulatedCar(circuit, "M1", Game.Fault(FormattableString.Invariant($"C3.4:resistive:{ohms}")));
        foreach (var id in (string[])["volts BAT.pos BAT.neg | key off", "volts C3.4a C3.4b | priming", "volts C3.4b C3.3b | priming", "amps-clamp of K2.87~C1.2a | priming"])
        {
            var check = investigation.FindCheck(id)!;
            investigation.Record(id, check, car.Answer(check));
        }

        var top = investigation.Suspects[0];
        Assert.Equal("C3.4 resistive", top.Suspect.Id);
        Assert.InRange(top.Severity!.Value, 0.8 * ohms, 1.2 * ohms);
    }

    /// <summary>
    /// A bad changeover contact is bad on both sides: what it shows is what its common terminal's socket would show, so the
    /// failure weights alone may part them, at any degree.
    /// </summary>
    [Theory]
    [InlineData(3.9)]
    [InlineData(5.4)]
    [InlineData(6.7)]
    public void The_two_sides_of_a_changeover_contact_are_of_one_degree(double ohms)
    {
        var circuit = ShippedSheets.Load("daytime-lamps");
        var complaint = circuit.Complaints.First(c => c.Name == "daytime lamps stay dim");
        var investigation = Investigation.Open(circuit, complaint);
        var car = new SimulatedCar(circuit, complaint.Load, Game.Fault(FormattableString.Invariant($"K2:contact-resistive:{ohms}")));
        double Ratio()
        {
            double Odds(string id) => investigation.Suspects.Single(s => s.Suspect.Id == id).Odds;
            return Odds("K2 contact resistive") / Odds("K2.30 resistive");
        }

        var before = Ratio();
        foreach (var id in (string[])["volts BAT.pos BAT.neg | key off", "volts C2.1a BAT.neg | running", "volts C2.1a BAT.neg | running parking"])
        {
            var check = investigation.FindCheck(id)!;
            investigation.Record(id, check, car.Answer(check));
        }

        // Each between its own simulated degrees: a factor of some is what lies between; with one side alone it was a hundred.
        Assert.InRange(Ratio() / before, 0.2, 5);
    }

    /// <summary>
    /// Between the degrees simulated lies the one from which a lamp counts as dark: two dark lamps are one sign of which side of it the
    /// car is on, not two against the contact.
    /// </summary>
    [Fact]
    public void Looks_at_two_lamps_behind_one_contact_hang_on_its_one_degree()
    {
        var circuit = ShippedSheets.Load("daytime-lamps");
        var complaint = circuit.Complaints.First(c => c.Name == "daytime lamps stay dim");
        double Odds(string fault, params string[] looks)
        {
            var investigation = Investigation.Open(circuit, complaint);
            var car = new SimulatedCar(circuit, complaint.Load, Game.Fault(fault));
            foreach (var id in (string[])["volts BAT.pos BAT.neg | key off", "volts C2.1a BAT.neg | running", .. looks])
            {
                var check = investigation.FindCheck(id)!;
                investigation.Record(id, check, car.Answer(check));
            }

            return investigation.Suspects.Single(s => s.Suspect.Id == "K2 contact resistive").Odds;
        }

        // At 4.4 ohm the lamps just glow with the resistor before them, at 5.0 they just don't; volts elsewhere tell the degree.
        foreach (var fault in (string[])["K2:contact-resistive:4.3", "K2:contact-resistive:5.0"])
        {
            var one = Odds(fault, "work of DL | running parking");
            Assert.InRange(Odds(fault, "work of DL | running parking", "work of DR | running parking"), 0.8 * one, 0.99);
        }
    }

    /// <summary>
    /// A ground that carries a wiper's amps and a relay coil's: 94 ohm is open to the one and readable from the volts of the other.
    /// </summary>
    [Fact]
    public void A_shared_ground_has_degrees_for_the_lightest_of_its_loads()
    {
        var circuit = ShippedSheets.Load("headlamps-ground-side");
        var complaint = circuit.Complaints.First(c => c.Name == "tell-tale of main beam dark");
        var investigation = Investigation.Open(circuit, complaint);
        var car = new SimulatedCar(circuit, complaint.Load, Game.Fault("G3:resistive:94"));
        foreach (var id in (string[])["work of TT | main beam", "volts BAT.pos BAT.neg | key off", "volts DS.85 DS.31 | main beam", "volts DS.85 BODY | main beam"])
        {
            var check = investigation.FindCheck(id)!;
            investigation.Record(id, check, car.Answer(check));
        }

        var ground = investigation.Suspects.Single(s => s.Suspect.Id == "G3 resistive");
        Assert.InRange(ground.Odds, 0.5, 0.99);
        Assert.InRange(ground.Severity!.Value, 80, 110);
    }

    /// <summary>Between a fifth and a half of its volts an empty battery is an empty battery, and nothing unheard of.</summary>
    [Theory]
    [InlineData(4.28)]
    [InlineData(5.6)]
    [InlineData(3.6)]
    public void A_battery_may_be_empty_by_any_degree(double volts)
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        investigation.Record("posts", investigation.FindCheck("volts BAT.pos BAT.neg | key off")!, new ReadingParse.Number(volts, Quantity.Volts, 0.01));

        Assert.True(investigation.Suspects.Single(s => s.Suspect.Id == "BAT discharged").Odds
            > investigation.Suspects.Single(s => s.Suspect.IsNone).Odds);
    }
}
