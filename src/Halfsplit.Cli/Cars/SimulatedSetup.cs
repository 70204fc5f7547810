using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Settings;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Cars;

/// <summary>What <c>predict</c> and <c>spice</c> simulate: a car, an arrangement, and where the leads are.</summary>
/// <param name="Probe">The reading asked for, or null.</param>
public sealed record SimulatedSetup(
    CircuitSimulator Simulator, Arrangement Arrangement, ImmutableArray<Fault> Faults, Probe? Probe)
{
    public Circuit Circuit => Simulator.Network.Circuit;

    /// <summary>Understands the options; on failure the problems and the exit code.</summary>
    public static SimulatedSetup? Of(CarSettings settings, out ImmutableArray<Message> problems, out int code)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var source = SheetSource.Find(settings.Sheet);
        code = ExitCode.Broken;
        if (source.Text is null)
        {
            problems = [source.Problem!];
            return null;
        }

        if (source.Read().Circuit is not { } circuit)
        {
            problems = [new Message("cli.sheet-has-errors", settings.Sheet)];
            return null;
        }

        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        var names = new Names(simulator);
        var arrangement = names.Arrangement(settings.Condition, settings.Unplugged, settings.Removed, settings.Jumpers);
        // As "next" writes the faults of a pair: two in one text, a blank between.
        var faults = settings.Faults
            .SelectMany(f => f.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Select(names.Fault).OfType<Fault>().ToImmutableArray();
        var probe = ProbeOf(settings, names);
        problems = [.. names.Problems];
        code = problems.Length > 0 ? ExitCode.Usage : ExitCode.Good;
        return problems.Length > 0 ? null : new SimulatedSetup(simulator, arrangement!, faults, probe);
    }

    private static Probe? ProbeOf(CarSettings settings, Names names)
    {
        var instrument = Instrument.Volts;
        var meters = InstrumentNames.All.Where(n => n is not ("eye" or "ear")).ToList();
        if (settings.Meter is { } meter && (!meters.Contains(meter) || !InstrumentNames.TryParse(meter, out instrument)))
        {
            names.Add(new Message("cli.no-meter", meter, Spelling.Hint(meter, meters), string.Join(", ", meters)));
            return null;
        }

        if (settings.LampWatts is { } watts && !(watts is > 0 and < 10_000))
        {
            names.Add(new Message("cli.bad-lamp", watts));
            return null;
        }

        if (instrument == Instrument.AmpsClamp)
        {
            if (settings.About is not { } about)
            {
                names.Add(new Message("cli.clamp-about"));
                return null;
            }

            return names.Wire(about) is { } wire ? new Probe(instrument, null, null, wire) : null;
        }

        if (settings.Read is { } read)
        {
            var pair = names.Pair(read);
            if (pair is { } points && names.IsSamePoint(points.First, points.Second))
            {
                names.Add(new Message("cli.same-point", points.First, points.Second));
                return null;
            }

            return pair is not null
                ? new Probe(instrument, pair.Value.First, pair.Value.Second, null, instrument == Instrument.TestLamp ? settings.LampWatts : null)
                : null;
        }

        if (settings.Meter is not null || settings.About is not null)
        {
            names.Add(new Message("cli.say-read"));
        }

        return null;
    }
}
