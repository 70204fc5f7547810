using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Motors;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Drawings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Cli.Verbs;
using Halfsplit.Drawing;
using Halfsplit.Drawing.Small;

namespace Halfsplit.Cli.Bench;

/// <summary>A motor by its recorded current, or by the averages that a meter shows.</summary>
public static class BenchMotor
{
    /// <summary>Larger files are no recordings that an aid looks at.</summary>
    private const long MostBytes = 200_000_000;

    /// <summary>So many turns are drawn.</summary>
    private const double TurnsDrawn = 4;

    /// <summary>Seconds that are drawn where nothing turns.</summary>
    private const double SecondsDrawn = 0.05;

    public static int Run(Terminal terminal, MotorSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if ((settings.File is null) != (settings.MeanAmps is not null) || (settings.File is not null && (settings.PeakAmps ?? settings.RippleHertz) is not null))
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.motor-file-or-mean"));
        }

        // A job that can't be opened is told later, when the answer is attached.
        var rating = settings.Job is { } job && JobDesk.Open(terminal, job, asksNext: false) is { IsOpen: true } opened
            ? SheetRating.Of(opened.Session.Circuit, settings.Part)
            : null;
        var rated = settings.RatedAmps ?? rating?.Amps;
        Answer Beside(Answer answer) => rating is not null && rated is { } used ? rating.Beside(answer, used) : answer;
        if (settings.MeanAmps is { } mean)
        {
            return settings.Plot is not null
                ? terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.no-plot-of-averages"))
                : AnswerPage.Show(
                    terminal, settings,
                    MotorAverages.Of(new AveragesQuestion(mean, settings.PeakAmps, settings.RippleHertz, settings.Bars, rated)).Then(MotorAverages.Answer).Then(Beside));
        }

        if (settings.Plot is { } plot && !DrawingFile.Endings.Contains(DrawingFile.EndingOf(plot)))
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("cli.no-drawing-format", plot, string.Join(", ", DrawingFile.Endings)));
        }

        if (Read(settings.File!, out var problem) is not { } bytes)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, problem!);
        }

        var trace = TraceBytes.Parse(bytes, settings.Rate, settings.FullScale);
        var outcome = trace.IsGood
            ? MotorReading.Of(new MotorQuestion(trace.Result!, settings.Bars, rated))
            : Outcome.Wrong<MotorResult>(trace.Problems);
        if (outcome.Result is { } result && settings.Plot is { } path)
        {
            var svg = LinePlot.Svg(
                terminal.Say("bench.motor-plot"), [Wave(terminal, result), Spectrum(terminal, result)], new DrawingOptions { Texts = terminal.Texts });
            if (DrawingFile.Write(path, svg) is { } unwritten)
            {
                return terminal.Fail(ExitCode.Broken, settings.Json, unwritten);
            }
        }

        return AnswerPage.Show(terminal, settings, outcome.Then(MotorAnswer.Of).Then(Beside));
    }

    private static byte[]? Read(string path, out Message? problem)
    {
        problem = null;
        try
        {
            if (new FileInfo(path).Length <= MostBytes)
            {
                return File.ReadAllBytes(path);
            }

            problem = new Message("bench.file-too-large", path);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or ArgumentException)
        {
            problem = new Message("bench.file-unreadable", path, trouble.Message);
        }

        return null;
    }

    /// <summary>A few turns, each marked where it begins.</summary>
    private static Curve Wave(Terminal terminal, MotorResult result)
    {
        var rate = result.Question.Trace.SamplesPerSecond;
        var turn = 60 / result.Turns?.Value;
        var seconds = turn * TurnsDrawn ?? SecondsDrawn;
        var amps = result.Question.Trace.Amps[result.RunningFrom..];
        var count = Math.Min(amps.Length, (int)Math.Ceiling(seconds * rate));
        var marks = turn is { } time ? Enumerable.Range(0, (int)TurnsDrawn).Select(i => (i * time * 1e3, terminal.Say("bench.motor-turn", i + 1))) : [];
        return new Curve(
            terminal.Say("bench.motor-wave"), "ms", "A", [.. amps.Take(count).Select((a, i) => (i / rate * 1e3, a))], [.. marks]);
    }

    /// <summary>Up to three times the ripple, which is marked, and the turns.</summary>
    private static Curve Spectrum(Terminal terminal, MotorResult result)
    {
        var highest = Math.Min(result.Spectrum.HighestHertz, 3 * (result.RippleHertz ?? 500));
        var marks = ImmutableArray.CreateBuilder<(double, string)>();
        if (result.RippleHertz is { } ripple)
        {
            marks.Add((ripple, terminal.Say("bench.motor-ripple")));
        }

        if (result.Turns is { } turns)
        {
            marks.Add((turns.Value / 60, terminal.Say("bench.motor-turns")));
        }

        return new Curve(
            terminal.Say("bench.motor-spectrum"), "Hz", "A", [.. result.Spectrum.Lines.Where(l => l.Hertz <= highest)], marks.ToImmutable());
    }
}
