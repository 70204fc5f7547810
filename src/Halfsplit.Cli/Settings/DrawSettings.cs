using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

/// <summary>A drawing: of a sheet, of a simulated car, or of a job.</summary>
public sealed class DrawSettings : VerbSettings
{
    [CommandArgument(0, "[SHEET]")]
    [Says("help.sheet-or-job")]
    public string? Sheet { get; init; }

    [CommandOption("-o|--output <FILE>", isRequired: true)]
    [Says("help.output")]
    public string Output { get; init; } = "";

    [CommandOption("-t|--theme <THEME>")]
    [Says("help.theme")]
    public string? Theme { get; init; }

    [CommandOption("-c|--condition <CONDITION>")]
    [Says("help.draw-condition")]
    public string? Condition { get; init; }

    [CommandOption("-f|--fault <FAULT>")]
    [Says("help.fault")]
    public string[] Faults { get; init; } = [];

    [CommandOption("-j|--job <FILE>")]
    [Says("help.draw-job")]
    public string? Job { get; init; }
}
