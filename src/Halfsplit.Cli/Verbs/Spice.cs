using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Spice;

namespace Halfsplit.Cli.Verbs;

/// <summary>Writes the settled car as a SPICE netlist, so that its readings can be checked with another simulator.</summary>
public static class Spice
{
    public static int Run(Terminal terminal, CarSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (SimulatedSetup.Of(settings, out var problems, out var code) is not { } setup)
        {
            return terminal.Fail(code, settings.Json, problems);
        }

        var probe = setup.Probe;
        if (probe is { Instrument: not (Instrument.Volts or Instrument.VoltsLowImpedance or Instrument.TestLamp or Instrument.AmpsInline) })
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("spice.meter", probe.Instrument.Name()));
        }

        var laid = probe is not null && InstrumentReader.TakesPart(probe.Instrument) ? probe : null;
        var point = setup.Simulator.Simulate(setup.Arrangement, setup.Faults, new SimulationOptions(1, laid));
        var network = setup.Simulator.Network;
        var meter = setup.Simulator.Meter;
        (int, int, double)? between = probe is { Red: { } red, Black: { } black } && laid is null
            ? (network.NodeOf(red), network.NodeOf(black),
                probe.Instrument == Instrument.Volts ? meter.InputOhms : meter.LowImpedanceOhms)
            : null;
        var netlist = SpiceNetlist.Of(point, between);
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteString("sheet", settings.Sheet);
                json.WriteString("netlist", netlist.Text);
                json.Object("nodeOfTerminal", () =>
                {
                    foreach (var (terminalName, node) in netlist.NodeOfTerminal)
                    {
                        json.WriteString(terminalName, node);
                    }
                });
            });
            return ExitCode.Good;
        }

        // The first line of a netlist is its title, so the map follows it.
        var body = netlist.Text.Split('\n', 2);
        terminal.Out.Write(body[0] + "\n");
        foreach (var (name, node) in netlist.NodeOfTerminal)
        {
            terminal.Out.Write(terminal.Say("spice.map", name, node) + "\n");
        }

        terminal.Out.Write(body[1]);
        return ExitCode.Good;
    }
}
