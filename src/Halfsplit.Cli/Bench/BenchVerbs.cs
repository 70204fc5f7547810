using Halfsplit.Cli.Terminals;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Bench;

/// <summary>The verbs under <c>bench</c>: small measurements around the job.</summary>
public static class BenchVerbs
{
    public const string Branch = "bench";

    public static void Add(IConfigurator config, Terminal terminal)
    {
        ArgumentNullException.ThrowIfNull(config);
        ArgumentNullException.ThrowIfNull(terminal);
        config.AddBranch(Branch, bench =>
        {
            bench.SetDescription(terminal.Say("help.bench"));

            void Verb<T>(string name, Func<Terminal, T, int> run, params string[][] examples)
                where T : CommandSettings
            {
                var added = bench.AddDelegate<T>(name, (context, settings, _) =>
                {
                    if (settings is PartSettings part)
                    {
                        part.Typed = PartSettings.TypedOf(context.Arguments);
                    }

                    return run(terminal, settings);
                })
                    .WithDescription(terminal.Say($"help-bench.{name}"));
                foreach (var example in examples)
                {
                    added.WithExample([Branch, name, .. example]);
                }
            }

            Verb<WireSettings>(
                "wire", BenchWires.Wire, ["2.5", "--length", "4.2", "--amps", "8", "--return"],
                ["14", "AWG", "--length", "3", "--amps", "10", "--allowed", "0.3"]);
            Verb<DropSettings>(
                "drop", BenchWires.Drop,
                ["--amps", "8", "--piece", "\"fuse 15A\"", "--piece", "\"wire 2.5mm2 4.2m = 0.31\"", "--piece", "\"ground = 250 mV\"", "--allowed", "0.5"]);
            Verb<FuseSettings>("fuse", BenchFuses.Check, ["--look", "whole", "--tabs", "12.4,0.1"], ["--ohms", "OL"]);
            Verb<DrainSettings>("drain", BenchFuses.Drain, ["10A", "mini", "--millivolts", "0.4"]);
            Verb<DrainHuntSettings>(
                "drain-hunt", BenchFuses.Hunt,
                ["--total", "0.38", "--fuse", "\"F1 10A mini = 0.1\"", "--fuse", "\"F7 20A = 1.1\"", "--fuse", "\"F12 40A maxi\""]);
            Verb<RelaySettings>(
                "relay", BenchPins.Relay, ["--pins", "30,85,86,87"], ["--pins", "1,2,3,4,5", "--reading", "\"ohms 1 2 = 85\"", "--reading", "\"power 1 2 = clicks\""]);
            Verb<CavitySettings>(
                "cavities", BenchPins.Cavities,
                ["--cavities", "1,2,3,4", "--function", "\"feed: 11-14 V\"", "--function", "\"ground: 0-0.2 V 0-2 ohm\"", "--reading", "\"volts 1 body = 0.03\""]);
            Verb<CoilSettings>("coil", BenchPins.Coil, ["--ohms", "85", "--supply", "20"]);
            Verb<ContactSettings>("contact", BenchPins.Contact, ["--millivolts", "180", "--amps", "6"]);
            Verb<BatterySettings>("battery", BenchBatteries.Rest, ["--volts", "12.45", "--type", "agm", "--celsius", "5"]);
            Verb<TwoLoadsSettings>("two-loads", BenchBatteries.TwoLoads, ["--light", "12.5@5", "--heavy", "11.9@65", "--cranking-amps", "540"]);
            Verb<CrankingSettings>("cranking", BenchBatteries.Crank, ["--volts", "9.8", "--celsius", "5", "--amps", "180", "--positive", "0.25", "--negative", "0.31"]);
            Verb<ChargingSettings>("charging", BenchBatteries.Charge, ["--volts", "14.1", "--ripple", "0.06", "--positive", "0.12"]);
            Verb<RatedSettings>("lamp", BenchLoads.Lamp, ["--watts", "55"]);
            Verb<RatedSettings>("heater", BenchLoads.Heater, ["--watts", "150"]);
            Verb<WindingSettings>("winding", BenchLoads.Winding, ["injector", "--ohms", "16.1", "--celsius", "70"]);
            Verb<DiodeSettings>("diode", BenchLoads.Diode, ["--one-way", "0.58", "--other-way", "OL"]);
            Verb<SensorSettings>("sensor-supply", BenchLoads.Sensor, ["--volts", "3.1", "--unplugged", "5.02", "--ground", "0.01"]);
            Verb<MotorSettings>("motor", BenchMotor.Run, ["pump.csv", "--bars", "8", "--rated", "5.5", "--plot", "pump.svg"], ["pump.wav", "--full-scale", "20"],
                ["--mean", "5.4", "--peak", "21", "--rated", "5.5", "--ripple-hz", "568", "--bars", "8"]);
            Verb<LookupSettings>("terminal", BenchLookups.Terminal, ["87a"]);
            Verb<LookupSettings>("colour", BenchLookups.Colour, ["YE/BK"], ["schwarz"]);
            Verb<LookupSettings>("rating", BenchLookups.Rating, ["15A"]);
            Verb<LookupSettings>("gauge", BenchLookups.Gauge, ["14", "AWG"], ["2.5"]);
        });
    }
}
