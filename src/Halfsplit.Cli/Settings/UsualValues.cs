using Halfsplit.Bench;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Settings;

/// <summary>What an option is worth where it is not given, for its help: taken from where the program takes it.</summary>
public static class UsualValues
{
    /// <summary>By the code of the option's text, in the option's unit; null where the text names no number.</summary>
    public static double? Of(string code) => code switch
    {
        "help-bench.length" => BenchDefaults.Usual("length"),
        "help-bench.celsius" => BenchDefaults.Usual("wire-celsius"),
        "help-bench.supply" or "help-bench.rated" or "help-bench.system" => BenchDefaults.Usual("supply"),
        "help-bench.rated-volts" => BenchDefaults.Usual("rated-volts"),
        "help-bench.step" => 1e3 * BenchDefaults.Usual("meter-step"),
        "help-bench.allowed-amps" => BenchDefaults.Table["drain.allowed-amps"],
        "help-bench.full-scale" => BenchDefaults.Usual("full-scale"),
        "help.lead" => new DiagnosisOptions().LeadMetres,
        "help.meter-counts" => Meter.Default.Counts,
        "help.meter-accuracy" => 100 * Meter.Default.GainAccuracy,
        "help.meter-input" => Meter.Default.InputOhms,
        "help.jack" => Meter.Default.JackAmps,
        "help.test-lamp" => Meter.Default.LampWatts,
        _ => null,
    };
}
