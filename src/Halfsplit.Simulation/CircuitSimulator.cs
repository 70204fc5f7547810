using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Devices;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Networks;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation;

/// <summary>Choices for a simulation beyond arrangement and faults.</summary>
/// <param name="ThresholdFactor">Multiplies relay and motor thresholds and, squared, fuse melting times.</param>
/// <param name="Laid">An instrument that takes part in the circuit: a test lamp or an in-line ammeter.</param>
public sealed record SimulationOptions(double ThresholdFactor = 1, Probe? Laid = null);

/// <summary>
/// Simulates cars with the circuit of one sheet. A car first lives with its faults (every condition of the sheet in
/// turn, everything in place: fuses that blow are blown from then on); then it is brought into the arrangement.
/// Deterministic. Not thread-safe; make one per thread on the same <see cref="CircuitNetwork"/>.
/// </summary>
public sealed class CircuitSimulator(CircuitNetwork network, Meter? meter = null)
{
    /// <summary>How many cars' settled conditions are kept for re-use; neighbours in time ask for the same ones.</summary>
    private const int MostCars = 24;

    private const int MostBlown = 8192;

    private readonly Dictionary<string, Car> _cars = new(StringComparer.Ordinal);
    private readonly Queue<string> _oldest = new();
    private readonly Dictionary<string, int[]> _blown = new(StringComparer.Ordinal);
    private readonly Meter _meter = meter ?? Meter.Default;
    private NetworkSolver? _solver;

    public CircuitNetwork Network => network;

    public Meter Meter => _meter;

    /// <summary>Settles a car in an arrangement.</summary>
    /// <exception cref="ArgumentException">The arrangement's condition is not in the sheet.</exception>
    public OperatingPoint Simulate(
        Arrangement arrangement, IReadOnlyList<Fault> faults, SimulationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        ArgumentNullException.ThrowIfNull(faults);
        options ??= new SimulationOptions();
        var target = network.Circuit.FindCondition(arrangement.Condition)
            ?? throw new ArgumentException($"The circuit has no condition \"{arrangement.Condition}\".", nameof(arrangement));
        var blown = BlownStates(faults, options.ThresholdFactor);
        if (IsIntact(arrangement) && options.Laid is null)
        {
            return Point(IntactCar(faults, options.ThresholdFactor, blown), target);
        }

        var key = $"{CarName(faults, options.ThresholdFactor)}; {arrangement.In("").Key}; {options.Laid}";
        return Point(
            CarOf(key, () => new Car(
                faults, arrangement,
                options.Laid is { } probe ? [InstrumentReader.Lay(network, probe, _meter)] : [],
                options.ThresholdFactor) { Blown = blown }),
            target);
    }

    /// <summary>What an instrument shows in an arrangement.</summary>
    public Prediction Read(
        Arrangement arrangement, IReadOnlyList<Fault> faults, Probe probe, SimulationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(probe);
        if (InstrumentReader.TakesPart(probe.Instrument))
        {
            options = (options ?? new SimulationOptions()) with { Laid = probe };
        }

        return new InstrumentReader(Simulate(arrangement, faults, options), _meter).Read(probe);
    }

    /// <summary>
    /// The fuses that have gone by the time the person arrives: every condition of the sheet is lived through, until no
    /// further one goes.
    /// </summary>
    private int[] BlownStates(IReadOnlyList<Fault> faults, double thresholdFactor)
    {
        var name = CarName(faults, thresholdFactor);
        if (_blown.TryGetValue(name, out var known))
        {
            return known;
        }

        if (_blown.Count >= MostBlown)
        {
            _blown.Clear();
        }

        var gone = new int[network.Devices.Length];
        var intact = IntactCar(faults, thresholdFactor, gone);
        for (var more = true; more;)
        {
            more = false;
            intact.Points.Clear();
            intact.Blown = gone;
            foreach (var condition in network.Circuit.Conditions)
            {
                var point = Point(intact, condition);
                foreach (var device in network.Devices)
                {
                    if (device is FuseDevice && point.Run.State[device.Slot] != gone[device.Slot])
                    {
                        gone[device.Slot] = point.Run.State[device.Slot];
                        more = true;
                    }
                }

                if (more)
                {
                    break;
                }
            }
        }

        return _blown[name] = gone;
    }

    /// <summary>The fuses that have gone by the time the person arrives.</summary>
    public ImmutableArray<string> Blown(IReadOnlyList<Fault> faults)
    {
        var state = BlownStates(faults, 1);
        return [.. network.Devices.OfType<FuseDevice>().Where(f => OverloadDevice.IsGone(state[f.Slot])).Select(f => f.Part)];
    }

    private Car IntactCar(IReadOnlyList<Fault> faults, double thresholdFactor, int[] blown) => CarOf(
        CarName(faults, thresholdFactor), () => new Car(faults, null, [], thresholdFactor) { Blown = blown });

    private static string CarName(IReadOnlyList<Fault> faults, double thresholdFactor) =>
        string.Join(' ', faults) + FormattableString.Invariant($" x{thresholdFactor}");

    private static bool IsIntact(Arrangement arrangement) =>
        arrangement.Unplugged.Count == 0 && arrangement.Removed.Count == 0 && arrangement.Jumpers.Length == 0;

    private Car CarOf(string key, Func<Car> make)
    {
        if (_cars.TryGetValue(key, out var car))
        {
            return car;
        }

        if (_oldest.Count >= MostCars)
        {
            _cars.Remove(_oldest.Dequeue());
        }

        _oldest.Enqueue(key);
        return _cars[key] = make();
    }

    /// <summary>The car in a condition, by way of the conditions before it.</summary>
    private OperatingPoint Point(Car car, Condition target)
    {
        if (car.Points.TryGetValue(target.Name, out var known))
        {
            return known;
        }

        OperatingPoint? before = null;
        foreach (var condition in Chain(target))
        {
            if (!car.Points.TryGetValue(condition.Name, out var point))
            {
                car.Points[condition.Name] = point = Settle(car, condition, before);
            }

            before = point;
        }

        return before!;
    }

    private OperatingPoint Settle(Car car, Condition condition, OperatingPoint? before)
    {
        var run = new Run(network, condition, car.Arrangement, car.Faults, car.Laid, car.ThresholdFactor);
        foreach (var device in network.Devices)
        {
            run.State[device.Slot] = before is null ? car.Blown![device.Slot] : device.Carry(before.Run.State[device.Slot]);
            if (before is not null)
            {
                device.Warm(before.Run, run);
            }
        }

        return new OperatingPoint(run, new Settler(run, SolverFor(run)).Settle());
    }

    /// <summary>The last solver again where it fits: most cars differ in values only.</summary>
    private NetworkSolver SolverFor(Run run)
    {
        var shape = network.ShapeWith(run.Attachments);
        return _solver?.Shape == shape ? _solver : _solver = new NetworkSolver(shape);
    }

    private List<Condition> Chain(Condition target)
    {
        var chain = new List<Condition> { target };
        // A sheet with a circle in "after" is an error of the sheet; here it only must not hang.
        while (chain[^1].After is { } before && chain.Count <= network.Circuit.Conditions.Length
            && network.Circuit.FindCondition(before) is { } condition)
        {
            chain.Add(condition);
        }

        chain.Reverse();
        return chain;
    }

    /// <summary>A car brought into an arrangement, with the conditions it has settled in so far.</summary>
    private sealed class Car(
        IReadOnlyList<Fault> faults, Arrangement? arrangement, Attachment[] laid, double thresholdFactor)
    {
        public IReadOnlyList<Fault> Faults { get; } = faults;
        public Arrangement? Arrangement { get; } = arrangement;
        public Attachment[] Laid { get; } = laid;
        public double ThresholdFactor { get; } = thresholdFactor;

        /// <summary>State of the devices at the start: nothing but blown fuses. Null until found out.</summary>
        public int[]? Blown { get; set; }

        public Dictionary<string, OperatingPoint> Points { get; } = new(StringComparer.Ordinal);
    }
}
