using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Spice;
using Halfsplit.Simulation.Tests.Judges;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Spice;

/// <summary>What the exported netlist holds besides the circuit: a map, a meter, what is laid on, both pictures of a pulse.</summary>
public sealed class SpiceNetlistTests
{
    private static readonly SmallSheet Lamp = SmallSheet.Of(
        """
        S1: { kind: switch }
        L1: { kind: lamp, watts: 21 W at 12 V }
        """,
        """
        BAT.pos -> wire 0.75mm2 4m -> S1 -> L1.1
        L1.2 -> BODY
        """,
        """
        off: {}
        on: { S1: on }
        """);

    [Fact]
    public void The_map_leads_from_every_terminal_to_its_volts()
    {
        var point = Lamp.In();
        var netlist = SpiceNetlist.Of(point);
        var deck = SpiceDeck.Parse(netlist.Text);
        var volts = SpiceDeck.Judge([deck])[0];
        Assert.Equal(Lamp.Circuit.Terminals.Length, netlist.NodeOfTerminal.Count);
        foreach (var (terminal, node) in netlist.NodeOfTerminal)
        {
            Assert.Equal(node == "0" ? 0 : volts[deck.Nodes.ToList().IndexOf(node)], point.Volts(terminal), 1e-6);
        }

        Assert.Equal("0", netlist.NodeOfTerminal["BAT.neg"]);
        Assert.InRange(point.Volts("L1.1"), 11, 12);
    }

    [Fact]
    public void A_meter_in_the_netlist_shows_ngspice_what_it_shows_here()
    {
        var point = Lamp.In("off");
        var red = Lamp.Network.NodeOf(new("S1", "2"));
        var netlist = SpiceNetlist.Of(point, (red, -1, Meter.Default.InputOhms + Meter.Default.LeadOhms));
        var deck = SpiceDeck.Parse(netlist.Text);
        var volts = SpiceDeck.Judge([deck])[0][deck.Nodes.ToList().IndexOf(netlist.NodeOfTerminal["S1.2"])];
        Assert.Equal(volts, Lamp.Read(Instrument.Volts, "S1.2", "BAT.neg", "off"), 1e-9);
    }

    [Fact]
    public void A_lamp_laid_on_a_chattering_circuit_is_exported_as_it_was_solved()
    {
        // The relay cuts its own coil's feed; the lamp beside it is never at rest.
        var buzzer = SmallSheet.Of(
            """
            R1: { kind: resistor, ohms: 4 ohm }
            K1: { kind: relay, contacts: changeover }
            """,
            """
            BAT.pos -> R1 -> K1.30
            K1.87a -> wire 0.75mm2 0.1m -> K1.86
            K1.85 -> BODY
            """);
        var probe = SmallSheet.Held(Instrument.TestLamp, "K1.86", "BODY");
        var point = buzzer.Simulator.Simulate(new Arrangement("on"), [], new SimulationOptions(Laid: probe));
        var laid = SpiceDeck.Parse(SpiceNetlist.Of(point).Text).Elements.Single(e => e.Name == "Rlaid0");
        Assert.Equal(["K1"], point.Chatter);
        var deck = SpiceDeck.Parse(SpiceNetlist.Of(point).Text);
        var volts = SpiceDeck.Judge([deck])[0];
        Assert.Equal(volts[deck.Nodes.ToList().IndexOf(laid.From)], point.Volts("K1.86"), 1e-6);
    }

    [Fact]
    public void A_pulsed_output_has_two_pictures_whose_weighted_mean_is_the_reading()
    {
        var sheet = SmallSheet.Of(
            """
            ECU: { kind: module, feeds: [30], grounds: [31], outputs: { fan: { side: low, drive: pulsed, on: 0.1 ohm, limit: 10 A } } }
            H1: { kind: heater, ohms: 6 ohm }
            """,
            """
            BAT.pos -> ECU.30
            BAT.pos -> H1.1
            H1.2 -> wire 0.75mm2 1m -> ECU.fan
            ECU.31 -> BODY
            """,
            "on: { ECU.fan: 30 % }");
        var point = sheet.In();
        SpiceNetlist[] pictures = [SpiceNetlist.Of(point), SpiceNetlist.Of(point, pulseOff: true)];
        var decks = pictures.Select(p => SpiceDeck.Parse(p.Text)).ToArray();
        var judged = SpiceDeck.Judge(decks);
        var volts = decks.Select((d, i) => judged[i][d.Nodes.ToList().IndexOf(pictures[i].NodeOfTerminal["ECU.fan"])]).ToArray();
        Assert.InRange(volts[0], 0, 1);
        Assert.InRange(volts[1], 11.9, 12);
        Assert.Equal((0.3 * volts[0]) + (0.7 * volts[1]), point.Volts("ECU.fan"), 1e-6);
    }
}
