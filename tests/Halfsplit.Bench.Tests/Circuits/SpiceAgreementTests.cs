using System.Globalization;
using Halfsplit.Bench.Batteries;
using Halfsplit.Bench.Budgets;
using Halfsplit.Bench.Loads;
using Halfsplit.Bench.Relays;
using Halfsplit.Circuits.Data;
using Halfsplit.Simulation.Tests.Judges;
using Xunit;

namespace Halfsplit.Bench.Tests.Circuits;

/// <summary>Where a bench aid reckons with a circuit, ngspice reckons with it too: an outside judge.</summary>
[Trait("Pace", "slow")]
public sealed class SpiceAgreementTests
{
    /// <summary>A battery with its resistance, its cable and a clamp, under two loads: what the posts show gives the resistance back.</summary>
    [Fact]
    public void Two_loads_find_the_resistance_inside_a_battery()
    {
        (double Open, double Ohms, double Light, double Heavy)[] batteries = [(12.6, 0.008, 2.4, 0.2), (12.3, 0.021, 1.2, 0.3), (25.1, 0.012, 6, 0.4)];
        var volts = NgSpice.Volts([.. batteries.SelectMany(b => new[] { b.Light, b.Heavy }.Select(load => new SpiceQuestion(
            Deck($"V1 inside 0 {b.Open}", $"R1 inside post {b.Ohms}", "R2 post far 0.004", "V2 far load 0", $"R3 load 0 {load}"), ["post", "load"])))]);
        for (var i = 0; i < batteries.Length; i++)
        {
            LoadedVolts Read(int at, double load) => new(volts[at][0], volts[at][1] / load);
            var result = Said.Good(BatteryOhms.Of(
                Read(2 * i, batteries[i].Light), Read((2 * i) + 1, batteries[i].Heavy), null, batteries[i].Open > 20 ? 24 : 12));

            Assert.Equal(batteries[i].Ohms, result.Ohms.Value, 1e-9);
            Assert.Equal(batteries[i].Open, result.OpenVolts, 1e-8);
        }
    }

    /// <summary>A path of typical pieces with its current: every drop is what is expected, and a bad joint stands out by its own ohms.</summary>
    [Fact]
    public void The_budget_of_a_path_is_its_circuit()
    {
        const double amps = 7.5, bad = 0.2;
        string[] pieces = ["fuse 15A", "wire 2.5mm2 3.1m", "connector", "relay", "ground"];
        var links = pieces.Select(p => Said.Good(ChainLink.Parse(p, 20))).ToList();
        var deck = new List<string> { "V1 n0 0 13.2" };
        for (var i = 0; i < links.Count; i++)
        {
            // The connector has a bad joint in line.
            var ohms = links[i].Ohms.Middle + (pieces[i] == "connector" ? bad : 0);
            deck.Add(Invariant($"R{i} n{i} n{i + 1} {ohms}"));
        }

        deck.Add(Invariant($"I1 n{links.Count} 0 {amps}"));
        var nodes = Enumerable.Range(0, links.Count + 1).Select(i => $"n{i}").ToList();
        var volts = NgSpice.Volts([new SpiceQuestion(Deck([.. deck]), nodes)])[0];
        var measured = links.Select((l, i) => l with { MeasuredVolts = volts[i] - volts[i + 1] }).ToList();
        var result = Said.Good(DropBudget.Of([.. measured], amps, null, false));

        Assert.Equal(volts[0] - volts[^1], result.Measured!.Value, 1e-9);
        Assert.Equal("connector", Assert.Single(result.Lines, l => l.IsTooMuch).Link.Name);
        Assert.All(result.Lines.Where(l => !l.IsTooMuch), l => Assert.InRange(l.Link.MeasuredVolts!.Value, l.Expected.Low, l.Expected.High));
        var more = Assert.Single(DropBudget.Answer(result).Judgements).Arguments[1];
        Assert.Equal(amps * (bad + links[2].Ohms.Middle - links[2].Ohms.High), result.Lines[2].Link.MeasuredVolts!.Value - result.Lines[2].Expected.High, 1e-9);
        Assert.NotNull(more);
    }

    /// <summary>A coil of copper at the temperature that the aid says it becomes: its watts warm it by just that much.</summary>
    [Theory]
    [InlineData(85, 13.8)]
    [InlineData(92, 16)]
    [InlineData(300, 27)]
    public void A_coil_is_as_warm_as_its_own_watts_make_it(double ohms, double supply)
    {
        var result = Said.Good(CoilPower.Of(ohms, supply, supply > 20 ? 24 : 12));
        var room = BenchDefaults.Table["coil.room"];
        // The reference of the coefficient is the bench, where the coil was measured.
        var volts = NgSpice.Volts([new SpiceQuestion(
            Deck(
                Invariant($".options tnom={room} temp={result.Celsius}"), Invariant($"V1 plus 0 {supply}"), "R1 plus coil 1e-3",
                Invariant($"R2 coil 0 {ohms} tc1={WireTable.CopperTemperatureCoefficient}")), ["plus", "coil"])])[0];
        var amps = (volts[0] - volts[1]) / 1e-3;

        Assert.Equal(result.Celsius - room, amps * volts[1] * BenchDefaults.Table["coil.kelvin-per-watt"], 0.01);
        Assert.True(amps < result.ColdAmps);
    }

    /// <summary>A contact in line with its lamp: what a meter shows across it, and a clamp around the wire, give its ohms back.</summary>
    [Theory]
    [InlineData(0.004, 2.1, ContactState.Good)]
    [InlineData(0.025, 1.4, ContactState.Worn)]
    [InlineData(0.15, 2.1, ContactState.Bad)]
    public void A_contact_is_judged_by_its_own_ohms(double contact, double load, ContactState state)
    {
        var volts = NgSpice.Volts([new SpiceQuestion(
            Deck("V1 plus 0 12.6", "R1 plus feed 0.01", Invariant($"R2 feed out {contact}"), Invariant($"R3 out 0 {load}")), ["feed", "out"])])[0];
        var result = Said.Good(ContactDrop.Of(volts[0] - volts[1], volts[1] / load));

        Assert.Equal(contact, result.Ohms, 1e-9);
        Assert.Equal(state, result.State);
    }

    /// <summary>A regulator of 5 V that gives up under a short: behind it two sensors, one of them shorted or the wire to it.</summary>
    [Theory]
    [InlineData(1e6, 1e6, "bench-sensor.good")]
    [InlineData(60, 1e6, "bench-sensor.sensor-pulls")]
    [InlineData(1e6, 60, "bench-sensor.elsewhere")]
    public void A_sensor_supply_is_pulled_down_by_what_is_unplugged_or_by_something_else(double sensor, double harness, string code)
    {
        SpiceQuestion Supply(double plugged) => new(
            Deck("V1 reg 0 5", "R1 reg supply 40", Invariant($"R2 supply 0 {plugged}"), Invariant($"R3 supply 0 {harness}"), "R4 supply 0 5k"), ["supply"]);
        var volts = NgSpice.Volts([Supply(sensor), Supply(1e9)]);

        Assert.Equal(code, Said.Good(SensorSupply.Of(new SensorQuestion(volts[0][0], volts[1][0]))).Judgements[0].Code);
    }

    private static string Deck(params string[] lines) => "* bench\n" + string.Join('\n', lines.Select(l => l.Replace(',', '.'))) + "\n";

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
