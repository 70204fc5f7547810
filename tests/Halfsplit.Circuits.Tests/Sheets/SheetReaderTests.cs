using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Sheets;

public sealed class SheetReaderTests
{
    private const string Example = """
        sheet: 1
        title: Pump feed through a main relay and a pump relay
        conditions:
          key off:  {}
          priming:  { IGN: on, ECU.pump-drive: low, lasts: 2 s }
          key on:   { IGN: on }
          cranking: { IGN: start, ECU.pump-drive: low, starter draws: 180 A }
          running:  { IGN: on, ECU.pump-drive: low, alternator holds: 14.1 V }
        places:
          engine bay box: { open: 1 min }
          kick panel:     { open: 4 min, tools: [trim lever] }
          boot floor:     { open: 5 min, tools: [screwdriver], cautions: [fuel vapour] }
        parts:
          BAT: { kind: battery }
          F1:  { kind: fuse, rating: 60 A, place: engine bay box, slot: A3 }
          F19: { kind: fuse, rating: 15 A, place: engine bay box, slot: A4 }
          K1:  { kind: relay, name: Main relay, coil: 85 ohm, place: engine bay box }
          K2:  { kind: relay, name: Pump relay, place: engine bay box }
          IGN: { kind: switch, positions: { off: [], on: ["30-15"], start: ["30-15", "30-50"] }, rest: off }
          ECU: { kind: module, feeds: [15], grounds: [31], outputs: { pump-drive: { side: low } } }
          M1:  { kind: motor, name: Fuel pump, runs: 5.5 A at 13 V, winding: 0.8 ohm, place: boot floor }
          C3:  { kind: connector, name: Pump connector, place: boot floor }
          G2:  { kind: ground, place: boot floor }
        wiring:
          - BAT.pos -> wire 10mm2 0.6m RD -> F1 -> K1.30
          - K1.87 -> wire 2.5mm2 1.5m YE/BK -> F19 -> K2.30
          - K2.87 -> wire 2.5mm2 4.2m YE -> C3.4 -> M1.pos
          - M1.neg -> C3.3 -> wire 2.5mm2 0.6m BK -> G2
        """;

    private static Circuit Read(string text)
    {
        var reading = SheetReader.Read(text);
        Assert.Empty(reading.Problems);
        return reading.Circuit!;
    }

    [Fact]
    public void The_format_in_short_reads_as_it_is_meant()
    {
        var circuit = Read(Example);
        Assert.Equal(2, circuit.FindCondition("priming")!.LastsSeconds);
        Assert.Equal(180, circuit.FindCondition("cranking")!.StarterAmps);
        Assert.True(circuit.FindCondition("running")!.EngineTurns);
        Assert.Equal(FuseType.BladeMaxi, ((Fuse)circuit["F1"]).Type);
        Assert.Equal(FuseType.BladeStandard, ((Fuse)circuit["F19"]).Type);
        Assert.Equal("BODY", ((Ground)circuit["G2"]).Metal);
        Assert.Equal(["30", "15", "50"], circuit["IGN"].Terminals);
        Assert.Contains(new Joint(new("C3", "4b"), new("M1", "pos")), circuit.Joints);
        Assert.Contains(new Joint(new("M1", "neg"), new("C3", "3b")), circuit.Joints);
        Assert.Contains(circuit.Wires, w => w.From == new TerminalName("K2", "87") && w.To == new TerminalName("C3", "4a"));
        Assert.Equal("start", circuit.FindCondition("cranking")!.Settings["IGN"]);
    }

    [Fact]
    public void What_a_sheet_does_not_say_comes_from_the_table()
    {
        var circuit = Read(Example);
        var defaults = ComponentDefaults.TwelveVolts;
        var relay = (Relay)circuit["K2"];
        Assert.Equal(defaults.RelayCoilOhms, relay.CoilOhms);
        Assert.Equal(defaults.RelayPullInVolts, relay.PullInVolts);
        Assert.Equal(defaults.BatteryRestVolts, circuit.Battery.RestVolts);
        Assert.Equal(defaults.ModuleOutputOhms, ((Module)circuit["ECU"]).Outputs[0].OnOhms);
    }

    [Fact]
    public void On_24_volts_the_table_is_scaled()
    {
        var circuit = Read(Example.Replace("BAT: { kind: battery }", "BAT: { kind: battery, nominal: 24 V }", StringComparison.Ordinal));
        Assert.Equal(2 * ComponentDefaults.TwelveVolts.BatteryRestVolts, circuit.Battery.RestVolts, 1e-12);
        Assert.Equal(4 * ComponentDefaults.TwelveVolts.RelayCoilOhms, ((Relay)circuit["K2"]).CoilOhms, 1e-12);
        Assert.Equal(85, ((Relay)circuit["K1"]).CoilOhms);
    }

    [Fact]
    public void A_byte_order_mark_windows_lines_and_block_style_change_nothing()
    {
        var expected = CircuitDump.Of(Read(Example));
        Assert.Equal(expected, CircuitDump.Of(Read("\ufeff" + Example)));
        Assert.Equal(expected, CircuitDump.Of(Read(Example.Replace("\n", "\r\n", StringComparison.Ordinal))));
        var block = Example.Replace(
            "  F1:  { kind: fuse, rating: 60 A, place: engine bay box, slot: A3 }",
            "  F1:\n    kind: fuse # the main one\n    rating: '60 A'\n    place: >-\n      engine bay\n      box\n    slot: \"A3\"",
            StringComparison.Ordinal);
        Assert.Equal(expected, CircuitDump.Of(Read(block)));
    }

    [Theory]
    [InlineData("  - K1.87 -> wire 2.5mm2 1.5m YE/BK -> F19 -> §X2.30")]
    [InlineData("  - \"K1.87 -> wire 2.5mm2 1.5m YE/BK -> F19 -> §X2.30\"")]
    [InlineData("  - K1.87 -> wire 2.5mm2 1.5m YE/BK\n      -> F19 -> §X2.30")]
    [InlineData("  - >-\n    K1.87 -> wire 2.5mm2\n    1.5m YE/BK -> F19 ->\n    §X2.30")]
    [InlineData("  -   K1.87  ->  wire 2.5mm2 1.5m YE/BK->F19->§X2.30")]
    public void An_item_deep_in_a_path_is_found_in_its_column(string path)
    {
        var sheet = MarkedSheet.Whole(Example.Replace(
            "  - K1.87 -> wire 2.5mm2 1.5m YE/BK -> F19 -> K2.30", path, StringComparison.Ordinal));
        var problem = Assert.Single(SheetReader.Read(sheet.Text).Problems);
        Assert.Equal("sheet.unknown-part", problem.Message.Code);
        Assert.Equal((sheet.Line, sheet.Column), (problem.Line, problem.Column));
    }

    [Fact]
    public void A_connector_between_two_wires_has_its_side_b_where_the_sheet_says()
    {
        var circuit = Read(Example.Replace("name: Pump connector", "b: K2, name: Pump connector", StringComparison.Ordinal)
            .Replace("C3.4 -> M1.pos", "C3.4 -> wire 1mm2 1m -> M1.pos", StringComparison.Ordinal)
            .Replace("M1.neg -> C3.3 ->", "M1.neg -> C3.3a -> C3.3b ->", StringComparison.Ordinal));
        Assert.Contains(circuit.Wires, w => w.To == new TerminalName("C3", "4b"));
        Assert.Contains(circuit.Joints, j => j.Second == new TerminalName("C3", "3a"));
    }

    [Fact]
    public void Wires_between_the_same_ends_are_numbered()
    {
        var circuit = Read(MarkedSheet.Right
            + "  - S1 -> wire 1mm2 1m -> L1\n  - S1 -> wire 1mm2 1m -> L1\n  - S1 -> wire 1mm2 1m -> L1\n");
        Assert.Equal(
            ["S1~L1.1", "S1~L1.1~2", "S1~L1.1~3", "S1~L1.1~4"],
            circuit.Wires.Where(w => w.To == new TerminalName("L1", "1")).Select(w => w.Id));
    }

    [Fact]
    public void Module_inputs_and_outputs_say_all_they_have()
    {
        var module = (Module)Read(MarkedSheet.Add("parts", """
            §X1:
                kind: module
                feeds: [30, 15]
                grounds: [31]
                works from: 7 V
                draws: 0.3 A
                scan tool: yes
                outputs:
                  low: { side: low, on: 0.2 ohm, limit: 3 A, latches: yes, bias: 5 V through 4.7 kohm, needs: [go] }
                  high: { side: high, drive: pulsed }
                  bus: { side: high, drive: bus, bias: none }
                inputs:
                  go: { active: high, above: 5 V, pull: 5 V through 2 kohm }
                  stop: { active: low, below: 2 V }
                  plain: {}
            """).Text)["X1"];
        Assert.Equal(["30", "15", "31", "low", "high", "bus", "go", "stop", "plain"], module.Terminals);
        Assert.Equal((7, 0.3, true), (module.MinimumVolts, module.OwnAmps, module.Scan));
        var low = module.Outputs[0];
        Assert.Equal(
            (OutputSide.Low, OutputDrive.Steady, 0.2, 3.0, true, 5.0, 4700.0),
            (low.Side, low.Drive, low.OnOhms, low.LimitAmps, low.Latches, low.BiasVolts, low.BiasOhms));
        Assert.Equal(["go"], low.Needs);
        Assert.Equal((OutputSide.High, OutputDrive.Pulsed, 0.0), (module.Outputs[1].Side, module.Outputs[1].Drive, module.Outputs[1].BiasVolts));
        Assert.Equal(OutputDrive.Bus, module.Outputs[2].Drive);
        Assert.Equal(new ModuleInput("go", true, 5, 5, 2000), module.Inputs[0]);
        Assert.Equal(new ModuleInput("stop", false, 2, 12, 10_000), module.Inputs[1]);
        Assert.Equal(new ModuleInput("plain", true, 6, 0, 10_000), module.Inputs[2]);
    }
}
