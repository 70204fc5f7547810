using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Batteries;
using Halfsplit.Bench.Fuses;
using Halfsplit.Bench.Loads;
using Halfsplit.Bench.Motors;
using Halfsplit.Bench.Pins;
using Halfsplit.Bench.Relays;
using Halfsplit.Bench.Tests.Motors;
using Halfsplit.Diagnosis.Noticing;
using Xunit;

namespace Halfsplit.Bench.Tests;

/// <summary>What an answer has found of a part is a row of the table of evidence, and every row is found by some aid.</summary>
public sealed class FoundTests
{
    private static Answer Good(Outcome<Answer> outcome) => outcome.Result ?? throw new InvalidOperationException(outcome.Problems[0].ToString());

    private static Answer Motor(SimulatedMotor motor) =>
        MotorReading.Of(new MotorQuestion(motor.Trace(10_000, 0.6, seed: 3), motor.Bars, RatedAmps: 5.5)).Then(MotorAnswer.Of).Result!;

    private static IEnumerable<(string Found, Func<Answer> Ask)> Cases()
    {
        yield return ("relay-coil-open", () => Good(PinAid.Relay("1,2,3,4", ["ohms 1 2 = OL", "ohms 1 3 = OL", "ohms 1 4 = OL", "ohms 2 3 = OL", "ohms 2 4 = OL", "ohms 3 4 = OL"])));
        yield return ("relay-coil-good", () => Good(PinAid.Relay("1,2,3,4", ["ohms 1 2 = OL", "ohms 1 3 = OL", "ohms 2 4 = 88", "power 2 4 = clicks", "power 4 2 = clicks", "ohms 1 3 with 2 4 = 0.3"])));
        yield return ("relay-coil-open", () => Winding("relay-coil", double.PositiveInfinity));
        yield return ("relay-coil-shorted", () => Winding("relay-coil", 20));
        yield return ("relay-coil-good", () => Winding("relay-coil", 85));
        yield return ("relay-contact-bad", () => Good(ContactDrop.Of(0.9, 6).Then(ContactDrop.Answer)));
        yield return ("relay-contact-good", () => Good(ContactDrop.Of(0.05, 6).Then(ContactDrop.Answer)));
        yield return ("fuse-blown", () => Good(FuseCheck.Of(new FuseSigns(FuseLook.Blown, double.PositiveInfinity)).Then(FuseCheck.Answer)));
        yield return ("fuse-whole", () => Good(FuseCheck.Of(new FuseSigns(FuseLook.Whole, 0.2)).Then(FuseCheck.Answer)));
        yield return ("battery-low", () => Good(BatteryRest.Of(BatteryType.Flooded, 11.9, 20).Then(BatteryRest.Answer)));
        yield return ("battery-charged", () => Good(BatteryRest.Of(BatteryType.Flooded, 12.6, 20).Then(BatteryRest.Answer)));
        yield return ("battery-weak", () => Good(BatteryOhms.Of(new(12.5, 5), new(10.5, 65), 540).Then(BatteryOhms.Answer)));
        yield return ("battery-strong", () => Good(BatteryOhms.Of(new(12.5, 5), new(12.2, 65), 540).Then(BatteryOhms.Answer)));
        yield return ("battery-weak", () => Good(Cranking.Of(new CrankingQuestion(8, 20)).Then(Cranking.Answer)));
        yield return ("battery-strong", () => Good(Cranking.Of(new CrankingQuestion(10.4, 20)).Then(Cranking.Answer)));
        yield return ("alternator-silent", () => Good(Charging.Of(new ChargingQuestion(12.3))));
        yield return ("alternator-charges", () => Good(Charging.Of(new ChargingQuestion(14.1))));
        yield return ("winding-open", () => Winding("injector", double.PositiveInfinity));
        yield return ("winding-shorted", () => Winding("injector", 3));
        yield return ("winding-good", () => Winding("injector", 14));
        yield return ("diode-open", () => Good(DiodeAid.Of(double.PositiveInfinity, double.PositiveInfinity)));
        yield return ("diode-shorted", () => Good(DiodeAid.Of(0.01, 0.01)));
        yield return ("diode-good", () => Good(DiodeAid.Of(0.58, double.PositiveInfinity)));
        yield return ("motor-good", () => Motor(new SimulatedMotor(5000, 8)));
        yield return ("motor-weak-bar", () => Motor(new SimulatedMotor(5000, 8, WeakBar: 0.25)));
        yield return ("motor-worn-brushes", () => Motor(new SimulatedMotor(5000, 8, Arcing: 0.15)));
        yield return ("motor-seized", () => Motor(new SimulatedMotor(0, 8, RunningAmps: 15, IsSeized: true)));
    }

    public static TheoryData<string, int> Numbered => [.. Cases().Select((c, i) => new TheoryDataRow<string, int>(c.Found, i))];

    [Theory]
    [MemberData(nameof(Numbered))]
    public void An_aid_says_what_it_found(string found, int number) => Assert.Equal(found, Cases().ElementAt(number).Ask().Found);

    [Fact]
    public void Every_row_of_the_table_is_found_by_some_aid() =>
        Assert.Equal(PartFindings.All.Select(k => k.Name).Order(), Cases().Select(c => c.Found).Distinct().Order());

    [Fact]
    public void Volts_that_were_reckoned_and_not_measured_are_held_against_nothing() =>
        Assert.Empty(Good(BatteryOhms.Of(new(12.5, 5), new(10.5, 65), 540).Then(BatteryOhms.Answer)).Measured);

    public static TheoryData<string> Undecided => ["worn contact", "half charged", "controlled alternator", "unclear fuse", "cold winding", "unknown relay"];

    [Theory]
    [MemberData(nameof(Undecided))]
    public void What_says_too_little_finds_nothing(string what) => Assert.Null((what switch
    {
        "worn contact" => Good(ContactDrop.Of(0.16, 6).Then(ContactDrop.Answer)),
        "half charged" => Good(BatteryRest.Of(BatteryType.Flooded, 12.3, 20).Then(BatteryRest.Answer)),
        "controlled alternator" => Good(Charging.Of(new ChargingQuestion(15.1))),
        "unclear fuse" => Good(FuseCheck.Of(new FuseSigns(FuseLook.Unclear)).Then(FuseCheck.Answer)),
        "cold winding" => Winding("injector", 25),
        _ => Good(PinAid.Relay("1,2,3,4", ["ohms 1 2 = OL"])),
    }).Found);

    private static Answer Winding(string kind, double ohms) => Good(WindingAid.Of(kind, ohms, 20).Then(WindingAid.Answer));
}
