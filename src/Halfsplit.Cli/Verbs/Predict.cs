using System.Globalization;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Verbs;

/// <summary>Says what a meter would read in a car, healthy or with faults.</summary>
public static class Predict
{
    public static int Run(Terminal terminal, CarSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (SimulatedSetup.Of(settings, out var problems, out var code) is not { } setup)
        {
            return terminal.Fail(code, settings.Json, problems);
        }

        // A lamp or an in-line ammeter is part of the circuit while it is laid on.
        var laid = setup.Probe is { } probe && InstrumentReader.TakesPart(probe.Instrument) ? probe : null;
        var point = setup.Simulator.Simulate(setup.Arrangement, setup.Faults, new SimulationOptions(1, laid));
        var reading = setup.Probe is null ? null : ShownReading.Of(
            setup.Probe, new InstrumentReader(point, setup.Simulator.Meter).Read(setup.Probe), setup.Simulator.Meter,
            setup.Circuit.Battery.NominalVolts);
        var car = new CarReport(point);
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json => CarJson.Write(json, settings.Sheet, setup, car, reading));
        }
        else
        {
            Title(terminal, setup, point);
            if (reading is not null)
            {
                Reading(terminal, reading);
            }
            else
            {
                States(terminal, car);
            }
        }

        return ExitCode.Good;
    }

    private static void Title(Terminal terminal, SimulatedSetup setup, OperatingPoint point)
    {
        terminal.Line(setup.Circuit.Title, Page.Heading);
        terminal.Row(terminal.Say("predict.set-up"), terminal.Say(CheckTitle.SetUp(setup.Arrangement)));
        terminal.Row(
            terminal.Say("predict.faults"),
            setup.Faults.Length == 0 ? terminal.Say("predict.healthy") : string.Join(", ", setup.Faults));
        if (point.Chatter.Length > 0)
        {
            terminal.Row(terminal.Say("predict.chatter"), string.Join(", ", point.Chatter), style: Page.Caution);
        }

        if (point.Unsettled is { } part)
        {
            terminal.Row(terminal.Say("predict.unsettled"), part, style: Page.Caution);
        }

        terminal.Blank();
    }

    private static void Reading(Terminal terminal, ShownReading reading)
    {
        var probe = reading.Probe;
        terminal.Row(terminal.Say("check.meter"), terminal.Say($"instrument.{probe.Instrument.Name()}"));
        if (probe is { Red: { } red, Black: { } black })
        {
            terminal.Row(terminal.Say("check.red"), red.ToString());
            terminal.Row(terminal.Say("check.black"), black.ToString());
        }

        if (probe.About is { } about)
        {
            terminal.Row(terminal.Say("check.around"), about);
        }

        if (reading.Abstains is { } why)
        {
            terminal.Row(terminal.Say("predict.reading"), terminal.Say("predict.abstains", terminal.Say(why)), style: Page.Caution);
            return;
        }

        var glow = reading.Word is { } word && probe.Instrument == Instrument.TestLamp
            ? $", {CliTexts.Words.TextOf(word)}"
            : "";
        terminal.Row(terminal.Say("predict.reading"), reading.Spoken + glow, style: Page.Heading);
        if (reading.Value is { } value && probe.Instrument is not Instrument.Continuity)
        {
            terminal.Row(terminal.Say("predict.exactly"), value.ToString("G6", CliTexts.Formats));
        }
    }

    private static void States(Terminal terminal, CarReport car)
    {
        Section(terminal, "predict.loads", car.Loads.Select(l => terminal.Say(
            l.State.Stalled ? "predict.load-stalled" : "predict.load",
            l.Load.Id, CliTexts.Words.TextOf(AnswerWord.Find(CarReport.Word(l.State.Condition))!), Round(l.State.Volts), Round(l.State.Amps), l.Load.Notes.Name ?? "")));
        Section(terminal, "predict.relays", car.Relays.Select(r => terminal.Say(
            r.PulledIn ? "predict.relay-in" : "predict.relay-out", r.Relay.Id, Round(r.CoilVolts), r.Relay.Notes.Name ?? "")));
        Section(terminal, "predict.fuses", car.Fuses.Select(f => terminal.Say(
            f.Blown ? "predict.fuse-blown" : "predict.fuse", f.Fuse.Id, Round(f.Amps), f.Fuse.Notes.Name ?? "")));
        Section(terminal, "predict.modules", car.Modules.Select(m => terminal.Say(
            m.Awake ? "predict.module-awake" : "predict.module-asleep",
            m.Module.Id,
            string.Join(", ", m.Outputs.Select(o => terminal.Say(o.Driving ? "predict.output-on" : "predict.output-off", o.Output))),
            m.Module.Notes.Name ?? "")));
        Section(terminal, "predict.amps", car.WireAmps.Select(w => terminal.Say("predict.wire", w.Wire.Id, Round(w.Amps))));
        terminal.Line(terminal.Say("predict.volts"), Page.Heading);
        foreach (var part in car.Volts.GroupBy(v => v.Terminal.Part))
        {
            var list = part.Select(v => v.Terminal.Name.Length == 0 ? Round(v.Volts) : $"{v.Terminal.Name} {Round(v.Volts)}");
            terminal.Row(part.Key, string.Join("   ", list), 10);
        }
    }

    private static void Section(Terminal terminal, string heading, IEnumerable<string> lines)
    {
        var all = lines.ToList();
        if (all.Count == 0)
        {
            return;
        }

        terminal.Line(terminal.Say(heading), Page.Heading);
        foreach (var line in all)
        {
            terminal.Line(line, null, 2, 4);
        }

        terminal.Blank();
    }

    /// <summary>Two decimals, more for what is small.</summary>
    private static string Round(double value)
    {
        var size = Math.Abs(value);
        // What rounds to nothing has no sign.
        return (size < 0.0005 ? 0 : value).ToString(size is > 0.0005 and < 0.1 ? "F3" : "F2", CliTexts.Formats);
    }
}
