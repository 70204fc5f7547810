using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Practice;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Jobs.Tests.Sessions;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Jobs.Tests.Practice;

public sealed class PracticeCarTests
{
    private static readonly Circuit Circuit = ShippedSheets.Load("headlamps");
    private static readonly Complaint Complaint = ComplaintChoice.Usual(Circuit)!;

    [Fact]
    public void Every_car_shows_the_complaint_and_a_meter_that_differs_a_little()
    {
        var posts = CheckCatalog.ReadPosts(Circuit);
        var work = CheckCatalog.Reproduce(Circuit, Complaint);
        var cars = Enumerable.Range(1, 12).Select(Draw).ToList();

        Assert.All(cars, c => Assert.Equal(new ReadingParse.Word(AnswerWord.Dim), c.Answer(work)));
        var volts = cars.Select(c => ((ReadingParse.Number)c.Answer(posts)).Value).ToList();
        Assert.All(volts.Where((_, i) => !IsBattery(cars[i])), v => Assert.InRange(v, 12, 13.2));
        Assert.True(volts.Distinct().Count() > 6);
        Assert.True(cars.Select(c => c.Hidden.ToString()).Distinct().Count() > 4);
    }

    [Fact]
    public void The_same_seed_gives_the_same_car() => Assert.Equal(Draw(5).Hidden, Draw(5).Hidden);

    [Fact]
    public void The_engine_mends_the_car_by_its_own_advice()
    {
        var car = Draw(3);
        var score = EnginePlay.Run(SessionJob.Opened(), car);

        Assert.True(score.IsProven);
        Assert.True(car.IsCured);
        Assert.NotEmpty(score.Repairs);
        Assert.True(score.Minutes > 0 && score.Checks > 1);
    }

    [Fact]
    public void Chance_is_even_and_its_bell_is_a_bell()
    {
        var chance = new SeededChance(1);
        var even = Enumerable.Range(0, 20_000).Select(_ => chance.Next()).ToList();
        var bell = Enumerable.Range(0, 20_000).Select(_ => chance.Bell()).ToList();

        Assert.All(even, v => Assert.InRange(v, 0, 1));
        Assert.InRange(even.Average(), 0.49, 0.51);
        Assert.InRange(bell.Average(), -0.03, 0.03);
        Assert.InRange(bell.Average(v => v * v), 0.95, 1.02);
        Assert.InRange(Enumerable.Range(0, 8_000).Count(_ => chance.Pick([1, 3]) == 1), 5_800, 6_200);
    }

    private static PracticeCar Draw(int seed) => PracticeCar.Draw(Circuit, Complaint, Meter.Default, seed)!;

    private static bool IsBattery(PracticeCar car) => car.Hidden.Part == Circuit.Battery.Id;
}
