using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>Two bad joints at once, and many exact readings taken in an order of one's own, which no single fault explains.</summary>
public sealed class TwoFaultsTests
{
    private static readonly Fault Ground = Game.Fault("G2:resistive:6"), Feed = Game.Fault("K2.87~C1.2a:resistive:15");

    // The plug's two readings of the ground's drop could be two slips; and after more than twenty readings, fewer are left out in turn.
    [Theory]
    [InlineData(12)]
    [InlineData(21)]
    [InlineData(30)]
    public void Both_are_found_however_many_readings(int readings)
    {
        var suspects = Read(readings, Ground, Feed).Suspects;

        // From these points the joint and the wire before it look the same.
        var withTheGround = suspects.Where(s => s.Suspect.Modes.Any(m => m.Part is "G2" or "C3.3a~G2")).ToList();
        Assert.True(withTheGround.Sum(s => s.Odds) > 0.95, Told(suspects));
        Assert.All(suspects.Where(s => s.Odds > 0.01), s => Assert.Equal(2, s.Faults.Length));
        Assert.Contains(withTheGround, s => s.Odds > 0.01 && s.Suspect.Modes.Any(m => m.Id == "K2.87~C1.2a resistive"));
    }

    [Fact]
    public void Their_degrees_are_told()
    {
        var found = Read(21, Ground, Feed).Suspects.First(s => s.Suspect.Id == "G2 resistive + K2.87~C1.2a resistive");

        Assert.InRange(found.Faults.First(f => f.Part == "G2").Severity!.Value, 4.5, 8);
        Assert.InRange(found.Faults.First(f => f.Part == "K2.87~C1.2a").Severity!.Value, 11, 20);
    }

    [Fact]
    public void One_alone_stays_one()
    {
        var suspects = Read(21, Feed).Suspects;

        Assert.True(suspects.Where(s => s.Suspect.Modes.Length == 1).Sum(s => s.Odds) > 0.99, Told(suspects));
        Assert.True(suspects.Where(s => s.Suspect.Modes.Any(m => m.Part is "G2" or "C3.3a~G2")).Sum(s => s.Odds) < 0.01, Told(suspects));
    }

    // The battery's ground cable alone comes within a few per cent of each of these readings, but not of all of them together.
    [Fact]
    public void One_that_fits_badly_does_not_pass_for_an_explanation()
    {
        var (investigation, checks, car) = Open(Ground, Feed);
        var posts = CheckCatalog.ReadPosts(investigation.Circuit);
        investigation.Record(posts.Id, posts, car.Answer(posts));
        foreach (var id in (string[])
        [
            "volts BAT.pos C1.2a", "volts BAT.pos C1.2b", "volts BAT.pos C3.4a", "volts BAT.pos C3.4b",
            "volts BAT.pos C3.3a", "volts BAT.pos C3.3b", "volts BAT.pos ECU.30",
        ])
        {
            var check = checks.First(c => c.Id.StartsWith(id + " ", StringComparison.Ordinal));
            investigation.Record(check.Id, check, car.Answer(check));
        }

        var suspects = investigation.Suspects;
        Assert.True(suspects.Where(s => s.Suspect.Modes.Any(m => m.Part == "BODY~BAT.neg")).Sum(s => s.Odds) < 0.05, Told(suspects));
        Assert.True(suspects.Where(s => s.Suspect.Modes.Length == 2).Sum(s => s.Odds) > 0.9, Told(suspects));
    }

    private static Investigation Read(int readings, params Fault[] faults)
    {
        var (investigation, checks, car) = Open(faults);
        foreach (var check in checks.Take(readings))
        {
            investigation.Record(check.Id, check, car.Answer(check));
        }

        Assert.Equal(readings, investigation.Observations.Count());
        return investigation;
    }

    /// <summary>A dead pump, with the volts that can be read while the complaint shows.</summary>
    private static (Investigation Investigation, List<Check> Checks, SimulatedCar Car) Open(params Fault[] faults)
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var complaint = circuit.Complaints[0];
        var car = new SimulatedCar(circuit, complaint.Load, faults);
        Assert.Equal(complaint.Is, car.Fares(complaint.Condition));
        var investigation = Investigation.Open(circuit, complaint);
        var checks = CheckCatalog.Generate(investigation.Network, complaint, investigation.Options, []).Where(c =>
            c.Kind == CheckKind.Reading && c.Probe.Instrument == Instrument.Volts && c.Arrangement.Key == complaint.Condition);
        return (investigation, [.. checks], car);
    }

    private static string Told(IEnumerable<SuspectOdds> suspects) => string.Join("; ", suspects.Take(8).Select(s => $"{s.Suspect.Id} {s.Odds:0.000}"));
}
