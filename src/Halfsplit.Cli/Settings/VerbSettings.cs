using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

/// <summary>What every verb takes.</summary>
public abstract class VerbSettings : CommandSettings
{
    [CommandOption("--json")]
    [Says("help.json")]
    public bool Json { get; init; }

    /// <summary>Read before the verbs are (<see cref="Terminals.RunLanguage"/>), as their help is in it too.</summary>
    [CommandOption("--language <LANGUAGE>")]
    [Says("help.language")]
    public string? Language { get; init; }
}

/// <summary>A verb about a sheet.</summary>
public class SheetSettings : VerbSettings
{
    [CommandArgument(0, "<SHEET>")]
    [Says("help.sheet")]
    public string Sheet { get; init; } = "";
}

/// <summary>A verb about a job.</summary>
public class JobSettings : VerbSettings
{
    [CommandArgument(0, "<JOB>")]
    [Says("help.job")]
    public string Job { get; init; } = "";
}
