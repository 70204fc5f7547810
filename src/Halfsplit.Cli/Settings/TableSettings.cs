using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

/// <summary>A sheet to be made of tables.</summary>
public sealed class FromTableSettings : VerbSettings
{
    [CommandArgument(0, "<TABLE>")]
    [Says("help.table")]
    public string Table { get; init; } = "";

    [CommandOption("-o|--output <SHEET>", isRequired: true)]
    [Says("help.table-sheet")]
    public string Output { get; init; } = "";

    [CommandOption("-p|--parts <TABLE>")]
    [Says("help.table-parts")]
    public string? Parts { get; init; }

    [CommandOption("--title <TEXT>")]
    [Says("help.table-title")]
    public string? Title { get; init; }

    [CommandOption("--overwrite")]
    [Says("help.table-replace")]
    public bool Replace { get; init; }
}

/// <summary>A sheet to be written as tables.</summary>
public sealed class ToTableSettings : SheetSettings
{
    [CommandOption("-o|--output <TABLE>", isRequired: true)]
    [Says("help.table-output")]
    public string Output { get; init; } = "";

    [CommandOption("-p|--parts <TABLE>")]
    [Says("help.table-parts-output")]
    public string? Parts { get; init; }
}
