using System.ComponentModel;
using Halfsplit.Bench;
using Halfsplit.Cli.Settings;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Bench;

/// <summary>A recorded current, or its averages, and what is known of its motor.</summary>
public sealed class MotorSettings : PartSettings
{
    [CommandArgument(0, "[FILE]")]
    [Says("help-bench.motor-file")]
    public string? File { get; init; }

    [CommandOption("--mean <AMPS>")]
    [Says("help-bench.mean-amps")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? MeanAmps { get; init; }

    [CommandOption("--peak <AMPS>")]
    [Says("help-bench.peak-amps")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? PeakAmps { get; init; }

    [CommandOption("--ripple-hz <HERTZ>")]
    [Says("help-bench.ripple-hertz")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? RippleHertz { get; init; }

    [CommandOption("--rate <HERTZ>")]
    [Says("help-bench.rate")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? Rate { get; init; }

    [CommandOption("--full-scale <AMPS>")]
    [Says("help-bench.full-scale")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double FullScale { get; init; } = BenchDefaults.Usual("full-scale");

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
