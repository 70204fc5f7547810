using System.ComponentModel;
using Halfsplit.Bench;
using Halfsplit.Cli.Settings;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Bench;

/// <summary>What was measured on a relay of which nothing is known.</summary>
public sealed class RelaySettings : PartSettings
{
    [CommandOption("--pins <PINS>")]
    [Says("help-bench.pins")]
    public string Pins { get; init; } = "1,2,3,4";

    [CommandOption("--reading <READING>")]
    [Says("help-bench.reading")]
    public string[] Readings { get; init; } = [];
}

/// <summary>What was measured on a connector whose cavities nobody knows.</summary>
public sealed class CavitySettings : VerbSettings
{
    [CommandOption("--cavities <NAMES>")]
    [Says("help-bench.cavities-names")]
    public string Cavities { get; init; } = "";

    [CommandOption("--function <FUNCTION>")]
    [Says("help-bench.function")]
    public string[] Functions { get; init; } = [];

    [CommandOption("--reading <READING>")]
    [Says("help-bench.reading")]
    public string[] Readings { get; init; } = [];
}

/// <summary>A coil and its supply.</summary>
public sealed class CoilSettings : VerbSettings
{
    [CommandOption("--ohms <OHMS>")]
    [Says("help-bench.coil-ohms")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Ohms { get; init; }

    [CommandOption("--supply <VOLTS>")]
    [Says("help-bench.supply")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double SupplyVolts { get; init; } = BenchDefaults.Usual("coil-supply");

    [CommandOption("--rated <VOLTS>")]
    [Says("help-bench.rated")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double RatedVolts { get; init; } = BenchDefaults.Usual("supply");
}

/// <summary>A contact under its load.</summary>
public sealed class ContactSettings : PartSettings
{
    [CommandOption("--millivolts <MILLIVOLTS>")]
    [Says("help-bench.contact-millivolts")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Millivolts { get; init; }

    [CommandOption("--amps <AMPS>")]
    [Says("help-bench.amps")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Amps { get; init; }
}
