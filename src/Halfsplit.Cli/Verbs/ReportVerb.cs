using System.Text;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Printing;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Jobs.Reporting;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Verbs;

/// <summary>Writes the report of a job. It only reads the job.</summary>
public static class ReportVerb
{
    private static readonly string[] Formats = ["html", "pdf", "json", "csv"], Readers = ["owner", "colleague"], Papers = ["a4", "letter"];

    public static int Run(Terminal terminal, ReportSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (Wrong(settings) is { } wrong)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, wrong);
        }

        var format = FormatOf(settings);
        if (settings.Output is { } taken && (File.Exists(taken) || Directory.Exists(taken)))
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, new Message("report.file-exists", taken));
        }

        var opened = JobDesk.Open(terminal, settings.Job, asksNext: false);
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        var session = opened.Session;
        var report = terminal.While(() => ReportBuilder.Of(session));
        if (format == "pdf")
        {
            var html = Html(terminal, settings, session, report, ReportPaper.A4);
            var trouble = terminal.While(() => PdfPrinter.Print(html, settings.Output!, terminal.Environment));
            return trouble is null ? Saved(terminal, settings) : terminal.Fail(ExitCode.Broken, settings.Json, trouble);
        }

        var text = format switch
        {
            "json" => ReadingsJson.Write(report, terminal.Texts),
            "csv" => ReadingsCsv.Write(report, terminal.Texts),
            _ => Html(terminal, settings, session, report, ReportPaper.Any),
        };
        if (settings.Output is null)
        {
            terminal.Out.Write(text);
            return ExitCode.Good;
        }

        return Keep(settings.Output, text, withMark: format == "csv") is { } problem
            ? terminal.Fail(ExitCode.Broken, settings.Json, problem)
            : Saved(terminal, settings);
    }

    private static string Html(Terminal terminal, ReportSettings settings, JobSession session, Report report, ReportPaper usual)
    {
        var reader = Is(settings.For, "colleague") ? ReportReader.Colleague : ReportReader.Owner;
        var paper = Is(settings.Paper, "a4") ? ReportPaper.A4 : Is(settings.Paper, "letter") ? ReportPaper.Letter : usual;
        return ReportPage.Html(report, terminal.Texts, reader, paper, ReportDrawing.Svg(session, report, terminal.Texts, reader));
    }

    private static Message? Wrong(ReportSettings settings)
    {
        foreach (var (option, given, possible) in (ReadOnlySpan<(string, string?, string[])>)[
            ("--format", settings.Format, Formats), ("--for", settings.For, Readers), ("--paper", settings.Paper, Papers)])
        {
            if (given is not null && !possible.Contains(given, StringComparer.OrdinalIgnoreCase))
            {
                return new Message("report.bad-choice", option, given, string.Join(", ", possible));
            }
        }

        return FormatOf(settings) switch
        {
            null => new Message("report.say-format", settings.Output!, string.Join(", ", Formats)),
            "pdf" when settings.Output is null => new Message("report.say-output"),
            _ => null,
        };
    }

    /// <summary>The format that is asked for, or the one of the file's name; null where the name does not tell.</summary>
    private static string? FormatOf(ReportSettings settings)
    {
        if (settings.Format is { } said)
        {
            return said.ToLowerInvariant();
        }

        if (settings.Output is not { } output)
        {
            return settings.Json ? "json" : "html";
        }

        var ending = Path.GetExtension(output).TrimStart('.').ToLowerInvariant();
        return ending == "htm" ? "html" : Formats.Contains(ending) ? ending : null;
    }

    private static int Saved(Terminal terminal, ReportSettings settings)
    {
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json => json.WriteString("saved", settings.Output));
        }
        else
        {
            terminal.Line(terminal.Say("report.saved", settings.Output!), Page.Good, 0, 4);
        }

        return ExitCode.Good;
    }

    /// <summary>Writes a new file. A table begins with the mark that tells a spreadsheet that it is UTF-8.</summary>
    private static Message? Keep(string path, string text, bool withMark)
    {
        try
        {
            using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
            using var writer = new StreamWriter(stream, new UTF8Encoding(withMark));
            writer.Write(text);
            return null;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return new Message("job.file-trouble", path, trouble.Message);
        }
    }

    private static bool Is(string? given, string name) => string.Equals(given, name, StringComparison.OrdinalIgnoreCase);
}
