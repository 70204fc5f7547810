using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

/// <summary>A relay's socket or a connector of a sheet whose cavities nobody knows.</summary>
public sealed class PinsSettings : SheetSettings
{
    [CommandOption("-p|--part <PART>", isRequired: true)]
    [Says("help.pins-part")]
    public string Part { get; init; } = "";

    [CommandOption("--half <HALF>")]
    [Says("help.pins-half")]
    public string Half { get; init; } = "a";

    [CommandOption("--cavities <NAMES>")]
    [Says("help.pins-cavities")]
    public string Cavities { get; init; } = "";

    [CommandOption("-c|--condition <CONDITION>")]
    [Says("help.pins-condition")]
    public string[] Conditions { get; init; } = [];

    [CommandOption("-r|--reading <READING>")]
    [Says("help.pins-reading")]
    public string[] Readings { get; init; } = [];

    [CommandOption("--talk")]
    [Says("help.pins-talk")]
    public bool Talk { get; init; }
}
