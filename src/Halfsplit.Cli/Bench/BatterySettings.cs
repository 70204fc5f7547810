using System.ComponentModel;
using Halfsplit.Bench;
using Halfsplit.Cli.Settings;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Bench;

/// <summary>An aid for batteries and what charges them.</summary>
public abstract class SystemSettings : PartSettings
{
    [CommandOption("--system <VOLTS>")]
    [Says("help-bench.system")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double SystemVolts { get; init; } = BenchDefaults.Usual("supply");
}

/// <summary>A battery at rest.</summary>
public sealed class BatterySettings : SystemSettings
{
    [CommandOption("--volts <VOLTS>")]
    [Says("help-bench.rest-volts")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Volts { get; init; }

    [CommandOption("--type <TYPE>")]
    [Says("help-bench.battery-type")]
    public string Type { get; init; } = "flooded";

    [CommandOption("--celsius <DEGREES>")]
    [Says("help-bench.celsius")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Celsius { get; init; } = BenchDefaults.Usual("battery-celsius");
}

/// <summary>A battery under two loads.</summary>
public sealed class TwoLoadsSettings : SystemSettings
{
    [CommandOption("--light <VOLTS@AMPS>")]
    [Says("help-bench.light")]
    public string Light { get; init; } = "";

    [CommandOption("--heavy <VOLTS@AMPS>")]
    [Says("help-bench.heavy")]
    public string Heavy { get; init; } = "";

    [CommandOption("--cranking-amps <AMPS>")]
    [Says("help-bench.cranking-amps")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? CrankingAmps { get; init; }
}

/// <summary>Battery and cables while the starter turns.</summary>
public sealed class CrankingSettings : SystemSettings
{
    [CommandOption("--volts <VOLTS>")]
    [Says("help-bench.cranking-volts")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Volts { get; init; }

    [CommandOption("--celsius <DEGREES>")]
    [Says("help-bench.celsius")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Celsius { get; init; } = BenchDefaults.Usual("battery-celsius");

    [CommandOption("--amps <AMPS>")]
    [Says("help-bench.amps")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Amps { get; init; }

    [CommandOption("--positive <VOLTS>")]
    [Says("help-bench.positive")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Positive { get; init; }

    [CommandOption("--negative <VOLTS>")]
    [Says("help-bench.negative")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Negative { get; init; }
}

/// <summary>An alternator at work.</summary>
public sealed class ChargingSettings : SystemSettings
{
    [CommandOption("--volts <VOLTS>")]
    [Says("help-bench.charging-volts")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Volts { get; init; }

    [CommandOption("--ripple <VOLTS>")]
    [Says("help-bench.ripple")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Ripple { get; init; }

    [CommandOption("--positive <VOLTS>")]
    [Says("help-bench.charging-positive")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Positive { get; init; }

    [CommandOption("--negative <VOLTS>")]
    [Says("help-bench.charging-negative")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Negative { get; init; }
}
