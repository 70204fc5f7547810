using System.ComponentModel;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

/// <summary>A simulated car: condition, faults, arrangement, and one reading.</summary>
public sealed class CarSettings : SheetSettings
{
    [CommandOption("-c|--condition <CONDITION>")]
    [Says("help.condition")]
    public string? Condition { get; init; }

    [CommandOption("-f|--fault <FAULT>")]
    [Says("help.fault")]
    public string[] Faults { get; init; } = [];

    [CommandOption("--unplug <CONNECTOR>")]
    [Says("help.unplug")]
    public string[] Unplugged { get; init; } = [];

    [CommandOption("--remove <PART>")]
    [Says("help.remove")]
    public string[] Removed { get; init; } = [];

    [CommandOption("--jumper <FROM,TO>")]
    [Says("help.jumper")]
    public string[] Jumpers { get; init; } = [];

    [CommandOption("-r|--read <RED,BLACK>")]
    [Says("help.read")]
    public string? Read { get; init; }

    [CommandOption("-m|--meter <METER>")]
    [Says("help.meter")]
    public string? Meter { get; init; }

    [CommandOption("--about <WIRE>")]
    [Says("help.about")]
    public string? About { get; init; }

    [CommandOption("--lamp <WATTS>")]
    [Says("help.lamp")]
    [TypeConverter(typeof(EitherDecimalSign))]
    public double? LampWatts { get; init; }
}
