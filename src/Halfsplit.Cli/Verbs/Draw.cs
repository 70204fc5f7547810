using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Drawings;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Drawing;
using Halfsplit.Drawing.Layers;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Cli.Verbs;

/// <summary>Draws a circuit to a file, with what is predicted or what a job has found laid over it.</summary>
public static class Draw
{
    private static readonly string[] Themes = ["light", "dark", "print"];

    public static int Run(Terminal terminal, DrawSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (Wrong(settings) is { } wrong)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, wrong);
        }

        var (circuit, session, code, trouble) = Find(terminal, settings);
        if (circuit is null)
        {
            return terminal.Fail(code, settings.Json, trouble!);
        }

        if (LayersOf(circuit, session, settings, out var problems) is not { } layers)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, problems);
        }

        var layout = CircuitDrawing.Lay(circuit);
        var svg = CircuitDrawing.Svg(layout, new DrawingOptions
        {
            Theme = Enum.Parse<DrawingTheme>(settings.Theme ?? Themes[0], ignoreCase: true),
            Layers = layers,
            Texts = terminal.Texts,
            Switchable = !DrawingFile.IsPlain(settings.Output),
        });
        return DrawingFile.Write(settings.Output, svg) is { } unwritten
            ? terminal.Fail(ExitCode.Broken, settings.Json, unwritten)
            : Tell(terminal, settings, layout);
    }

    private static int Tell(Terminal terminal, DrawSettings settings, CircuitLayout layout)
    {
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteString("file", settings.Output);
                json.WriteNumber("width", Math.Ceiling(layout.Width));
                json.WriteNumber("height", Math.Ceiling(layout.Height));
                json.WriteNumber("crossings", layout.Crossings);
            });
        }
        else
        {
            terminal.Line(terminal.Say("draw.done", settings.Output), null);
        }

        return ExitCode.Good;
    }

    private static Message? Wrong(DrawSettings settings)
    {
        if (settings.Sheet is null && settings.Job is null)
        {
            return new Message("cli.say-sheet");
        }

        if (settings.Theme is { } theme && !Themes.Contains(theme, StringComparer.OrdinalIgnoreCase))
        {
            return new Message("cli.no-theme", theme, string.Join(", ", Themes));
        }

        return DrawingFile.Endings.Contains(DrawingFile.EndingOf(settings.Output))
            ? null
            : new Message("cli.no-drawing-format", settings.Output, string.Join(", ", DrawingFile.Endings));
    }

    /// <summary>The circuit of the sheet, or of the job with the sheet it carries.</summary>
    private static (Circuit? Circuit, JobSession? Session, int Code, Message? Trouble) Find(Terminal terminal, DrawSettings settings)
    {
        var source = settings.Sheet is { } sheet ? SheetSource.Find(sheet) : null;
        if (source is { Text: null })
        {
            return (null, null, ExitCode.Broken, source.Problem);
        }

        if (settings.Job is { } job)
        {
            var opened = JobDesk.Open(terminal, job);
            return !opened.IsOpen ? (null, null, ExitCode.Broken, opened.Problem)
                : source is not null && source.Text != opened.Session.Opened.SheetText
                    ? (null, null, ExitCode.Usage, new Message("cli.job-has-other-sheet", source.Name, job))
                    : (opened.Session.Circuit, opened.Session, ExitCode.Good, null);
        }

        return source!.Read().Circuit is { } circuit
            ? (circuit, null, ExitCode.Good, null)
            : (null, null, ExitCode.Broken, new Message("cli.sheet-has-errors", source.Name));
    }

    private static ImmutableArray<DrawingLayer>? LayersOf(
        Circuit circuit, JobSession? session, DrawSettings settings, out ImmutableArray<Message> problems)
    {
        var layers = ImmutableArray.CreateBuilder<DrawingLayer>();
        problems = [];
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        var names = new Names(simulator);
        var faults = settings.Faults
            .SelectMany(f => f.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Select(names.Fault).OfType<Fault>().ToImmutableArray();
        if (settings.Condition is { } condition && names.Arrangement(condition, [], [], []) is { } arrangement
            && names.Problems.Count == 0)
        {
            layers.Add(new PredictionLayer(simulator.Simulate(arrangement, faults)));
        }

        if (session is not null)
        {
            layers.AddRange(JobLayers.Of(session, EntryText.Value));
        }

        if (faults.Length > 0)
        {
            layers.Add(new FaultLayer(faults));
        }

        problems = [.. names.Problems];
        return problems.Length > 0 ? null : layers.ToImmutable();
    }
}
