using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Importing;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Verbs;

/// <summary>Makes a sheet of a table of wires, and lists what is left to do.</summary>
public static class FromTable
{
    /// <summary>Larger files are no tables of one circuit.</summary>
    private const long MostBytes = 4_000_000;

    public static int Run(Terminal terminal, FromTableSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (!settings.Replace && File.Exists(settings.Output))
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("table.sheet-exists", settings.Output));
        }

        var (wires, trouble) = Bytes(settings.Table);
        var (parts, other) = settings.Parts is null ? (null, null) : Bytes(settings.Parts);
        if ((trouble ?? other) is { } unreadable)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, unreadable);
        }

        var title = settings.Title is { Length: > 0 } asked ? asked : Path.GetFileNameWithoutExtension(settings.Table);
        var made = TableImport.Read(wires!, parts, string.IsNullOrWhiteSpace(title) ? settings.Table : title);
        var sheet = made.Sheet is null ? null : ToDo(terminal, settings, made) + made.Sheet;
        var problems = sheet is null ? [] : new SheetSource(settings.Output, sheet, null).Read().Problems;
        if (sheet is not null)
        {
            try
            {
                File.WriteAllText(settings.Output, sheet);
            }
            catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
            {
                return terminal.Fail(ExitCode.Broken, settings.Json, new Message("table.unwritable", settings.Output, wrong.Message));
            }
        }

        var good = sheet is not null && made.Remarks.All(r => r.Severity != ProblemSeverity.Error) && problems.All(p => p.Severity != ProblemSeverity.Error);
        if (settings.Json)
        {
            Tell(terminal, settings, made, problems, good);
        }
        else
        {
            Show(terminal, settings, made, problems, good);
        }

        return good ? ExitCode.Good : ExitCode.Broken;
    }

    /// <summary>What is to do, kept at the head of the sheet as comments, so that it is not lost with the screen.</summary>
    private static string ToDo(Terminal terminal, FromTableSettings settings, TableImported made)
    {
        var text = new StringBuilder();
        foreach (var remark in made.Remarks.Where(r => r.Severity != ProblemSeverity.Note))
        {
            var line = $"# {terminal.Say("table.to-do", $"{Where(settings, remark)}{terminal.Say(remark.Message)}")}";
            // A cell may hold anything; a comment ends at its line's end.
            text.Append(string.Concat(line.Select(c => char.IsControl(c) || c is '\u0085' or '\u2028' or '\u2029' || char.IsSurrogate(c) ? ' ' : c))).Append('\n');
        }

        return text.ToString();
    }

    private static string Where(FromTableSettings settings, TableRemark remark)
    {
        var table = Path.GetFileName(remark.Table == TableKind.Wires ? settings.Table : settings.Parts);
        return remark.Line == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{table}:{remark.Line}: ");
    }

    private static void Show(
        Terminal terminal, FromTableSettings settings, TableImported made, ImmutableArray<SheetProblem> problems, bool good)
    {
        foreach (var remark in made.Remarks)
        {
            var line = Where(settings, remark) + terminal.Say(remark.Message);
            terminal.Line(
                remark.Severity switch
                {
                    ProblemSeverity.Error => terminal.Say("lint.error", line),
                    ProblemSeverity.Warning => terminal.Say("table.to-do", line),
                    _ => terminal.Say("lint.note", line),
                },
                remark.Severity == ProblemSeverity.Error ? Page.Bad : default(Spectre.Console.Style?), 0, 2);
        }

        foreach (var problem in problems.Where(p => p.Severity == ProblemSeverity.Error))
        {
            terminal.Raw($"{settings.Output}:{problem.Line}:{problem.Column}: " + terminal.Say("lint.error", terminal.Say(problem.Message)));
        }

        if (made.Sheet is not null)
        {
            terminal.Raw(settings.Output + ":");
            terminal.Line(
                terminal.Say(good ? "table.done" : "table.done-unfit", made.Wires, made.Joints, made.Remarks.Count(r => r.Severity != ProblemSeverity.Note)),
                good ? Page.Good : Page.Bad);
        }
    }

    private static void Tell(
        Terminal terminal, FromTableSettings settings, TableImported made, ImmutableArray<SheetProblem> problems, bool good) =>
        JsonOutput.Write(terminal, json =>
        {
            json.WriteString("sheet", made.Sheet is null ? (string?)null : settings.Output);
            json.WriteBoolean("good", good);
            json.WriteNumber("wires", made.Wires);
            json.WriteNumber("joints", made.Joints);
            json.Array("remarks", made.Remarks, remark =>
            {
                json.WriteString("table", remark.Table == TableKind.Wires ? "wires" : "parts");
                json.WriteNumber("line", remark.Line);
                json.WriteString("severity", ProblemJson.Word(remark.Severity));
                json.WriteString("code", remark.Message.Code);
                json.WriteString("text", terminal.Say(remark.Message));
            });
            json.Problems(terminal, problems);
        });

    private static (byte[]? Bytes, Message? Problem) Bytes(string path)
    {
        try
        {
            return !File.Exists(path) ? (null, new Message("table.no-file", path))
                : new FileInfo(path).Length > MostBytes ? (null, new Message("table.too-large", path))
                : (File.ReadAllBytes(path), null);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return (null, new Message("table.unreadable", path, trouble.Message));
        }
    }
}
