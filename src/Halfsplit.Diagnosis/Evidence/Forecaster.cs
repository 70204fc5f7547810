using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// Predicts the answer of every car to every check by simulation, and keeps what it has computed. All predictions come
/// from here. Not thread-safe.
/// </summary>
public sealed class Forecaster
{
    /// <summary>Stray current that couples into a probe, one standard deviation: a ghost of a few tenths of a volt on 10 MΩ. Common practice, no published source.</summary>
    private const double StrayAmps = 25e-9;

    /// <summary>A wire floats where stray current makes this many times what else a reading of nothing varies by.</summary>
    private const double FloatingShare = 4;

    /// <summary>Battery volts wander from reading to reading by this much.</summary>
    private const double DriftVolts = 0.03;

    /// <summary>What the model itself gets wrong: joints that are not ohmic, temperatures. Share of the reading.</summary>
    private const double ModelShare = 0.015;

    private const double ModelVolts = 0.004;

    /// <summary>Above this the ohms of insulation and leaks are anybody's guess.</summary>
    private const double LeakOhms = 1e6;

    /// <summary>Settled cars kept by default: what a browser's memory bears.</summary>
    private const int FewKept = 60_000;

    /// <summary>Names of pairs count down from here; what is above belongs to cars with nothing wrong.</summary>
    private const int FirstPair = -ForecastColumn.FewestHealthy;

    private readonly CircuitSimulator _simulator;
    private readonly Unknowns _unknowns;
    private readonly Meter _meter;
    private readonly Dictionary<string, int> _setups = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _pairs = new(StringComparer.Ordinal);
    private readonly Dictionary<Hypothesis, int> _pairKeys = new(ReferenceEqualityComparer.Instance);
    private readonly int _mostKept;
    private int _lastPair = FirstPair;
    private readonly Dictionary<(int Car, int Setup), OperatingPoint> _points = [];
    private readonly Dictionary<(int Car, int Setup), InstrumentReader> _readers = [];
    private readonly Dictionary<string, ForecastColumn> _columns = new(StringComparer.Ordinal);
    private readonly Dictionary<(int Car, string Check, string Repairs), Forecast> _pairForecasts = [];

    /// <param name="simulator">Simulates the cars.</param>
    /// <param name="load">The load complained of: what "cured" means.</param>
    /// <param name="mostKept">Settled cars kept for re-use; null for what a browser's memory bears.</param>
    public Forecaster(CircuitSimulator simulator, string load, int? mostKept = null)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        _simulator = simulator;
        Load = load;
        _mostKept = mostKept ?? FewKept;
        _meter = simulator.Meter;
        _unknowns = new Unknowns(simulator.Network);
    }

    /// <summary>Odds that a reading jumps with a fault of this part and mode; kept here for <see cref="ComesAndGoes"/>.</summary>
    internal Dictionary<(string Part, string Mode), double> JumpOdds { get; } = [];

    /// <summary>The load complained of.</summary>
    public string Load { get; }

    public CircuitSimulator Simulator => _simulator;

    public CircuitNetwork Network => _simulator.Network;

    /// <summary>What this car answers to this check after these repairs.</summary>
    public Forecast Of(Hypothesis car, Check check, ImmutableArray<Repair> repairs)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(check);
        return Of(car, ColumnOf(check), repairs);
    }

    /// <summary>The answers to this check; who asks about many cars looks it up once.</summary>
    internal ForecastColumn ColumnOf(Check check)
    {
        if (!_columns.TryGetValue(check.Id, out var column))
        {
            _columns[check.Id] = column = new ForecastColumn(check);
        }

        return column;
    }

    /// <summary>What this car answers to the column's check after these repairs.</summary>
    internal Forecast Of(Hypothesis car, ForecastColumn column, ImmutableArray<Repair> repairs)
    {
        if (car.IsNone)
        {
            return Forecast.Broad;
        }

        (car, repairs) = Now(car, repairs);
        return car.Faults.Length < 2
            ? column[car.Index] ?? (column[car.Index] = Compute(car, column.Check, repairs))
            : OfPair(car, column.Check, repairs);
    }

    private Forecast OfPair(Hypothesis car, Check check, ImmutableArray<Repair> repairs)
    {
        var key = (CarKey(car), check.Id, RepairsKey(repairs));
        if (_pairForecasts.TryGetValue(key, out var known))
        {
            return known;
        }

        if (_pairForecasts.Count >= _mostKept)
        {
            _pairForecasts.Clear();
        }

        return _pairForecasts[key] = Compute(car, check, repairs);
    }

    /// <summary>The mean alone, without slopes: enough to see whether a check can tell suspects apart.</summary>
    public Prediction MeanOf(Hypothesis car, Check check, ImmutableArray<Repair> repairs)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(check);
        (car, repairs) = Now(car, repairs);
        return Reader(car, check, repairs).Read(check.Probe);
    }

    /// <summary>The settled car in the check's arrangement.</summary>
    public OperatingPoint PointOf(Hypothesis car, Check check, ImmutableArray<Repair> repairs)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(check);
        (car, repairs) = Now(car, repairs);
        return Point(car, Setup(check, repairs), check, repairs);
    }

    /// <summary>The settled cars in the check's arrangement after these repairs, one for each; what they share is looked up once.</summary>
    internal void PointsOf(IReadOnlyList<Hypothesis> cars, Check check, ImmutableArray<Repair> repairs, Span<OperatingPoint?> points)
    {
        var setup = Setup(check, []);
        for (var i = 0; i < points.Length; i++)
        {
            if (cars[i].IsNone)
            {
                continue;
            }

            var (car, left) = Now(cars[i], repairs);
            points[i] = Point(car, left.IsEmpty ? setup : Setup(check, left), check, left);
        }
    }

    /// <summary>What is left wrong after repairs.</summary>
    public static ImmutableArray<Fault> Remaining(ImmutableArray<Fault> faults, ImmutableArray<Repair> repairs) =>
        repairs.IsDefaultOrEmpty ? faults : [.. faults.Where(f => !IsCured(f, repairs))];

    private static bool IsCured(Fault fault, ImmutableArray<Repair> repairs)
    {
        foreach (var repair in repairs)
        {
            if (repair.Cures(fault))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// A car as it stands after repairs: itself where none was the right one, one with nothing wrong where all is mended.
    /// So what was simulated before a repair serves after it.
    /// </summary>
    private static (Hypothesis Car, ImmutableArray<Repair> Repairs) Now(Hypothesis car, ImmutableArray<Repair> repairs)
    {
        if (repairs.IsDefaultOrEmpty || car.Faults.IsEmpty)
        {
            return (car, []);
        }

        var left = 0;
        foreach (var fault in car.Faults)
        {
            left += IsCured(fault, repairs) ? 0 : 1;
        }

        return left == car.Faults.Length ? (car, [])
            : left == 0 ? (Safety.SafetyScreen.HealthyCar(car.ThresholdFactor), [])
            : (car, repairs);
    }

    private Forecast Compute(Hypothesis car, Check check, ImmutableArray<Repair> repairs)
    {
        if (check.Subject is CheckSubject.Repair or CheckSubject.PutBack)
        {
            return new Forecast { Groups = [1] };
        }

        var point = PointOf(car, check, repairs);
        if (!check.Subject.IsOfAnInstrument())
        {
            var groups = WordForecasts.Of(this, car, check, point, repairs);
            var byDegree = WordForecasts.TurnsOnDegree(check.Subject) ? ByDegree(car, check, point, groups, repairs) : null;
            return new Forecast { Groups = byDegree?.Mean ?? groups, ByDegree = byDegree };
        }

        var reader = Reader(car, check, repairs);
        var read = reader.Read(check.Probe);
        if (read.Abstains != Abstention.None)
        {
            return Forecast.Broad;
        }

        if (check.Subject == CheckSubject.Buzzer)
        {
            return new Forecast { Groups = WordForecasts.Buzzer(read.Value) };
        }

        return Number(car, check, point, reader, read);
    }

    /// <summary>The words at both ends of the car's cell of severity; null where they are those of its middle.</summary>
    private GroupsByDegree? ByDegree(
        Hypothesis car, Check check, OperatingPoint point, ImmutableArray<double> groups, ImmutableArray<Repair> repairs)
    {
        if (CellIn(car.Severity, point) is null || GroupsByDegree.Ends(Network, car) is not { } ends)
        {
            return null;
        }

        var (low, high) = (At(ends.Low), At(ends.High));
        return low.SequenceEqual(groups) && high.SequenceEqual(groups) ? null : new GroupsByDegree(low, groups, high);

        ImmutableArray<double> At(ImmutableArray<Fault> faults)
        {
            var moved = car with { Faults = faults };
            return WordForecasts.Of(
                this, moved, check, _simulator.Simulate(check.Arrangement, faults, new SimulationOptions(car.ThresholdFactor)), repairs);
        }
    }

    private Forecast Number(
        Hypothesis car, Check check, OperatingPoint point, InstrumentReader reader, Prediction read)
    {
        var instrument = check.Probe.Instrument;
        var raw = new double[Network.Branches.Length + 1];
        reader.Slopes(check.Probe, raw);
        var mean = read.Value;
        var isTurned = instrument is Instrument.AmpsClamp or Instrument.AmpsInline && mean < 0;
        if (isTurned)
        {
            // Amps are read without regard to the direction of the clamp.
            mean = -mean;
            for (var i = 0; i < raw.Length; i++)
            {
                raw[i] = -raw[i];
            }
        }

        var condition = Network.Circuit.FindCondition(check.Arrangement.Condition)!;
        var zero = (isTurned ? -1 : 1) * Meter.ZeroSpread(instrument);
        var own = Square(SpreadOf(instrument, mean)) + Square(DriftVolts * raw[0]);
        var (overLimit, quiet) = (0.0, 0.0);
        if (instrument is Instrument.Volts or Instrument.VoltsLowImpedance)
        {
            var input = instrument == Instrument.Volts ? _meter.InputOhms : _meter.LowImpedanceOhms;
            var stray = StrayAmps * read.SourceOhms * input / (read.SourceOhms + input);
            quiet = stray > FloatingShare * Math.Sqrt(own) && Math.Abs(mean) < stray ? own + Square(mean) : 0;
            own += Square(stray);
        }
        else if (instrument == Instrument.Ohms)
        {
            if (read.SourceOhms > LeakOhms)
            {
                own += Square(read.SourceOhms);
            }

            overLimit = Normal.Below(Math.Log(Math.Max(read.Value, 1e-3) / Meter.OverLimitOhms) / 0.7);
        }
        else if (instrument == Instrument.TestLamp)
        {
            own += Square(0.1);
        }

        return new Forecast
        {
            Mean = mean,
            OwnVariance = own,
            QuietVariance = quiet,
            Slopes = _unknowns.Scale(raw, mean, instrument, _meter, condition, CellIn(car.Severity, point), CellIn(car.Beside, point), zero),
            Zero = zero,
            OverLimit = overLimit,
            LoadedAmps = read.LoadedAmps,
            Groups = check.Subject == CheckSubject.LampGlow
                ? WordForecasts.Glow(Math.Abs(mean) / Network.Circuit.Battery.NominalVolts)
                : [],
        };
    }

    /// <summary>What a reading varies by by itself: the meter's zero, and what the model gets wrong. One standard deviation.</summary>
    internal double SpreadOf(Instrument instrument, double value)
    {
        var model = instrument is Instrument.Volts or Instrument.VoltsLowImpedance ? ModelVolts : 0;
        return Math.Sqrt(Square(_meter.OffsetSpread(instrument, value)) + Square(ModelShare * value) + Square(model));
    }

    /// <summary>The severity is no unknown of a car in which its fault has been repaired.</summary>
    private static SeverityCell? CellIn(SeverityCell? cell, OperatingPoint point) =>
        cell is not null && point.HasFault(cell.Of) ? cell : null;

    private InstrumentReader Reader(Hypothesis car, Check check, ImmutableArray<Repair> repairs)
    {
        var setup = Setup(check, repairs);
        var key = (CarKey(car), setup);
        if (!_readers.TryGetValue(key, out var reader))
        {
            _readers[key] = reader =
                new InstrumentReader(Point(car, setup, check, repairs), _meter);
        }

        return reader;
    }

    private OperatingPoint Point(Hypothesis car, int setup, Check check, ImmutableArray<Repair> repairs)
    {
        var key = (CarKey(car), setup);
        if (_points.TryGetValue(key, out var known))
        {
            return known;
        }

        if (_points.Count >= _mostKept)
        {
            _points.Clear();
            _readers.Clear();
        }

        var laid = InstrumentReader.TakesPart(check.Probe.Instrument) ? check.Probe : null;
        return _points[key] = _simulator.Simulate(
            check.Arrangement, Remaining(car.Faults, repairs),
            new SimulationOptions(car.ThresholdFactor, laid));
    }

    /// <summary>
    /// Single faults have their index for good; pairs change from reading to reading, and the same index then means
    /// another car: those are known by their faults, under numbers below zero.
    /// </summary>
    private int CarKey(Hypothesis car)
    {
        if (car.Faults.Length < 2)
        {
            return car.Index;
        }

        if (_pairKeys.TryGetValue(car, out var known))
        {
            return known;
        }

        if (_pairs.Count >= _mostKept)
        {
            _pairs.Clear();
        }

        var name = $"{string.Join(", ", car.Faults)} at {car.ThresholdFactor:R} {car.Severity} {car.Beside}";
        if (!_pairs.TryGetValue(name, out var key))
        {
            _pairs[name] = key = --_lastPair;
        }

        if (_pairKeys.Count >= _mostKept)
        {
            _pairKeys.Clear();
        }

        return _pairKeys[car] = key;
    }

    private int Setup(Check check, ImmutableArray<Repair> repairs)
    {
        var key = check.Arrangement.Key;
        if (InstrumentReader.TakesPart(check.Probe.Instrument))
        {
            key += $" [{check.Probe.Instrument} {check.Probe.Red} {check.Probe.Black} {check.Probe.LampWatts}]";
        }

        key += RepairsKey(repairs);
        if (!_setups.TryGetValue(key, out var setup))
        {
            _setups[key] = setup = _setups.Count;
        }

        return setup;
    }

    private static string RepairsKey(ImmutableArray<Repair> repairs) =>
        repairs.IsDefaultOrEmpty ? "" : " after " + string.Join(", ", repairs.Select(r => r.Id));

    private static double Square(double value) => value * value;
}
