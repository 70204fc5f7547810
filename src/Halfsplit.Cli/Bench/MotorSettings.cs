using System.ComponentModel;
using Halfsplit.Cli.Settings;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Bench;

/// <summary>A recorded current and what is known of its motor.</summary>
public sealed class MotorSettings : PartSettings
{
    [CommandArgument(0, "<FILE>")]
    [Says("help-bench.motor-file")]
    public string File { get; init; } = "";

    [CommandOption("--rate <HERTZ>")]
    [Says("help-bench.rate")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Rate { get; init; }

    [CommandOption("--full-scale <AMPS>")]
    [Says("help-bench.full-scale")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double FullScale { get; init; } = 10;

    [CommandOption("--bars <NUMBER>")]
    [Says("help-bench.bars")]
    public int? Bars { get; init; }

    [CommandOption("--rated <AMPS>")]
    [Says("help-bench.rated-amps")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? RatedAmps { get; init; }

    [CommandOption("--plot <FILE>")]
    [Says("help-bench.plot")]
    public string? Plot { get; init; }
}
