using System.Collections.Immutable;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Verbs;

/// <summary>Reads a sheet and lists its mistakes.</summary>
public static class Lint
{
    public static int Run(Terminal terminal, SheetSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var source = SheetSource.Find(settings.Sheet);
        if (source.Text is null)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, source.Problem!);
        }

        var (_, problems) = source.Read();
        var errors = problems.Count(p => p.Severity == ProblemSeverity.Error);
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteString("sheet", settings.Sheet);
                json.WriteBoolean("good", errors == 0);
                json.Problems(terminal, problems);
            });
        }
        else
        {
            Tell(terminal, settings.Sheet, problems);
        }

        return errors > 0 ? ExitCode.Broken : ExitCode.Good;
    }

    /// <summary>The problems of a sheet with their places, and how many they are.</summary>
    /// <param name="called">What the sheet is called where its whole path would be too long; null for the path.</param>
    public static void Tell(Terminal terminal, string sheet, ImmutableArray<SheetProblem> problems, string? called = null)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        foreach (var problem in problems)
        {
            var place = $"{sheet}:{problem.Line}:{problem.Column}: ";
            terminal.Raw(place + terminal.Say($"lint.{ProblemJson.Word(problem.Severity)}", terminal.Say(problem.Message)));
        }

        var errors = problems.Count(p => p.Severity == ProblemSeverity.Error);
        terminal.Line(
            terminal.Say(problems.Length == 0 ? "lint.good" : "lint.count", called ?? sheet, errors, problems.Length - errors),
            errors > 0 ? Page.Bad : Page.Good);
    }
}
