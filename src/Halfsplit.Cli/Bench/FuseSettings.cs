using System.ComponentModel;
using Halfsplit.Bench;
using Halfsplit.Cli.Settings;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Bench;

/// <summary>What was seen and measured of a fuse.</summary>
public sealed class FuseSettings : PartSettings
{
    [CommandOption("--look <LOOK>")]
    [Says("help-bench.look")]
    public string? Look { get; init; }

    [CommandOption("--ohms <OHMS>")]
    [Says("help-bench.fuse-ohms")]
    [TypeConverter(typeof(OhmsOrOpen))]
    public double? Ohms { get; init; }

    [CommandOption("--tabs <VOLTS,VOLTS>")]
    [Says("help-bench.tabs")]
    public string? Tabs { get; init; }
}

/// <summary>A fuse and the millivolts across it.</summary>
public sealed class DrainSettings : VerbSettings
{
    [CommandArgument(0, "<FUSE>")]
    [Says("help-bench.fuse-name")]
    public string[] Fuse { get; init; } = [];

    [CommandOption("--millivolts <MILLIVOLTS>")]
    [Says("help-bench.millivolts")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Millivolts { get; init; }

    [CommandOption("--step <MILLIVOLTS>")]
    [Says("help-bench.step")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double StepMillivolts { get; init; } = 1e3 * BenchDefaults.Usual("meter-step");
}

/// <summary>A fuse box and a battery that goes flat.</summary>
public sealed class DrainHuntSettings : VerbSettings
{
    [CommandOption("--fuse <FUSE>")]
    [Says("help-bench.hunt-fuse")]
    public string[] Fuses { get; init; } = [];

    [CommandOption("--total <AMPS>")]
    [Says("help-bench.total")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? TotalAmps { get; init; }

    [CommandOption("--allowed <AMPS>")]
    [Says("help-bench.allowed-amps")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? AllowedAmps { get; init; }

    [CommandOption("--step <MILLIVOLTS>")]
    [Says("help-bench.step")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double StepMillivolts { get; init; } = 1e3 * BenchDefaults.Usual("meter-step");
}
