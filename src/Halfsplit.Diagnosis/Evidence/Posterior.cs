using System.Collections.Immutable;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>The odds of every hypothesis given all observations; adds up to one.</summary>
public sealed class Posterior
{
    /// <summary>Chance that a word was said in error; an assumption.</summary>
    private const double WordSlip = 0.02;

    private readonly HypothesisSpace _space;

    private Posterior(HypothesisSpace space, double[] odds)
    {
        _space = space;
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

        return new Posterior(space, Normalize(logs));
    }

    /// <summary>Log likelihood of each observation by itself under one hypothesis; what moved it, reading by reading.</summary>
    public static double LogLikelihoodOf(Forecaster forecaster, Hypothesis car, Observation observation)
    {
        ArgumentNullException.ThrowIfNull(forecaster);
        return new Weighing(forecaster, [observation]).LogLikelihood(car);
    }

    /// <summary>
    /// The faults of a car with its severity moved to where the readings put it inside its cell.
    /// </summary>
    public static ImmutableArray<Simulation.Faults.Fault> Refined(
        Forecaster forecaster, Hypothesis car, IReadOnlyList<Observation> observations)
    {
        ArgumentNullException.ThrowIfNull(forecaster);
        ArgumentNullException.ThrowIfNull(car);
        if (car.Severity is not { } cell || car.Faults is not [{ Severity: { } severity }] || observations.Count == 0)
        {
            return car.Faults;
        }

        // Further than two spreads the neighbouring cell is the better car.
        var shift = Math.Clamp(new Weighing(forecaster, observations).SeverityShift(car), -2, 2);
        var healthy = forecaster.Network.Branches[cell.Branch].Ohms;
        var added = car.Faults[0].Mode == Simulation.Faults.FaultModes.Shorted ? 0 : healthy;
        var moved = ((added + severity) * Math.Exp(shift * cell.LogSpread)) - added;
        return moved > 0 ? [car.Faults[0] with { Severity = moved }] : car.Faults;
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
        private readonly double[] _steps;
        private readonly double[] _broad;
        private readonly JointLikelihood _joint = new();
        private readonly NumberRead[] _numbers;
        private readonly Forecast[] _forecasts;
        private int _numberCount;

        public Weighing(Forecaster forecaster, IReadOnlyList<Observation> observations)
        {
            _forecaster = forecaster;
            // The same sum in the same order, whatever order the readings came in.
            _observations = [.. observations.OrderBy(o => o.Check.Id, StringComparer.Ordinal).ThenBy(o => o.Value.ToString(), StringComparer.Ordinal)];
            var nominal = forecaster.Network.Circuit.Battery.NominalVolts;
            _steps = [.. _observations.Select(o => Step(forecaster, o))];
            _broad = [.. _observations.Select((o, i) => BroadLikelihood.Log(o.Check, o.Value, _steps[i], nominal))];
            _numbers = new NumberRead[_observations.Count];
            _forecasts = new Forecast[_observations.Count];
        }

        public double SeverityShift(Hypothesis car)
        {
            LogLikelihood(car);
            return _joint.SeverityShift(_forecasts.AsSpan(0, _numberCount));
        }

        public double LogLikelihood(Hypothesis car)
        {
            var log = 0.0;
            var numbers = 0;
            for (var i = 0; i < _observations.Count; i++)
            {
                var observation = _observations[i];
                var forecast = _forecaster.Of(car, observation.Check, observation.RepairsBefore);
                if (forecast.IsBroad)
                {
                    log += _broad[i];
                }
                else if (observation.Value is ReadingParse.Number number)
                {
                    var value = number.Quantity == Quantity.Amperes ? Math.Abs(number.Value) : number.Value;
                    _numbers[numbers] = new NumberRead(value, _steps[i], _broad[i]);
                    _forecasts[numbers++] = forecast;
                    log += Math.Log(Math.Max(1e-6, 1 - forecast.OverLimit));
                }
                else
                {
                    log += Math.Log(Word(observation, forecast, _broad[i]));
                }
            }

            _numberCount = numbers;
            return log + _joint.Log(_numbers.AsSpan(0, numbers), _forecasts.AsSpan(0, numbers));
        }

        private static double Word(Observation observation, Forecast forecast, double logBroad)
        {
            var said = observation.Value is ReadingParse.Word word
                ? WordOdds(observation, forecast, word.Answer)
                : forecast.OverLimit;
            return ((1 - WordSlip) * said) + (WordSlip * Math.Exp(logBroad));
        }

        private static double WordOdds(Observation observation, Forecast forecast, AnswerWord answer)
        {
            var group = Checks.AnswerGroups.GroupOf(observation.Check, answer);
            return group >= 0 && group < forecast.Groups.Length ? forecast.Groups[group] : 1;
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
