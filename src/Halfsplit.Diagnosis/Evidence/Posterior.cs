using System.Collections.Immutable;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>The odds of every hypothesis given all observations; adds up to one.</summary>
public sealed class Posterior
{
    /// <summary>Chance that a word was said in error; an assumption.</summary>
    private const double WordSlip = 0.02;

    /// <summary>How often a look that is taken again gives the same answer whatever the car; an assumption.</summary>
    private const double SameEyes = 0.5;

    /// <summary>Odds below which a hypothesis says nothing about slips.</summary>
    private const double TooUnlikely = 1e-5;

    private readonly HypothesisSpace _space;

    /// <summary>A reading more likely a slip than this says nothing of what comes.</summary>
    private const double TakenForSlip = 0.5;

    private readonly Weighing _weighing;
    private readonly Dictionary<int, Hindsight> _hindsights = [];

    private Posterior(HypothesisSpace space, Weighing weighing, double[] logs)
    {
        _space = space;
        _weighing = weighing;
        LogOdds = [.. logs];
        var odds = Normalize(logs);
        Odds = [.. odds];
        var bySuspect = new double[space.Suspects.Length];
        for (var i = 0; i < odds.Length; i++)
        {
            bySuspect[space.Hypotheses[i].Suspect] += odds[i];
        }

        SuspectOdds = [.. bySuspect];
    }

    /// <summary>One per hypothesis.</summary>
    public ImmutableArray<double> Odds { get; }

    /// <summary>
    /// Logarithm of each hypothesis's odds but for a term that all share: tells hypotheses apart whose odds are too small for a number.
    /// </summary>
    internal ImmutableArray<double> LogOdds { get; }

    /// <summary>One per suspect.</summary>
    public ImmutableArray<double> SuspectOdds { get; }

    public HypothesisSpace Space => _space;

    /// <summary>Odds of "none of these".</summary>
    public double NoneOdds
    {
        get
        {
            for (var i = 0; i < _space.Suspects.Length; i++)
            {
                if (_space.Suspects[i].IsNone)
                {
                    return SuspectOdds[i];
                }
            }

            return 0;
        }
    }

    /// <summary>Odds of "none of these", and of cars by which the numbers read are too improbable together, one slip set aside.</summary>
    public double UnexplainedOdds => _space.Hypotheses
        .Where(c => Odds[c.Index] >= TooUnlikely && (c.IsNone || _weighing.IsMisfit(c)))
        .Sum(c => Odds[c.Index]);

    /// <summary>Weighs all observations at once; their order does not matter.</summary>
    public static Posterior Of(HypothesisSpace space, Forecaster forecaster, IReadOnlyList<Observation> observations)
    {
        ArgumentNullException.ThrowIfNull(space);
        ArgumentNullException.ThrowIfNull(forecaster);
        ArgumentNullException.ThrowIfNull(observations);
        var weighing = new Weighing(forecaster, observations);
        var logs = new double[space.Hypotheses.Length];
        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] = space.Hypotheses[i].LogPrior + weighing.LogLikelihood(space.Hypotheses[i]);
        }

        return new Posterior(space, weighing, logs);
    }

    /// <summary>Numbers were read that say something of the answers to come.</summary>
    internal bool HasNumbers => _weighing.HasNumbers;

    /// <summary>What the observations say of the answers of a car to come; the car must not be "none of these".</summary>
    internal Hindsight HindsightOf(Hypothesis car)
    {
        if (!_hindsights.TryGetValue(car.Index, out var known))
        {
            _hindsights[car.Index] = known = _weighing.HindsightOf(car);
        }

        return known;
    }

    /// <summary>Log likelihood of each observation by itself under one hypothesis; what moved it, reading by reading.</summary>
    public static double LogLikelihoodOf(Forecaster forecaster, Hypothesis car, Observation observation)
    {
        ArgumentNullException.ThrowIfNull(forecaster);
        return new Weighing(forecaster, [observation]).LogLikelihood(car);
    }

    /// <summary>
    /// For each observation the probability that it was a slip, over all hypotheses by their odds; in the order of the
    /// observations given.
    /// </summary>
    public ImmutableArray<double> SlipOdds(Forecaster forecaster, IReadOnlyList<Observation> observations)
    {
        ArgumentNullException.ThrowIfNull(forecaster);
        ArgumentNullException.ThrowIfNull(observations);
        var weighing = new Weighing(forecaster, observations);
        var shares = new double[observations.Count];
        var sums = new double[observations.Count];
        foreach (var car in _space.Hypotheses)
        {
            if (Odds[car.Index] < TooUnlikely)
            {
                continue;
            }

            weighing.LogLikelihood(car, shares);
            for (var i = 0; i < sums.Length; i++)
            {
                sums[i] += Odds[car.Index] * shares[i];
            }
        }

        return [.. observations.Select(o => Math.Clamp(sums[weighing.PlaceOf(o)], 0, 1))];
    }

    /// <summary>Odds that the fault comes and goes from one reading to the next, over all hypotheses by their odds.</summary>
    public double FlickeringOdds(Forecaster forecaster, IReadOnlyList<Observation> observations)
    {
        ArgumentNullException.ThrowIfNull(forecaster);
        ArgumentNullException.ThrowIfNull(observations);
        var weighing = new Weighing(forecaster, observations);
        return _space.Hypotheses.Where(c => Odds[c.Index] >= TooUnlikely).Sum(c => Odds[c.Index] * weighing.FlickeringShare(c));
    }

    /// <summary>
    /// The faults of a car with its severity moved to where the readings put it inside its cell.
    /// </summary>
    public static ImmutableArray<Simulation.Faults.Fault> Refined(
        Forecaster forecaster, Hypothesis car, IReadOnlyList<Observation> observations)
    {
        ArgumentNullException.ThrowIfNull(forecaster);
        ArgumentNullException.ThrowIfNull(car);
        if (car.Severity is null || observations.Count == 0)
        {
            return car.Faults;
        }

        // Further than two spreads the neighbouring cell is the better car.
        var shift = Math.Clamp(new Weighing(forecaster, observations).SeverityShift(car), -2, 2);
        return GroupsByDegree.Moved(forecaster.Network, car, shift) ?? car.Faults;
    }

    private static double[] Normalize(double[] logs)
    {
        var high = double.NegativeInfinity;
        foreach (var log in logs)
        {
            high = Math.Max(high, log);
        }

        var sum = 0.0;
        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] = Math.Exp(logs[i] - high);
            sum += logs[i];
        }

        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] /= sum;
        }

        return logs;
    }

    /// <summary>Observations parted once into numbers and words, then weighed against every hypothesis.</summary>
    private sealed class Weighing
    {
        private readonly Forecaster _forecaster;
        private readonly IReadOnlyList<Observation> _observations;
        private readonly ForecastColumn[] _columns;
        private readonly double[] _broad;

        /// <summary>The same, given what the check showed before.</summary>
        private readonly double[] _broadAgain;
        private readonly int[] _before;

        /// <summary>Of each observation that is a number, how it was read.</summary>
        private readonly NumberRead[] _reads;
        private readonly int[] _numberAt;
        private readonly double[] _numberShares;
        private readonly JointLikelihood _joint = new();
        private readonly NumberRead[] _numbers;
        private readonly Forecast[] _forecasts;
        private readonly JointLikelihood _alone = new();
        private readonly double[] _away;
        private readonly bool _seenAway;
        private int _numberCount;

        /// <summary>Of the car weighed last: the words that hang on the degree of its fault.</summary>
        private LogWords _words;

        public Weighing(Forecaster forecaster, IReadOnlyList<Observation> observations)
        {
            _forecaster = forecaster;
            // The same sum in the same order, whatever order the readings came in.
            _observations = [.. observations.OrderBy(o => o.Check.Id, StringComparer.Ordinal).ThenBy(o => o.Value.ToString(), StringComparer.Ordinal)];
            var nominal = forecaster.Network.Circuit.Battery.NominalVolts;
            _columns = [.. _observations.Select(o => forecaster.ColumnOf(o.Check))];
            _broad = [.. _observations.Select(o => BroadLikelihood.Log(o.Check, o.Value, Step(forecaster, o), nominal))];
            (var pins, _before) = Repeats(_observations);
            _reads = [.. _observations.Select((o, i) => Read(forecaster, o, _broad[i], pins[i]))];
            _broadAgain = [.. Enumerable.Range(0, _observations.Count).Select(BroadAgain)];
            _numberAt = new int[_observations.Count];
            _numberShares = new double[_observations.Count];
            _numbers = new NumberRead[_observations.Count];
            _forecasts = new Forecast[_observations.Count];
            _seenAway = _observations.Any(o => o.IsFaultAway);
            _away = new double[_observations.Count];
            for (var i = 0; i < _away.Length; i++)
            {
                _away[i] = Alone(i, ComesAndGoes.ForecastAway(forecaster, _observations[i]));
            }
        }

        /// <summary>Where an observation stands in the order used here.</summary>
        public int PlaceOf(Observation observation)
        {
            for (var i = 0; i < _observations.Count; i++)
            {
                if (ReferenceEquals(_observations[i], observation))
                {
                    return i;
                }
            }

            throw new ArgumentException("Not one of the observations weighed.", nameof(observation));
        }

        public double SeverityShift(Hypothesis car)
        {
            LogLikelihood(car);
            return _joint.Degree(_forecasts.AsSpan(0, _numberCount)).Mean;
        }

        public bool HasNumbers => _observations.Any(o => o.Value is ReadingParse.Number && !ComesAndGoes.IsUnsteady(o));

        /// <summary>The numbers are too improbable together by this car, though the likeliest slip is set aside.</summary>
        public bool IsMisfit(Hypothesis car)
        {
            LogSteady(car, new double[_observations.Count]);
            return _joint.IsMisfit(_numberShares.AsSpan(0, _numberCount));
        }

        /// <summary>What the numbers that were no slips say of the answers of a car to come.</summary>
        public Hindsight HindsightOf(Hypothesis car)
        {
            LogSteady(car, new double[_observations.Count]);
            var kept = 0;
            for (var i = 0; i < _numberCount; i++)
            {
                if (_numberShares[i] <= TakenForSlip)
                {
                    (_numbers[kept], _forecasts[kept]) = (_numbers[i], _forecasts[i]);
                    kept++;
                }
            }

            var forecasts = _forecasts.AsSpan(0, kept);
            _alone.Log(_numbers.AsSpan(0, kept), forecasts);
            return _alone.Hindsight(forecasts, _words);
        }

        public double LogLikelihood(Hypothesis car) => LogLikelihood(car, []);

        /// <summary>The fault is there at every reading, or it comes and goes from one to the next.</summary>
        /// <param name="slips">Where the probability of each observation's being a slip goes; empty when it is not wanted.</param>
        public double LogLikelihood(Hypothesis car, Span<double> slips)
        {
            var (steady, flickering) = Parts(car, slips);
            if (double.IsNegativeInfinity(flickering))
            {
                return steady;
            }

            var log = JointLikelihood.LogAdd(steady, flickering);
            foreach (ref var slip in slips)
            {
                slip *= Math.Exp(steady - log);
            }

            return log;
        }

        /// <summary>Share of a car's likelihood that rests on its fault's coming and going.</summary>
        public double FlickeringShare(Hypothesis car)
        {
            var (steady, flickering) = Parts(car, []);
            return double.IsNegativeInfinity(flickering) ? 0 : Math.Exp(flickering - JointLikelihood.LogAdd(steady, flickering));
        }

        private (double Steady, double Flickering) Parts(Hypothesis car, Span<double> slips)
        {
            var steady = LogSteady(car, slips);
            var odds = ComesAndGoes.Flickering(_forecaster, car, _seenAway);
            return odds <= 0
                ? (steady, double.NegativeInfinity)
                : (Math.Log(1 - odds) + steady, Math.Log(odds) + LogFlickering(car));
        }

        /// <summary>Each reading by itself, with the fault there or away.</summary>
        private double LogFlickering(Hypothesis car)
        {
            var log = ComesAndGoes.LogPrior(_forecaster, car, _observations);
            for (var i = 0; i < _observations.Count; i++)
            {
                var observation = _observations[i];
                if (ComesAndGoes.IsUnsteady(observation))
                {
                    log += ComesAndGoes.LogUnsteady(_forecaster, car, observation);
                    continue;
                }

                var there = Alone(i, ComesAndGoes.Forecast(_forecaster, car, observation, _columns[i]));
                log += ComesAndGoes.ShowsState(observation.Check.Subject)
                    ? JointLikelihood.LogAdd(Math.Log(ComesAndGoes.There) + there, Math.Log(1 - ComesAndGoes.There) + _away[i])
                    : there;
            }

            return log;
        }

        /// <summary>One reading by itself.</summary>
        private double Alone(int i, Forecast forecast)
        {
            if (forecast.IsBroad)
            {
                return _broad[i];
            }

            if (_observations[i].Value is not ReadingParse.Number)
            {
                return Math.Log(Repeated(i, Word(i, forecast)));
            }

            return Math.Log(Math.Max(1e-6, 1 - forecast.OverLimit)) + _alone.Log([_reads[i]], [forecast]);
        }

        private double LogSteady(Hypothesis car, Span<double> slips)
        {
            slips.Clear();
            var log = ComesAndGoes.LogPrior(_forecaster, car, _observations);
            var numbers = 0;
            _words = default;
            for (var i = 0; i < _observations.Count; i++)
            {
                var observation = _observations[i];
                if (ComesAndGoes.IsUnsteady(observation))
                {
                    log += ComesAndGoes.LogUnsteady(_forecaster, car, observation);
                    continue;
                }

                var forecast = ComesAndGoes.Forecast(_forecaster, car, observation, _columns[i]);
                if (forecast.IsBroad)
                {
                    log += _broadAgain[i];
                }
                else if (observation.Value is ReadingParse.Number)
                {
                    _numbers[numbers] = _reads[i];
                    _numberAt[numbers] = i;
                    _forecasts[numbers++] = forecast;
                    log += Math.Log(Math.Max(1e-6, 1 - forecast.OverLimit));
                }
                else
                {
                    var word = Word(i, forecast);
                    if (!slips.IsEmpty)
                    {
                        slips[i] = WordSlip * Math.Exp(_broad[i]) / word;
                    }

                    if (forecast.ByDegree is { } degrees)
                    {
                        _words += new LogWords(LogRepeated(i, degrees.Low), LogRepeated(i, degrees.Middle), LogRepeated(i, degrees.High));
                    }
                    else
                    {
                        log += Math.Log(Repeated(i, word));
                    }
                }
            }

            _numberCount = numbers;
            var forecasts = _forecasts.AsSpan(0, numbers);
            log += _joint.Log(_numbers.AsSpan(0, numbers), forecasts);
            if (_words != default)
            {
                var (mean, variance) = _joint.Degree(forecasts);
                log += PartsOfCell.OfNumbers(mean, variance).LogOf(_words);
            }

            if (!slips.IsEmpty)
            {
                _joint.SlipShares(_numbers.AsSpan(0, numbers), _numberShares.AsSpan(0, numbers));
                for (var k = 0; k < numbers; k++)
                {
                    slips[_numberAt[k]] = _numberShares[k];
                }
            }

            return log;
        }

        /// <summary>What nothing is known of shows the same again when it is looked at again, or else anything.</summary>
        private double BroadAgain(int i) => _before[i] < 0
            ? _broad[i]
            : (_observations[_before[i]].Value, _observations[i].Value) is (ReadingParse.Number, ReadingParse.Number)
                ? JointLikelihood.LogAdd(
                    Slips.LogAgain(_reads[_before[i]], _reads[i], Slips.OftenShare), Math.Log(1 - Slips.OftenShare) + _broad[i])
                : Math.Log(Repeated(i, Math.Exp(_broad[i])));

        private static NumberRead Read(Forecaster forecaster, Observation observation, double logBroad, int pin) =>
            observation.Value is ReadingParse.Number number
                ? new(
                    number.Quantity == Quantity.Amperes ? Math.Abs(number.Value) : number.Value, Step(forecaster, observation), logBroad,
                    forecaster.SpreadOf(observation.Check.Probe.Instrument, number.Value), pin)
                : default;

        private double LogRepeated(int i, ImmutableArray<double> groups) => Math.Log(Repeated(i, Word(i, groups)));

        private double Word(int i, Forecast forecast) => Word(i, Said(_observations[i], forecast));

        private double Word(int i, ImmutableArray<double> groups) =>
            Word(i, _observations[i].Value is ReadingParse.Word word ? WordOdds(_observations[i], groups, word.Answer) : 0);

        private double Word(int i, double said) => ((1 - WordSlip) * said) + (WordSlip * Math.Exp(_broad[i]));

        /// <summary>Who looks again sees with the same eyes: the same answer again says less, another one says all.</summary>
        private double Repeated(int i, double word) => _before[i] < 0
            ? word
            : ((1 - SameEyes) * word) + (_observations[i].Value.Equals(_observations[_before[i]].Value) ? SameEyes : 0);

        /// <summary>
        /// Readings of the same check have the same pin; words of the same check have one said before them.
        /// </summary>
        private static (int[] Pins, int[] Before) Repeats(IReadOnlyList<Observation> observations)
        {
            var pins = new int[observations.Count];
            var before = new int[observations.Count];
            for (var i = 0; i < pins.Length; i++)
            {
                pins[i] = i > 0 && observations[i].Check.Id == observations[i - 1].Check.Id ? pins[i - 1] : i;
                before[i] = pins[i] < i && observations[i].RepairsBefore.Length == observations[i - 1].RepairsBefore.Length
                    && observations[i].IsFaultAway == observations[i - 1].IsFaultAway
                    ? i - 1
                    : -1;
            }

            return (pins, before);
        }

        private static double Said(Observation observation, Forecast forecast) => observation.Value is ReadingParse.Word word
            ? WordOdds(observation, forecast.Groups, word.Answer)
            : forecast.OverLimit;

        private static double WordOdds(Observation observation, ImmutableArray<double> groups, AnswerWord answer)
        {
            var group = Checks.AnswerGroups.GroupOf(observation.Check, answer);
            return group >= 0 && group < groups.Length ? groups[group] : 1;
        }

        private static double Step(Forecaster forecaster, Observation observation)
        {
            if (observation.Value is not ReadingParse.Number number)
            {
                return 1;
            }

            var display = forecaster.Simulator.Meter.Resolution(observation.Check.Probe.Instrument, number.Value);
            return Math.Max(display, number.Resolution ?? 0);
        }
    }
}
