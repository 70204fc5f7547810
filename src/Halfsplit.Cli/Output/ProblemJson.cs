using System.Text.Json;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Output;

/// <summary>The problems of a sheet as JSON.</summary>
public static class ProblemJson
{
    public static void Problems(this Utf8JsonWriter json, Terminal terminal, IEnumerable<SheetProblem> problems) =>
        json.Array("problems", problems, problem =>
        {
            json.WriteString("severity", Word(problem.Severity));
            json.WriteNumber("line", problem.Line);
            json.WriteNumber("column", problem.Column);
            json.WriteString("code", problem.Message.Code);
            json.WriteString("text", terminal.Say(problem.Message));
        });

    /// <summary><c>error</c>, <c>warning</c> or <c>note</c>.</summary>
    public static string Word(ProblemSeverity severity) => severity switch
    {
        ProblemSeverity.Error => "error",
        ProblemSeverity.Warning => "warning",
        _ => "note",
    };
}
