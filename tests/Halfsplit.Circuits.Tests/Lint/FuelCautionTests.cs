using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Tests.Sheets;

namespace Halfsplit.Circuits.Tests.Lint;

/// <summary>What stands in fuel or at its lines is warned of, and what only has the word in its name is not.</summary>
public sealed class FuelCautionTests
{
    [Theory]
    [InlineData("M1: { kind: motor, name: Fuel pump, runs: 5 A }", true)]
    [InlineData("M1: { kind: motor, name: Pump for the petrol, runs: 5 A }", true)]
    [InlineData("M1: { kind: motor, name: Benzinpumpe, runs: 5 A }", true)]
    [InlineData("FUEL-PUMP: { kind: motor, runs: 5 A }", true)]
    [InlineData("B1: { kind: sensor, type: ntc, ohms: 2500 ohm at 20 C, name: Level, place: fuel tank }", true)]
    [InlineData("M1: { kind: motor, runs: 5 A, place: Tank }", true)]
    [InlineData("M1: { kind: motor, name: Fuel pump, runs: 5 A, cautions: [fuel vapour] }", false)]
    [InlineData("L2: { kind: lamp, name: Fuel gauge lamp, watts: 2 W }", false)]
    [InlineData("M1: { kind: motor, name: Lock motor of the fuel flap, runs: 5 A }", false)]
    [InlineData("M1: { kind: motor, name: Refuelling shutter pumper, runs: 5 A }", false)]
    [InlineData("Y1: { kind: solenoid, name: Fuel stop solenoid }", false)]
    [InlineData("Y1: { kind: solenoid, name: Petrol injector }", true)]
    [InlineData("Y1: { kind: solenoid, name: Injectors 1 and 2 }", true)]
    [InlineData("Y1: { kind: solenoid, name: Einspritzventil 3 }", true)]
    [InlineData("Y1: { kind: solenoid, name: Einspritzdüse }", true)]
    [InlineData("INJECTOR-1: { kind: solenoid }", true)]
    [InlineData("Y1: { kind: solenoid, name: Injector 1, cautions: [fuel vapour] }", false)]
    [InlineData("F9: { kind: fuse, name: Injector fuse, rating: 10 A }", false)]
    [InlineData("M1: { kind: motor, name: Washer pump, runs: 5 A, place: washer tank }", false)]
    public void The_caution_goes_by_what_a_part_is_and_where(string part, bool warns)
    {
        var reading = SheetReader.Read(MarkedSheet.Add(("parts", "§" + part), ("places", "fuel tank: { open: 1 min }"), ("places", "Tank: { open: 2 min }"), ("places", "washer tank: { open: 3 min }")).Text);
        Assert.True(reading.Circuit is not null, string.Join('\n', reading.Problems.Select(p => p.Message.Code)));

        Assert.Equal(warns, CircuitLint.Check(reading.Circuit!).Any(p => p.Message.Code == "lint.fuel-caution"));
    }
}
