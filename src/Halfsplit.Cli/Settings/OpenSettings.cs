using System.ComponentModel;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

/// <summary>What the person comes with and has at hand.</summary>
public abstract class AtHandSettings : VerbSettings
{
    /// <summary>The sheet; null where a job says it.</summary>
    public abstract string? SheetName { get; }

    /// <summary>The file the job is kept in; null for none.</summary>
    public abstract string? JobPath { get; }

    [CommandOption("-c|--complaint <TEXT>")]
    [Says("help.complaint")]
    public string? Complaint { get; init; }

    [CommandOption("--load <PART>")]
    [Says("help.load")]
    public string? Load { get; init; }

    [CommandOption("--is <STATE>")]
    [Says("help.is")]
    public string? Is { get; init; }

    [CommandOption("--in <CONDITION>")]
    [Says("help.in")]
    public string? In { get; init; }

    [CommandOption("-n|--noticed <NAME>")]
    [Says("help.noticed")]
    public string[] Noticed { get; init; } = [];

    [CommandOption("--history <FOLDER>")]
    [Says("help.history-folder")]
    public string? History { get; init; }

    [CommandOption("--ignore-history")]
    [Says("help.ignore-history")]
    public bool IgnoreHistory { get; init; }

    [CommandOption("--vehicle <TEXT>")]
    [Says("help.vehicle")]
    public string? Vehicle { get; init; }

    [CommandOption("--hour-value <MONEY>")]
    [Says("help.hour-value")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? HourValue { get; init; }

    [CommandOption("--helper")]
    [Says("help.helper")]
    public bool Helper { get; init; }

    [CommandOption("--remote-starter")]
    [Says("help.remote-starter")]
    public bool RemoteStarter { get; init; }

    [CommandOption("--tool <TOOL>")]
    [Says("help.tool")]
    public string[] Tools { get; init; } = [];

    [CommandOption("--lead <METRES>")]
    [Says("help.lead")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? LeadMetres { get; init; }

    [CommandOption("--no-clamp")]
    [Says("help.no-clamp")]
    public bool NoClamp { get; init; }

    [CommandOption("--no-test-lamp")]
    [Says("help.no-test-lamp")]
    public bool NoTestLamp { get; init; }

    [CommandOption("--scan-tool")]
    [Says("help.scan-tool")]
    public bool ScanTool { get; init; }

    [CommandOption("--spare-relay")]
    [Says("help.spare-relay")]
    public bool SpareRelay { get; init; }

    [CommandOption("--smell-of-fuel")]
    [Says("help.smell-of-fuel")]
    public bool SmellOfFuel { get; init; }

    [CommandOption("--cannot-reach <PLACE>")]
    [Says("help.cannot-reach")]
    public string[] Unreachable { get; init; } = [];

    [CommandOption("--meter-counts <COUNTS>")]
    [Says("help.meter-counts")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? MeterCounts { get; init; }

    [CommandOption("--meter-accuracy <PERCENT>")]
    [Says("help.meter-accuracy")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? MeterAccuracy { get; init; }

    [CommandOption("--meter-input <OHMS>")]
    [Says("help.meter-input")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? MeterInput { get; init; }

    [CommandOption("--jack <AMPS>")]
    [Says("help.jack")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? JackAmps { get; init; }

    [CommandOption("--lamp <WATTS>")]
    [Says("help.test-lamp")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? LampWatts { get; init; }
}

/// <summary>Opens a job that is kept in a file.</summary>
public sealed class OpenSettings : AtHandSettings
{
    [CommandArgument(0, "<SHEET>")]
    [Says("help.sheet")]
    public string Sheet { get; init; } = "";

    public override string? SheetName => Sheet;

    [CommandOption("-j|--job <FILE>", isRequired: true)]
    [Says("help.job-file")]
    public string Job { get; init; } = "";

    public override string? JobPath => Job;
}

/// <summary>The job as a conversation.</summary>
public sealed class DiagnoseSettings : AtHandSettings
{
    [CommandArgument(0, "[SHEET]")]
    [Says("help.sheet-or-job")]
    public string? Sheet { get; init; }

    public override string? SheetName => Sheet;

    [CommandOption("-j|--job <FILE>")]
    [Says("help.job-file-optional")]
    public string? Job { get; init; }

    public override string? JobPath => Job;
}

/// <summary>What can be told apart on a sheet.</summary>
public sealed class CoverageSettings : AtHandSettings
{
    [CommandArgument(0, "<SHEET>")]
    [Says("help.sheet")]
    public string Sheet { get; init; } = "";

    public override string? SheetName => Sheet;

    public override string? JobPath => null;
}

/// <summary>A simulated car to play against.</summary>
public sealed class PracticeSettings : AtHandSettings
{
    [CommandArgument(0, "<SHEET>")]
    [Says("help.sheet")]
    public string Sheet { get; init; } = "";

    public override string? SheetName => Sheet;

    public override string? JobPath => null;

    [CommandOption("-s|--seed <NUMBER>")]
    [Says("help.seed")]
    public int? Seed { get; init; }
}

/// <summary>The whole plan for a sheet, before anything is measured.</summary>
public sealed class PlanSettings : AtHandSettings
{
    [CommandArgument(0, "<SHEET>")]
    [Says("help.sheet")]
    public string Sheet { get; init; } = "";

    public override string? SheetName => Sheet;

    public override string? JobPath => null;

    [CommandOption("--depth <STEPS>")]
    [Says("help.depth")]
    public int Depth { get; init; } = 5;

    [CommandOption("--least-odds <PERCENT>")]
    [Says("help.least-odds")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double LeastOdds { get; init; } = 4;

    [CommandOption("--dot")]
    [Says("help.dot")]
    public bool Dot { get; init; }
}
