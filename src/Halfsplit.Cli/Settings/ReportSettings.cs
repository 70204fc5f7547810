using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

/// <summary>The report of a job.</summary>
public sealed class ReportSettings : JobSettings
{
    [CommandOption("-o|--output <FILE>")]
    [Says("help.report-output")]
    public string? Output { get; init; }

    [CommandOption("--for <READER>")]
    [Says("help.for")]
    public string? For { get; init; }

    [CommandOption("--format <FORMAT>")]
    [Says("help.format")]
    public string? Format { get; init; }

    [CommandOption("--paper <PAPER>")]
    [Says("help.paper")]
    public string? Paper { get; init; }
}

/// <summary>What a report says of the car and the people.</summary>
public sealed class DescribeSettings : JobSettings
{
    [CommandOption("--vehicle <TEXT>")]
    [Says("help.vehicle")]
    public string? Vehicle { get; init; }

    [CommandOption("--owner <NAME>")]
    [Says("help.owner")]
    public string? Owner { get; init; }

    [CommandOption("--worker <NAME>")]
    [Says("help.worker")]
    public string? Worker { get; init; }
}
