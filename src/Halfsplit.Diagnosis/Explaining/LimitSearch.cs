using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>
/// For one reading in one car: how many ohms more in a stretch the reading would not have shown. Found by bracketing, each
/// time with the whole circuit simulated.
/// </summary>
internal sealed class LimitSearch
{
    private const double LeastOhms = 1e-4, MostOhms = 1e10;

    /// <summary>The limit is found to within this share.</summary>
    private const double Closeness = 0.03;

    /// <summary>Enough to halve fourteen decades down to the closeness; with numbers a handful does.</summary>
    private const int MostSteps = 12;

    /// <summary>Spreads within which two numbers count as the same.</summary>
    private const double Spreads = 2;

    /// <summary>A word is not spoken against as long as it keeps this share of its probability.</summary>
    private const double WordShare = 0.1;

    /// <summary>A stretch is on the path if most of a current from lead to lead takes it.</summary>
    private const double LeastShare = 0.5;

    /// <summary>Amps that differ by less than this share are taken for the same current.</summary>
    private const double SameAmps = 0.1;

    private readonly Forecaster _forecaster;
    private readonly Check _check;
    private readonly Hypothesis _car;
    private readonly ImmutableArray<Fault> _faults;
    private readonly ImmutableArray<Repair> _repairs;
    private readonly int _group;
    private readonly double _step;
    private readonly double _tolerance;
    private readonly double _base;

    private LimitSearch(
        Forecaster forecaster, Observation reading, Hypothesis car, ImmutableArray<Fault> faults, Forecast forecast)
    {
        _forecaster = forecaster;
        _check = reading.Check;
        _car = car;
        _faults = Forecaster.Remaining(faults, reading.RepairsBefore);
        _repairs = reading.RepairsBefore;
        _group = reading.Value is ReadingParse.Word { Answer: var word } ? reading.Check.GroupOf(word) : -1;
        if (reading.Value is ReadingParse.Number number)
        {
            _step = Math.Max(forecaster.Simulator.Meter.Resolution(_check.Probe.Instrument, number.Value), number.Resolution ?? 0);
            _tolerance = (Spreads * ReadingTolerance.Spread(forecast, withSeverity: false)) + _step;
        }

        Point = Settle(_faults);
        _base = Answer(Point) ?? double.NaN;
        Fits = double.IsFinite(_base) && (reading.Value is ReadingParse.Number { Value: var value }
            ? Math.Abs(Size(value) - _base) <= (Spreads * forecast.Spread) + _step
            : _base > WordShare);
    }

    /// <summary>The car as it stood in the reading.</summary>
    public OperatingPoint Point { get; }

    /// <summary>The car would answer about so: only then can it be asked what more would have shown.</summary>
    public bool Fits { get; }

    /// <summary>Null where the answer clears nothing: over-limit, not sure, a word that speaks of a fault.</summary>
    public static LimitSearch? For(Forecaster forecaster, Observation reading, Hypothesis car, ImmutableArray<Fault> faults)
    {
        if (reading.Value is not (ReadingParse.Number or ReadingParse.Word)
            || forecaster.Of(car, reading.Check, reading.RepairsBefore) is not { IsBroad: false } forecast)
        {
            return null;
        }

        return reading.Value is ReadingParse.Word { Answer: var word } && reading.Check.GroupOf(word) != 0
            ? null
            : new LimitSearch(forecaster, reading, car, faults, forecast);
    }

    /// <summary>The stretches that the reading looks through, from lead to lead or through the load or coil it is about.</summary>
    public IEnumerable<Stretch> Path()
    {
        var network = _forecaster.Network;
        var probe = _check.Probe;
        int[] cuts = probe is { Red: { } red, Black: { } black } ? [network.NodeOf(red), network.NodeOf(black)] : [];
        var shares = new double[network.Branches.Length];
        if (probe.Instrument is Instrument.AmpsClamp or Instrument.AmpsInline)
        {
            for (var i = 0; i < shares.Length; i++)
            {
                shares[i] = Math.Abs(Math.Abs(Point.Amps(i)) - _base) <= SameAmps * _base ? 1 : 0;
            }
        }
        else if (Ends() is { } ends)
        {
            new InstrumentReader(Point, _forecaster.Simulator.Meter).PathShares(ends.From, ends.To, shares);
        }

        return Stretches.Of(network, cuts).Select(s => InPlace(network, s)).Where(s => s.Branches.Any(b => shares[b] >= LeastShare)
            // What is blamed is not cleared by its own reading.
            && !_faults.Any(f => s.Targets.Contains(f.Part)));
    }

    /// <summary>Without what is pulled or apart in this arrangement: a jumper leads past it.</summary>
    private Stretch InPlace(CircuitNetwork network, Stretch stretch)
    {
        var away = _check.Arrangement.Removed.Union(_check.Arrangement.Unplugged);
        if (away.Count == 0)
        {
            return stretch;
        }

        var branches = stretch.Branches.RemoveAll(b => away.Contains(network.Branches[b].Owner));
        return stretch with
        {
            Branches = branches,
            Targets = [.. branches.Select(b => network.Branches[b].Target).OfType<string>().Distinct(StringComparer.Ordinal)],
        };
    }

    private (TerminalName From, TerminalName To)? Ends() => _check.Probe switch
    {
        { Red: { } red, Black: { } black } => (red, black),
        { About: { } about } => _forecaster.Network.Circuit.Find(about) switch
        {
            Load load => _forecaster.Simulator.Simulate(_check.Arrangement, []).Driven(load),
            Relay relay => (new(relay.Id, "86"), new(relay.Id, "85")),
            _ => null,
        },
        _ => null,
    };

    /// <summary>True where an open stretch would show in the reading.</summary>
    public bool Covers(Stretch stretch) => stretch.WithOhms(_forecaster.Network, 1) is not null && Excess(stretch, MostOhms) > 1;

    /// <summary>True where so many ohms more would go unseen.</summary>
    public bool Hides(Stretch stretch, double ohms) => Excess(stretch, ohms) <= 1;

    /// <summary>The ohms up to which a covered stretch stays within the tolerance of the reading.</summary>
    public double Hidden(Stretch stretch, double guess) => Largest(stretch, guess, 1);

    /// <summary>The ohms up to which the display shows the same digits; null for words.</summary>
    public double? Same(Stretch stretch, double guess) =>
        _group >= 0 ? null : Largest(stretch, guess, _step / _tolerance);

    /// <summary>
    /// With so many ohms more the rest of the car behaves as before: relays, modules and fuses that the reading is not
    /// about. Otherwise the stretch shows only by way of them.
    /// </summary>
    public bool IsDirect(Stretch stretch, double ohms)
    {
        var point = Settle([.. _faults, stretch.WithOhms(_forecaster.Network, ohms)!]);
        var about = _check.Subject == CheckSubject.RelayClick ? _check.Probe.About : null;
        return _forecaster.Network.Circuit.Parts.All(part => part.Id == about || part switch
        {
            Relay => point.IsPulledIn(part.Id) == Point.IsPulledIn(part.Id),
            Fuse => point.IsBlown(part.Id) == Point.IsBlown(part.Id),
            Module module => point.IsAwake(part.Id) == Point.IsAwake(part.Id)
                && module.Outputs.All(o => point.IsDriving(part.Id, o.Name) == Point.IsDriving(part.Id, o.Name)),
            _ => true,
        });
    }

    /// <summary>Brackets the ohms at which the excess reaches a level: a small drop grows with the ohms, which makes the next guess.</summary>
    private double Largest(Stretch stretch, double guess, double level)
    {
        var (low, high) = (Math.Log(LeastOhms), Math.Log(MostOhms));
        var next = Math.Clamp(Math.Log(guess), low + 1, high - 1);
        for (var i = 0; i < MostSteps && high - low > Closeness; i++)
        {
            var excess = Excess(stretch, Math.Exp(next)) / level;
            (low, high) = excess <= 1 ? (next, high) : (low, next);
            var step = Math.Log(1 / excess);
            if (Math.Abs(step) < Closeness / 2)
            {
                return Math.Exp(next + step);
            }

            // A word's probability does not grow with the ohms, nor does what a relay that drops out changes.
            var grown = _group < 0 && double.IsFinite(step) ? next + step : double.NaN;
            next = grown > low && grown < high ? grown : 0.5 * (low + high);
        }

        return Math.Exp(0.5 * (low + high));
    }

    /// <summary>How far the answer moves with so many ohms more, in tolerances; over one it would have shown.</summary>
    private double Excess(Stretch stretch, double ohms)
    {
        if (Answer(Settle([.. _faults, stretch.WithOhms(_forecaster.Network, ohms)!])) is not { } answer)
        {
            return double.PositiveInfinity;
        }

        return _group >= 0 ? WordShare * _base / Math.Max(answer, 1e-12) : Math.Abs(answer - _base) / _tolerance;
    }

    private OperatingPoint Settle(ImmutableArray<Fault> faults)
    {
        var laid = InstrumentReader.TakesPart(_check.Probe.Instrument) ? _check.Probe : null;
        return _forecaster.Simulator.Simulate(_check.Arrangement, faults, new SimulationOptions(_car.ThresholdFactor, laid));
    }

    /// <summary>The number shown, or the probability of the word that was said; null where a meter would abstain.</summary>
    private double? Answer(OperatingPoint point)
    {
        if (!_check.Subject.IsOfAnInstrument())
        {
            return _group < 0 ? null : WordForecasts.Of(_forecaster, _car, _check, point, _repairs)[_group];
        }

        var read = new InstrumentReader(point, _forecaster.Simulator.Meter).Read(_check.Probe);
        if (read.Abstains != Abstention.None)
        {
            return null;
        }

        return (_group, _check.Subject) switch
        {
            (< 0, _) => Size(read.Value),
            (_, CheckSubject.Buzzer) => WordForecasts.Buzzer(read.Value)[_group],
            _ => WordForecasts.Glow(Math.Abs(read.Value) / _forecaster.Network.Circuit.Battery.NominalVolts)[_group],
        };
    }

    /// <summary>Amps are read without regard to the direction of the clamp.</summary>
    private double Size(double value) =>
        _check.Probe.Instrument is Instrument.AmpsClamp or Instrument.AmpsInline ? Math.Abs(value) : value;
}
