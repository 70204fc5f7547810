using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Practice;

/// <summary>
/// A simulated car with a hidden fault and a person beside it who reads a real, noisy meter. It shares the physics with
/// the engine and nothing else: none of the engine's likelihoods, and values that the engine does not know.
/// </summary>
public sealed class PracticeCar
{
    private readonly CircuitSimulator _simulator;
    private readonly Complaint _complaint;
    private readonly Meter _meter;
    private readonly SeededChance? _noise;
    private readonly FaultHabits _habits;
    private readonly Dictionary<string, double> _luck = new(StringComparer.Ordinal);
    private readonly double _gain;
    private readonly double _clampZero;
    private ImmutableArray<Fault> _faults;
    private bool _shows = true;

    private PracticeCar(
        CircuitSimulator simulator, Complaint complaint, Meter meter, ImmutableArray<Fault> faults, SeededChance? noise,
        FaultHabits habits)
    {
        _simulator = simulator;
        _complaint = complaint;
        _meter = meter;
        _noise = noise;
        _habits = habits;
        AllHidden = faults;
        _faults = faults;
        _gain = 1 + (0.5 * meter.GainAccuracy * Bell());
        _clampZero = 0.1 * Bell();
    }

    /// <summary>What is wrong with it; where several things are, the first.</summary>
    public Fault Hidden => AllHidden[0];

    /// <summary>Everything that was wrong with it at first.</summary>
    public ImmutableArray<Fault> AllHidden { get; }

    /// <summary>The way of failing that one of its faults is a degree of.</summary>
    public FaultMode ModeOf(Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return FaultCatalog.For(_simulator).First(m => m.Part == fault.Part && m.Mode == fault.Mode);
    }

    /// <summary>What is still wrong with it.</summary>
    public ImmutableArray<Fault> Left => _faults;

    /// <summary>How the load complained of fares while the faults show.</summary>
    public LoadCondition Fares => Settle(new Arrangement(_complaint.Condition)).Load(_complaint.Load).Condition;

    /// <summary>A car with given faults.</summary>
    /// <param name="noise">Draws the meter's error and what can be seen; null: an exact meter and an eye that misses nothing.</param>
    /// <param name="habits">How the faults behave; null: always there and ohmic.</param>
    public static PracticeCar Of(
        CircuitSimulator simulator, Complaint complaint, Meter meter, ImmutableArray<Fault> faults, SeededChance? noise,
        FaultHabits? habits = null)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        ArgumentNullException.ThrowIfNull(complaint);
        ArgumentNullException.ThrowIfNull(meter);
        return new PracticeCar(simulator, complaint, meter, faults, noise, habits ?? FaultHabits.Plain);
    }

    /// <summary>Draws a car; the same seed gives the same one. Null where no fault could make the complaint.</summary>
    public static PracticeCar? Draw(Circuit circuit, Complaint complaint, Meter meter, long seed)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var chance = new SeededChance(seed);
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(DrawnParts.Draw(circuit, chance)), meter);
        return HiddenFault.Draw(simulator, complaint, chance) is { } fault
            ? Of(simulator, complaint, meter, [fault], new SeededChance(unchecked(seed * 31) + 17))
            : null;
    }

    /// <summary>True when the load does its work in the condition of the complaint.</summary>
    public bool IsCured => _faults.IsEmpty || Fares == LoadCondition.Works;

    /// <summary>Carries a repair out.</summary>
    public void Repair(Repair repair)
    {
        ArgumentNullException.ThrowIfNull(repair);
        _faults = [.. _faults.Where(f => !repair.Cures(f))];
    }

    /// <summary>What the person sees, hears or reads.</summary>
    public ReadingValue Answer(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        _shows = _habits.Shows >= 1 || Even() < _habits.Shows;
        var answer = Observe(check);
        _shows = true;
        return answer;
    }

    private ReadingValue Observe(Check check)
    {
        return check.Subject switch
        {
            CheckSubject.Repair or CheckSubject.PutBack => new ReadingParse.Word(AnswerWord.Done),
            CheckSubject.Number or CheckSubject.LampGlow or CheckSubject.Buzzer => Read(check),
            _ => new ReadingParse.Word(See(check)),
        };
    }

    private ReadingValue Read(Check check)
    {
        var read = _simulator.Read(check.Arrangement, Present(check.Arrangement, check.Probe), check.Probe);
        if (read.Abstains != Abstention.None)
        {
            return new ReadingParse.Word(AnswerWord.NotSure);
        }

        if (check.Subject == CheckSubject.Buzzer)
        {
            var threshold = Luck("buzzer") * (Meter.BuzzerHighOhms - Meter.BuzzerLowOhms) + Meter.BuzzerLowOhms;
            return new ReadingParse.Word(read.Value < threshold ? AnswerWord.Beeps : AnswerWord.NoBeep);
        }

        if (read.IsOverLimit(check.Probe.Instrument))
        {
            return new ReadingParse.OverLimit();
        }

        return DisplayedNumber.Of(_meter, check.Probe.Instrument, Noisy(check.Probe.Instrument, read));
    }

    private double Noisy(Instrument instrument, Prediction read)
    {
        var value = read.Value * _gain;
        var counts = 0.5 * _meter.CountAccuracy * _meter.Resolution(instrument, value) * Bell();
        return instrument switch
        {
            // The battery wanders a little, and a lead that floats picks up stray current, in one car more than in another.
            Instrument.Volts => (value * (1 + (0.0015 * Bell()))) + counts
                + (20e-9 * Math.Pow(10, -2 * Luck("stray")) * read.SourceOhms * _meter.InputOhms / (read.SourceOhms + _meter.InputOhms) * Bell()),
            Instrument.AmpsClamp => Math.Abs(value + _clampZero + (0.01 * value * Bell())),
            Instrument.AmpsInline => Math.Abs(value + counts),
            Instrument.Ohms => Math.Max(0, value + (0.1 * Bell()) + counts),
            _ => (value * (1 + (0.0015 * Bell()))) + counts,
        };
    }

    private AnswerWord See(Check check)
    {
        var about = check.Probe.About!;
        var point = Settle(check.Arrangement);
        return check.Subject switch
        {
            CheckSubject.LoadWork or CheckSubject.WorkHot or CheckSubject.WorkAgain => Works(point.Load(about), check),
            CheckSubject.RelayClick => !point.IsSteady || (point.IsPulledIn(about) && !Has(about, FaultModes.Welded, FaultModes.Stuck))
                ? AnswerWord.Clicks
                : AnswerWord.Silent,
            CheckSubject.FuseLook => point.IsBlown(about) || (Has(about, FaultModes.Open) && Luck(about) < 0.85)
                ? AnswerWord.Blown
                : AnswerWord.Whole,
            CheckSubject.PinFit => JointFault(about) is { } joint && (joint.Mode == FaultModes.Loose || Luck(about) < 0.6)
                ? joint.Mode == FaultModes.Loose ? AnswerWord.Loose : AnswerWord.Corroded
                : AnswerWord.Tight,
            CheckSubject.JointHeat => Watts(point, about) > 1.5 ? AnswerWord.Warm : AnswerWord.Cool,
            CheckSubject.Wiggle => JointFault(about) is { } moved && Luck(about) < (moved.Mode == FaultModes.Loose ? 0.8 : 0.4)
                ? AnswerWord.Jumps
                : AnswerWord.Steady,
            CheckSubject.ScanCommand => IsCommanded(point, TerminalName.Parse(about)) ? AnswerWord.Commanded : AnswerWord.NotCommanded,
            CheckSubject.ScanCode => StoresCode(TerminalName.Parse(about)) ? AnswerWord.CodeStored : AnswerWord.NoCode,
            CheckSubject.BenchRelay => Bench(about),
            CheckSubject.SwapRelay => CuredWithout(about) ? AnswerWord.Cured : AnswerWord.NotCured,
            _ => AnswerWord.NotSure,
        };
    }

    private AnswerWord Works(LoadState state, Check check)
    {
        var load = _simulator.Network.Circuit[check.Probe.About!];
        var lit = load is Lamp or Led;
        return state.Condition switch
        {
            LoadCondition.Works => lit ? AnswerWord.Bright : load is Motor ? AnswerWord.Runs : AnswerWord.Works,
            LoadCondition.Weak => lit ? AnswerWord.Dim : load is Motor ? AnswerWord.RunsSlowly : AnswerWord.Weak,
            _ when state.Stalled && check.GroupOf(AnswerWord.Hums) >= 0 && Luck(load.Id) < 0.5 => AnswerWord.Hums,
            _ => lit ? AnswerWord.Dark : load is Motor ? AnswerWord.Silent : AnswerWord.Dead,
        };
    }

    private AnswerWord Bench(string relay)
    {
        var fault = _faults.FirstOrDefault(f => f.Part == relay);
        // A buzzer passes contacts that drop volts under load.
        return fault is null || (fault.Mode == FaultModes.ContactResistive && fault.Severity < Meter.BuzzerLowOhms)
            ? AnswerWord.Passes
            : AnswerWord.Fails;
    }

    private bool CuredWithout(string relay)
    {
        ImmutableArray<Fault> left = [.. _faults.Where(f => f.Part != relay)];
        return left.Length < _faults.Length
            && _simulator.Simulate(new Arrangement(_complaint.Condition), left).Load(_complaint.Load).Condition == LoadCondition.Works;
    }

    private bool IsCommanded(OperatingPoint point, TerminalName output) =>
        point.IsAwake(output.Part) && !Has(output.ToString(), FaultModes.NotCommanded)
        && (point.IsDriving(output.Part, output.Name) || Has(output.ToString(), FaultModes.OutputOff));

    /// <summary>While its output is off the module watches the volts there; a broken control circuit shows.</summary>
    private bool StoresCode(TerminalName output)
    {
        foreach (var condition in _simulator.Network.Circuit.Conditions)
        {
            var arrangement = new Arrangement(condition.Name);
            var healthy = _simulator.Simulate(arrangement, []);
            if (healthy.IsAwake(output.Part) && !healthy.IsDriving(output.Part, output.Name)
                && Settle(arrangement) is var point && point.IsAwake(output.Part)
                && Math.Abs(point.Volts(output) - healthy.Volts(output)) > 2)
            {
                return true;
            }
        }

        return false;
    }

    private static double Watts(OperatingPoint point, string part)
    {
        var most = 0.0;
        var branches = point.Network.Branches;
        for (var i = 0; i < branches.Length; i++)
        {
            if (branches[i].Owner == part && branches[i].Use is BranchUse.Cavity or BranchUse.GroundPoint)
            {
                most = Math.Max(most, point.Amps(i) * point.Amps(i) * point.Ohms(i));
            }
        }

        return most;
    }

    private Fault? JointFault(string part) => _faults.FirstOrDefault(f =>
        (f.Part == part || f.Part.StartsWith(part + ".", StringComparison.Ordinal))
        && f.Mode is FaultModes.Open or FaultModes.Resistive or FaultModes.Loose);

    private bool Has(string part, params ReadOnlySpan<string> modes)
    {
        foreach (var fault in _faults)
        {
            if (fault.Part == part && modes.Contains(fault.Mode))
            {
                return true;
            }
        }

        return false;
    }

    private OperatingPoint Settle(Arrangement arrangement) => _simulator.Simulate(arrangement, Present(arrangement, null));

    /// <summary>The faults as they are in this arrangement at this moment.</summary>
    private ImmutableArray<Fault> Present(Arrangement arrangement, Probe? probe) =>
        !_shows ? [] : _habits.Settle(_simulator, _faults, arrangement, probe);

    private double Bell() => _noise?.Bell() ?? 0;

    private double Even() => _noise?.Next() ?? 0;

    /// <summary>Whether this car's fault can be seen there: the same at every look.</summary>
    private double Luck(string about) =>
        _luck.TryGetValue(about, out var known) ? known : _luck[about] = Even();
}
