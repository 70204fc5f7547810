using Halfsplit.Circuits.Adapting;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Simulation.Tests.Adapting;

/// <summary>Adapted cars work as their parents do.</summary>
public sealed class AdaptedCarTests
{
    [Theory]
    [InlineData("pump-feed", "M1", "priming", "key off", "id ECU = ECM")]
    [InlineData("pump-feed", "M1", "priming", "key off", "connector C7 in K2.87~C1.2a at rear seat")]
    [InlineData("pump-feed", "M1", "priming", "key off", "splice in C3~G2")]
    [InlineData("pump-feed", "M1", "priming", "key on", "without relay K1 despite the amps")]
    [InlineData("pump-feed", "M1", "priming", "key on", "without relay K2 despite the amps")]
    [InlineData("pump-feed", "M1", "running", "key on", "without relay K1 despite the amps", "without relay K2 despite the amps")]
    [InlineData("pump-feed", "M1", "priming", "key on", "relay K9 before M1")]
    [InlineData("pump-feed", "M1", "running", "key on", "without relay K2 despite the amps", "relay K9 before M1 at boot side")]
    [InlineData("pump-feed", "M1", "priming", "key off", "ground side M1")]
    [InlineData("pump-feed", "M1", "running", "key on", "ground side M1", "connector in C3.3a~K2.87")]
    [InlineData("cooling-fan", "HORN", "horn pressed", "key off", "without relay K7 despite the amps")]
    [InlineData("cooling-fan", "HORN", "horn pressed", "key off", "ground side HORN")]
    [InlineData("cooling-fan", "HORN", "horn pressed", "key off", "relay K9 before HORN")]
    [InlineData("cooling-fan", "FAN", "fan high", "key off", "relay K9 before FAN")]
    [InlineData("cooling-fan", "FAN", "fan high", "key on", "connector in FSP~C8")]
    [InlineData("headlamps", "LH", "dipped beam", "key off", "without relay K8 despite the amps")]
    [InlineData("headlamps", "RH", "running dipped", "parking lamps", "without relay K8 despite the amps", "without relay K9 despite the amps")]
    [InlineData("headlamps", "PL", "parking lamps", "key off", "relay K5 before PL")]
    [InlineData("headlamps", "PR", "parking lamps", "key off", "relay K5 before PR", "ground side PR")]
    [InlineData("horn", "HH", "horn pressed", "key off", "without relay K7 despite the amps")]
    [InlineData("horn", "HL", "alarm sounding", "key on", "without relay K7 despite the amps")]
    [InlineData("horn", "HH", "horn pressed", "key off", "ground side HH")]
    [InlineData("horn", "HL", "alarm sounding", "key off", "ground side HL")]
    [InlineData("horn", "WP", "washing", "key on", "relay before WP")]
    public void The_load_works_when_it_should_and_rests_when_it_should(
        string sheet, string load, string works, string rests, params string[] changes)
    {
        var car = Car(sheet, changes);

        var working = car.Simulate(new Arrangement(works), []);
        Assert.True(working.IsSteady);
        Assert.Equal(LoadCondition.Works, working.Load(load).Condition);
        Assert.Equal(LoadCondition.Dead, car.Simulate(new Arrangement(rests), []).Load(load).Condition);
        Assert.Empty(car.Blown([]));
    }

    [Fact]
    public void A_connector_more_is_a_suspect_at_its_terminals()
    {
        var car = Car("pump-feed", "connector C7 in K2.87~C1.2a at rear seat");

        var modes = FaultCatalog.For(car).Where(m => m.Owner == "C7").ToList();
        Assert.Contains(modes, m => m.Part.StartsWith("C7.1", StringComparison.Ordinal));
        var open = car.Simulate(new Arrangement("priming"), modes.Where(m => m.Mode == "open").SelectMany(m => m.Faults()).Take(1).ToList());
        Assert.Equal(LoadCondition.Dead, open.Load("M1").Condition);
        Assert.True(open.Volts(new TerminalName("C7", "1a")) > 11 || open.Volts(new TerminalName("K2", "87")) > 11);
    }

    [Fact]
    public void An_expected_reading_spreads_wider_where_a_wire_is_a_guess()
    {
        var volts = new Probe(Instrument.Volts, new TerminalName("K2", "87"), new TerminalName("C1", "2a"));
        var known = Spread(Car("pump-feed"), volts);
        var length = Spread(Car("pump-feed", "length K2~C1 = unknown"), volts);
        var both = Spread(Car("pump-feed", "length K2~C1 = unknown", "gauge K2~C1 = unknown"), volts);

        Assert.InRange(length, 1.5 * known, double.PositiveInfinity);
        Assert.InRange(both, 1.05 * length, double.PositiveInfinity);
        Assert.Equal(
            Car("pump-feed").Read(new Arrangement("priming"), [], volts).Value,
            Car("pump-feed", "length K2~C1 = unknown").Read(new Arrangement("priming"), [], volts).Value);
    }

    /// <summary>Standard deviation of a reading from car to car, by the spreads of all branches.</summary>
    private static double Spread(CircuitSimulator car, Probe probe)
    {
        var reader = new InstrumentReader(car.Simulate(new Arrangement("priming"), []), new Meter());
        var slopes = new double[car.Network.Branches.Length + 1];
        reader.Slopes(probe, slopes);
        return Math.Sqrt(car.Network.Branches.Select((b, i) => Math.Pow(slopes[i + 1] * b.Tolerance, 2)).Sum());
    }

    private static CircuitSimulator Car(string sheet, params string[] changes)
    {
        var done = SheetAdapter.Apply(ShippedSheets.Load(sheet), changes.Select(text =>
            ChangeText.Parse(text, out var problem) ?? throw new FormatException(problem!.ToString())));
        Assert.True(done.Circuit is not null, done.Problem?.ToString());
        return new CircuitSimulator(NetworkCompiler.Compile(done.Circuit));
    }
}
