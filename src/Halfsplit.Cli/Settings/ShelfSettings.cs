using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

/// <summary>A question to the shelf.</summary>
public sealed class ShelfSettings : VerbSettings
{
    [CommandArgument(0, "[WORDS]")]
    [Says("help.shelf-words")]
    public string[] Words { get; init; } = [];
}
