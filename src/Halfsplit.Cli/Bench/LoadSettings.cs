using System.ComponentModel;
using Halfsplit.Bench;
using Halfsplit.Cli.Settings;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Bench;

/// <summary>What is printed on a lamp or heater.</summary>
public sealed class RatedSettings : VerbSettings
{
    [CommandOption("--watts <WATTS>")]
    [Says("help-bench.watts")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Watts { get; init; }

    [CommandOption("--volts <VOLTS>")]
    [Says("help-bench.rated-volts")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Volts { get; init; } = BenchDefaults.Usual("rated-volts");
}

/// <summary>A winding and its ohms.</summary>
public sealed class WindingSettings : PartSettings
{
    [CommandArgument(0, "<KIND>")]
    [Says("help-bench.winding-kind")]
    public string Kind { get; init; } = "";

    [CommandOption("--ohms <OHMS>")]
    [Says("help-bench.winding-ohms")]
    [TypeConverter(typeof(OhmsOrOpen))]
    public double Ohms { get; init; }

    [CommandOption("--celsius <DEGREES>")]
    [Says("help-bench.celsius")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Celsius { get; init; } = BenchDefaults.Usual("winding-celsius");
}

/// <summary>A diode both ways round.</summary>
public sealed class DiodeSettings : PartSettings
{
    [CommandOption("--one-way <VOLTS>")]
    [Says("help-bench.one-way")]
    [TypeConverter(typeof(OhmsOrOpen))]
    public double OneWay { get; init; } = double.PositiveInfinity;

    [CommandOption("--other-way <VOLTS>")]
    [Says("help-bench.other-way")]
    [TypeConverter(typeof(OhmsOrOpen))]
    public double OtherWay { get; init; } = double.PositiveInfinity;
}

/// <summary>A sensor supply.</summary>
public sealed class SensorSettings : VerbSettings
{
    [CommandOption("--volts <VOLTS>")]
    [Says("help-bench.sensor-volts")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double Volts { get; init; }

    [CommandOption("--unplugged <VOLTS>")]
    [Says("help-bench.unplugged")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Unplugged { get; init; }

    [CommandOption("--ground <VOLTS>")]
    [Says("help-bench.sensor-ground")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Ground { get; init; }
}

/// <summary>A word to look up.</summary>
public sealed class LookupSettings : VerbSettings
{
    [CommandArgument(0, "<NAME>")]
    [Says("help-bench.look-up")]
    public string[] Name { get; init; } = [];
}
