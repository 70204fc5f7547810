using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Evaluation.Play;
using Halfsplit.Jobs.Practice;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Evaluation.Tests;

public sealed class CarTests
{
    private static readonly Circuit Headlamps = ShippedSheets.Load("headlamps");

    private static CarLot Lot(string variant, string sheet = "headlamps") => new(sheet, ShippedSheets.Load(sheet), Variant.Find(variant)!);

    [Theory]
    [InlineData("base")]
    [InlineData("flat-weights")]
    [InlineData("wide-parts")]
    [InlineData("two-faults")]
    [InlineData("not-ohmic")]
    [InlineData("other-sheet")]
    public void Every_car_shows_its_complaint_and_the_same_number_is_the_same_car(string variant)
    {
        for (var number = 0; number < 6; number++)
        {
            var lot = Lot(variant);
            var car = lot.Draw(number)!;
            var complaint = lot.ComplaintOf(number);
            var work = CheckCatalog.Reproduce(Headlamps, complaint);
            var said = Assert.IsType<ReadingParse.Word>(car.Answer(work)).Answer;

            Assert.Equal(complaint.Is == LoadCondition.Dead ? 2 : 1, work.GroupOf(said));
            Assert.Equal(car.Hidden.Select(f => f.ToString()), Lot(variant).Draw(number)!.Hidden.Select(f => f.ToString()));
        }
    }

    [Fact]
    public void The_share_of_failed_loads_is_as_asked()
    {
        var lot = Lot("load-60");
        var cars = Enumerable.Range(0, 60).Select(n => (Lot: lot, Car: lot.Draw(n)!, About: lot.ComplaintOf(n).Load)).ToList();
        var failed = cars.Count(c => c.Car.Hidden[0].Part.Split('.')[0] == c.About);

        // "Both headlamps dim" has no failed load, so fewer than six in ten in all.
        Assert.InRange(failed, 20, 45);
    }

    [Fact]
    public void The_world_fails_otherwise_than_the_players_think_and_the_same_for_every_car()
    {
        var modes = FaultCatalog.For(new CircuitSimulator(NetworkCompiler.Compile(Headlamps)));
        var bent = WorldWeights.Of(Headlamps, modes, FaultSource.Bent);
        var flat = WorldWeights.Of(Headlamps, modes, FaultSource.Flat);
        var thought = modes.Select(m => Diagnosis.Suspects.FailureWeights.Of(m, FaultPlace.EnvironmentOf(Headlamps, m))).ToList();

        Assert.Equal(bent, WorldWeights.Of(Headlamps, modes, FaultSource.Bent));
        Assert.All(bent.Zip(thought), w => Assert.InRange(w.First / w.Second, 0.15, 7));
        Assert.True(bent.Zip(thought).Count(w => Math.Abs(Math.Log(w.First / w.Second)) > 0.2) > modes.Length / 3);
        foreach (var part in modes.Zip(flat).GroupBy(p => p.First.Owner))
        {
            Assert.Equal(1, part.Sum(p => p.Second), 9);
        }
    }

    [Fact]
    public void A_joint_that_is_not_ohmic_has_fewer_ohms_the_more_amps_flow()
    {
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(Headlamps));
        var habits = new FaultHabits(OhmsFall: 0.4);
        double Ohms(string condition) =>
            habits.Settle(simulator, [new Fault("G5", FaultModes.Resistive, 1)], new Arrangement(condition), null)[0].Severity!.Value;

        Assert.True(Ohms("parking lamps") > 1.2 * Ohms("dipped beam"));
        Assert.True(Ohms("key off") > 5 * Ohms("parking lamps"));
    }

    [Fact]
    public void An_unknown_connector_goes_by_the_name_of_its_wire()
    {
        var foreign = ForeignJoint.In(Headlamps, ["SPG~G5"], new SeededChance(1));
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(foreign.Circuit));
        var complaint = Headlamps.Complaints[0];
        var hidden = PracticeCar.Of(
            simulator, complaint, Meter.Default, [new Fault(foreign.Cavity, FaultModes.Resistive, 0.6)], new SeededChance(2));
        var car = new TestCar(hidden, new SlippingHand(simulator.Network, 1, 0, false), foreign);
        var place = new Workplace(Headlamps, complaint, Variant.Find("other-sheet")!);
        var work = CheckCatalog.Reproduce(Headlamps, complaint);

        Assert.True(car.IsForeign);
        Assert.Equal("SPG~G5", car.Hidden[0].Part);
        Assert.Equal(new ReadingParse.Word(AnswerWord.Dim), car.Answer(work));
        Assert.True(car.Repair(place.RepairOf(car.Hidden[0])!));
        Assert.Equal(new ReadingParse.Word(AnswerWord.Bright), car.Answer(work));
    }

    // This sheet has a part of the name that the connector goes by elsewhere.
    [Fact]
    public void An_unknown_connector_takes_no_name_that_the_sheet_knows()
    {
        var circuit = ShippedSheets.Load("accessory-socket");

        var foreign = ForeignJoint.In(circuit, ["CG~G2"], new SeededChance(1));

        Assert.NotNull(circuit.Find("XF"));
        Assert.All(foreign.Pieces, piece => Assert.Null(circuit.Find(piece)));
        Assert.Equal(circuit.Parts.Length + 1, foreign.Circuit.Parts.Length);
    }

    [Fact]
    public void An_intermittent_fault_is_there_at_some_readings_only()
    {
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(Headlamps));
        var complaint = Headlamps.Complaints.First(c => c.Is == LoadCondition.Dead && c.Load == "LH");
        var car = PracticeCar.Of(
            simulator, complaint, Meter.Default, [new Fault("C10.1", FaultModes.Open)], new SeededChance(3), new FaultHabits(Shows: 0.7));
        var work = CheckCatalog.Reproduce(Headlamps, complaint);
        var dark = Enumerable.Range(0, 200).Count(_ => car.Answer(work) == new ReadingParse.Word(AnswerWord.Dark));

        Assert.InRange(dark, 115, 165);
    }

    [Fact]
    public void Slips_come_as_often_as_asked_and_repeat_only_where_asked()
    {
        var network = NetworkCompiler.Compile(Headlamps);
        var checks = CheckCatalog.Generate(network, Headlamps.Complaints[0], DiagnosisOptions.Default, [])
            .Where(c => c.Subject == CheckSubject.Number && c.Probe.Red is not null).ToList();
        ReadingValue True(Check check) => new ReadingParse.Number(5, Quantity.Volts, 0.01);
        var once = new SlippingHand(network, 7, 0.02, repeats: false);
        var stuck = new SlippingHand(network, 7, 0.10, repeats: true);
        foreach (var check in checks)
        {
            once.Take(check, True);
            stuck.Take(check, True);
        }

        Assert.InRange(once.Slipped, 0.005 * checks.Count, 0.04 * checks.Count);
        Assert.InRange(stuck.Slipped, 0.06 * checks.Count, 0.14 * checks.Count);
        var slipped = stuck.Slipped;
        foreach (var check in checks)
        {
            stuck.Take(check, True);
        }

        Assert.Equal(2 * slipped, stuck.Slipped);
    }
}
