using System.ComponentModel;
using Halfsplit.Bench;
using Halfsplit.Cli.Settings;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Bench;

/// <summary>What a wire is and carries.</summary>
public sealed class WireSettings : VerbSettings
{
    [CommandArgument(0, "<GAUGE>")]
    [Says("help-bench.wire-gauge")]
    public string[] Gauge { get; init; } = [];

    [CommandOption("--length <METRES>")]
    [Says("help-bench.length")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Metres { get; init; } = BenchDefaults.Usual("length");

    [CommandOption("--amps <AMPS>")]
    [Says("help-bench.amps")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Amps { get; init; }

    [CommandOption("--return")]
    [Says("help-bench.return")]
    public bool HasReturn { get; init; }

    [CommandOption("--celsius <DEGREES>")]
    [Says("help-bench.celsius")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Celsius { get; init; } = BenchDefaults.Usual("wire-celsius");

    [CommandOption("--supply <VOLTS>")]
    [Says("help-bench.supply")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double SupplyVolts { get; init; } = BenchDefaults.Usual("supply");

    [CommandOption("--allowed <VOLTS>")]
    [Says("help-bench.allowed")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? AllowedVolts { get; init; }
}

/// <summary>A chain of pieces that a current goes through.</summary>
public sealed class DropSettings : VerbSettings
{
    [CommandOption("--piece <PIECE>")]
    [Says("help-bench.piece")]
    public string[] Pieces { get; init; } = [];

    [CommandOption("--amps <AMPS>")]
    [Says("help-bench.amps")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Amps { get; init; }

    [CommandOption("--celsius <DEGREES>")]
    [Says("help-bench.celsius")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Celsius { get; init; } = BenchDefaults.Usual("wire-celsius");

    [CommandOption("--allowed <VOLTS>")]
    [Says("help-bench.allowed")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? AllowedVolts { get; init; }

    [CommandOption("--starter")]
    [Says("help-bench.starter")]
    public bool IsStarter { get; init; }
}
