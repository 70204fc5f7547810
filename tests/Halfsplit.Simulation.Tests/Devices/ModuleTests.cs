using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Devices;

public sealed class ModuleTests
{
    private static SmallSheet Driving(string output, string load, string conditions, string inputs = "") => SmallSheet.Of(
        $"""
        S1: {"{"} kind: switch, rest: "on" {"}"}
        S2: {"{"} kind: switch {"}"}
        ECU: {"{"} kind: module, feeds: [15], grounds: [31], works from: 6 V, draws: 0.1 A, outputs: {"{"} out: {"{"} {output} {"}"} {"}"}{inputs} {"}"}
        {load}
        """,
        output.Contains("high", StringComparison.Ordinal)
            ? "BAT.pos -> S1 -> ECU.15\nECU.31 -> BODY\nECU.out -> L -> BODY\nBAT.pos -> S2 -> R9 -> BODY".Replace("R9", "L2", StringComparison.Ordinal)
            : "BAT.pos -> S1 -> ECU.15\nECU.31 -> BODY\nBAT.pos -> L -> ECU.out\nBAT.pos -> S2 -> L2 -> BODY",
        conditions);

    private const string Loads = "L: { kind: heater, watts: 12 W at 12 V }\n        L2: { kind: heater, watts: 1 W at 12 V }";

    [Theory]
    [InlineData("side: low, on: 0.1 ohm, limit: 4 A", "ECU.out: low")]
    [InlineData("side: high, on: 0.1 ohm, limit: 4 A", "ECU.out: high")]
    public void It_drives_when_commanded_fed_and_grounded(string output, string command)
    {
        var sheet = Driving(output, Loads, $"off: {{}}\non: {{ {command} }}\nunfed: {{ {command}, S1: off }}");

        Assert.Equal(LoadCondition.Works, sheet.In("on").Load("L").Condition);
        Assert.Equal(LoadCondition.Dead, sheet.In("off").Load("L").Condition);
        Assert.Equal(LoadCondition.Dead, sheet.In("unfed").Load("L").Condition);
        Assert.Equal(LoadCondition.Dead, sheet.In("on", "ECU:dead").Load("L").Condition);
        Assert.Equal(LoadCondition.Dead, sheet.In("on", "ECU.out:output-off").Load("L").Condition);
        Assert.Equal(LoadCondition.Works, sheet.In("off", "ECU.out:output-on").Load("L").Condition);
    }

    [Fact]
    public void It_limits_or_latches_off_when_overloaded()
    {
        const string Heavy = "L: { kind: heater, watts: 120 W at 12 V }\n        L2: { kind: heater, watts: 1 W at 12 V }";
        var limits = Driving("side: low, on: 0.1 ohm, limit: 4 A", Heavy, "on: { ECU.out: low }");
        var latches = Driving("side: low, on: 0.1 ohm, limit: 4 A, latches: yes", Heavy, "on: { ECU.out: low }");

        Assert.Equal(4.0, limits.In().Load("L").Amps, 2);
        Assert.Equal(0.0, latches.In().Load("L").Amps, 3);
    }

    [Fact]
    public void An_open_output_shows_its_bias()
    {
        var sheet = SmallSheet.Of(
            """
            ECU: { kind: module, feeds: [15], grounds: [31], draws: 0.1 A, outputs: { out: { side: low, on: 0.1 ohm, limit: 4 A, bias: 5 V through 10 kohm } } }
            S2: { kind: switch }
            L: { kind: heater, watts: 12 W at 12 V }
            """,
            "BAT.pos -> ECU.15\nECU.31 -> BODY\nBAT.pos -> S2 -> L -> ECU.out",
            "open: {}\nclosed: { S2: on }");

        Assert.Equal(5.0, sheet.Read(Instrument.Volts, "ECU.out", "BODY", "open"), 1);
        Assert.Equal(12.0, sheet.Read(Instrument.Volts, "ECU.out", "BODY", "closed"), 1);
    }

    [Fact]
    public void An_inactive_input_holds_the_output_back()
    {
        var sheet = SmallSheet.Of(
            """
            S1: { kind: switch }
            ECU: { kind: module, feeds: [15], grounds: [31], draws: 0.1 A, outputs: { out: { side: low, on: 0.1 ohm, limit: 4 A, needs: [release] } }, inputs: { release: { active: high, above: 6 V, pull: 0 V through 10 kohm } } }
            L: { kind: heater, watts: 12 W at 12 V }
            """,
            "BAT.pos -> ECU.15\nECU.31 -> BODY\nBAT.pos -> L -> ECU.out\nBAT.pos -> S1 -> ECU.release",
            "held: { ECU.out: low }\nreleased: { ECU.out: low, S1: on }");

        Assert.Equal(LoadCondition.Dead, sheet.In("held").Load("L").Condition);
        Assert.Equal(LoadCondition.Works, sheet.In("released").Load("L").Condition);
    }

    [Fact]
    public void A_meter_abstains_on_a_bus_that_is_awake()
    {
        var sheet = SmallSheet.Of(
            """
            S1: { kind: switch }
            ECU: { kind: module, feeds: [15], grounds: [31], buses: [can-h] }
            DASH: { kind: module, feeds: [15], grounds: [31], buses: [can-h] }
            """,
            "BAT.pos -> S1 -> ECU.15\nS1.2 -> DASH.15\nECU.31 -> BODY\nDASH.31 -> BODY\nECU.can-h -> wire 0.35mm2 2m GN -> DASH.can-h",
            "asleep: {}\nawake: { S1: on }");

        Assert.Equal(Abstention.Waveform, sheet.Reading(new Arrangement("awake"), Instrument.Volts, "DASH.can-h", "BODY").Abstains);
        Assert.Equal(Abstention.None, sheet.Reading(new Arrangement("asleep"), Instrument.Ohms, "ECU.can-h", "DASH.can-h").Abstains);
        Assert.Equal(Abstention.None, sheet.Reading(new Arrangement("awake"), Instrument.Volts, "DASH.15", "BODY").Abstains);
    }

    [Fact]
    public void A_pulsed_output_reads_as_its_average_on_volts_and_as_its_duty()
    {
        var sheet = Driving("side: high, on: 0.01 ohm, limit: 4 A, drive: pulsed", Loads, "half: { ECU.out: 40 % }\nfull: { ECU.out: high }");

        Assert.Equal(0.4 * 12, sheet.Read(Instrument.Volts, "ECU.out", "BODY", "half"), 1);
        Assert.Equal(0.4, sheet.Read(Instrument.Duty, "ECU.out", "BODY", "half"), 6);
        Assert.Equal(
            Abstention.Waveform,
            sheet.Reading(new Arrangement("full"), Instrument.Duty, "ECU.out", "BODY").Abstains);
    }
}
