using Xunit;

namespace Halfsplit.Simulation.Tests.Sheets;

/// <summary>
/// Circuits of an open textbook, written as sheets from its text alone, give the volts that it prints: Lessons in Electric
/// Circuits, vol. I (T. Kuphaldt).
/// </summary>
public sealed class TextbookSheetTests
{
    /// <summary>
    /// Chapter 12, temperature coefficient: 14 V feed a load of 250 ohm through two wires of 15 ohm each; printed at 20 °C are
    /// 0.75 V, 12.5 V and 0.75 V. At 35 °C the wires have 15.909 ohm, and 0.79 V, 12.42 V and 0.79 V are printed.
    /// </summary>
    [Theory]
    [InlineData("15", 0.75, 12.5)]
    [InlineData("15.909", 0.79, 12.42)]
    public void A_distant_load_loses_volts_in_both_its_wires(string wire, double drop, double load)
    {
        var sheet = SmallSheet.Of(
            $$"""
            BAT: { kind: battery, rests at: 14 V, internal resistance: 0.0001 ohm }
            WF: { kind: resistor, name: Feed wire, ohms: {{wire}} ohm }
            RL: { kind: heater, name: Load, ohms: 250 ohm, at: 12 V }
            WR: { kind: resistor, name: Return wire, ohms: {{wire}} ohm }
            """,
            "BAT.pos -> WF -> RL -> WR -> BAT.neg");
        var point = sheet.In();

        Assert.Equal(drop, point.Across("WF.1", "WF.2"), 0.005);
        Assert.Equal(load, point.Across("RL.1", "RL.2"), 0.005);
        Assert.Equal(drop, point.Across("WR.1", "WR.2"), 0.005);
    }

    /// <summary>Chapter 10, an unbalanced bridge at 24 V: printed are 17.66 V and 19.31 V at its corners, 1.655 V between them.</summary>
    [Fact]
    public void An_unbalanced_bridge_has_the_printed_corners()
    {
        var sheet = SmallSheet.Of(
            """
            BAT: { kind: battery, nominal: 24 V, rests at: 24 V, internal resistance: 0.0001 ohm }
            R1: { kind: resistor, ohms: 150 ohm }
            R2: { kind: resistor, ohms: 50 ohm }
            R3: { kind: resistor, ohms: 100 ohm }
            R4: { kind: resistor, ohms: 300 ohm }
            R5: { kind: resistor, ohms: 250 ohm }
            """,
            """
            BAT.pos -> R1 -> R4 -> BAT.neg
            BAT.pos -> R2 -> R5 -> BAT.neg
            R1.2 -> R3 -> R2.2
            """);
        var point = sheet.In();

        Assert.Equal(17.66, point.Volts("R1.2"), 0.005);
        Assert.Equal(19.31, point.Volts("R2.2"), 0.005);
        Assert.Equal(1.655, point.Across("R2.2", "R1.2"), 0.0005);
        Assert.Equal(6.345, point.Across("R1.1", "R1.2"), 0.0005);
        Assert.Equal(4.690, point.Across("R2.1", "R2.2"), 0.0005);
    }
}
