using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

/// <summary>A sheet for another car.</summary>
public sealed class AdaptSettings : SheetSettings
{
    [CommandOption("-o|--output <FILE>")]
    [Says("help.adapt-output")]
    public string? Output { get; init; }

    [CommandOption("--change <TEXT>")]
    [Says("help.adapt-change")]
    public string[] Changes { get; init; } = [];

    [CommandOption("--overwrite")]
    [Says("help.adapt-overwrite")]
    public bool Overwrite { get; init; }

    [CommandOption("--against <SHEET>")]
    [Says("help.adapt-against")]
    public string? Against { get; init; }
}
