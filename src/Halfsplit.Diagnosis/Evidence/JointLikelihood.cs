namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// The probability of several displayed numbers at once under one car: jointly Gaussian through the shared unknowns,
/// with up to two readings at a time allowed to be slips. A probability of display counts, never a density, so that it
/// can stand beside a broad likelihood. The order of readings does not matter.
/// </summary>
internal sealed partial class JointLikelihood
{
    /// <summary>Chance that a reading is a slip: wrong pin, poor contact, wrong unit; an assumption.</summary>
    public const double SlipOdds = 0.02;

    /// <summary>
    /// Standard deviations of the normal distribution beyond which numbers do not fit: one car in a hundred reads so; an assumption.
    /// </summary>
    private const double Misfit = 2.33;

    /// <summary>A reading more likely a slip than this is set aside.</summary>
    private const double TakenForSlip = 0.5;

    private double[] _factor = [];
    private double[] _precision = [];
    private double[] _residual = [];
    private double[] _weighted = [];
    private double[] _slips = [];

    /// <summary>Of each reading: the logarithm of its step, and of the share of floating wires that show what it shows.</summary>
    private double[] _logs = [];
    private double _all;
    private double _total;
    private double _quadratic;

    /// <summary>Of the readings weighed last: those on floating wires, and those of them that were quiet.</summary>
    private int _floating, _quiet;

    /// <summary>
    /// Natural logarithm of the probability of the counts.
    /// </summary>
    /// <param name="readings">The numbers, with their display steps and their broad log probabilities.</param>
    /// <param name="forecasts">What this car predicts for each.</param>
    public double Log(ReadOnlySpan<NumberRead> readings, ReadOnlySpan<Forecast> forecasts)
    {
        var n = readings.Length;
        if (n == 0)
        {
            (_floating, _quiet, _quadratic) = (0, 0, 0);
            return 0;
        }

        Prepare(n);
        Covariance(readings, forecasts);
        var logDeterminant = Invert(n);
        _quadratic = Weigh(n);
        Turn(readings, forecasts);
        var logSteps = 0.0;
        for (var i = 0; i < n; i++)
        {
            logSteps += _logs[i];
        }

        _all = (-0.5 * (_quadratic + logDeterminant + (n * Math.Log(2 * Math.PI)))) + logSteps;
        for (var i = 0; i < n; i++)
        {
            _slips[i] = Slips.Log(readings[i], forecasts[i]);
        }

        var result = Sum(readings, []);
        _total = result - (n * Math.Log(1 - SlipOdds));
        return result;
    }

    /// <summary>
    /// After <see cref="Log"/>: where the readings put the severity inside its cell, in its standard deviations, and how much of its variance
    /// they left; the conditional mean and variance of the last shared unknown, 0 and 1 where the readings say nothing of it.
    /// </summary>
    public (double Mean, double Variance) Degree(ReadOnlySpan<Forecast> forecasts)
    {
        var n = forecasts.Length;
        var (mean, known) = (0.0, 0.0);
        for (var i = 0; i < n; i++)
        {
            mean += forecasts[i].Slopes[^1] * _weighted[i];
            for (var j = 0; j < n; j++)
            {
                known += forecasts[i].Slopes[^1] * _precision[(i * n) + j] * forecasts[j].Slopes[^1];
            }
        }

        return (mean, Math.Clamp(1 - known, 0, 1));
    }

    /// <summary>After <see cref="Log"/>: what the readings say of the car's answers to come.</summary>
    /// <param name="words">What words said of the degree of its fault.</param>
    public Hindsight Hindsight(ReadOnlySpan<Forecast> forecasts, LogWords words)
    {
        var (mean, variance) = Degree(forecasts);
        return new Hindsight(
            forecasts, _precision, _weighted, PartsOfCell.OfNumbers(mean, variance).With(words), Forecast.QuietShareAfter(_quiet, _floating));
    }

    /// <summary>
    /// After <see cref="Log"/>: for each reading the probability, under this car, that it was a slip.
    /// </summary>
    public void SlipShares(ReadOnlySpan<NumberRead> readings, Span<double> shares)
    {
        shares.Clear();
        if (readings.Length > 0)
        {
            Sum(readings, shares);
        }
    }

    /// <summary>
    /// After <see cref="Log"/>: the numbers together are too far from what this car predicts. Their squared distance is chi-squared by
    /// as many degrees of freedom as there are readings; by the cube root it is about normal (E. B. Wilson and M. M. Hilferty, "The
    /// distribution of chi-square", 1931).
    /// </summary>
    /// <param name="slips">The probability of each reading's being a slip; those that are likely ones are set aside.</param>
    public bool IsMisfit(ReadOnlySpan<double> slips)
    {
        var all = slips.Length;
        var (kept, distance) = (all, _quadratic);
        for (var i = 0; i < all; i++)
        {
            if (slips[i] > TakenForSlip)
            {
                kept--;
                distance -= _weighted[i] * _weighted[i] / _precision[(i * all) + i];
            }
        }

        var variance = 2.0 / (9 * Math.Max(1, kept));
        return kept > 0 && Math.Cbrt(Math.Max(0, distance) / kept) - (1 - variance) > Misfit * Math.Sqrt(variance);
    }

    /// <summary>
    /// Sums over no slip, each single one, each pair, and each wrong pin that was read again and again.
    /// </summary>
    /// <param name="shares">Where the probability of each slip goes; empty when only the sum is wanted.</param>
    private double Sum(ReadOnlySpan<NumberRead> readings, Span<double> shares)
    {
        var n = readings.Length;
        var slip = Math.Log(SlipOdds / (1 - SlipOdds));
        var total = _all;
        for (var i = 0; i < n; i++)
        {
            var first = slip + _slips[i];
            Add(ref total, shares, _all + WithoutOne(n, i) + first, i, i);
            for (var j = i + 1; j < n; j++)
            {
                var both = first + slip + _slips[j];
                if (readings[i].Pin == readings[j].Pin && readings[i].Pin >= 0)
                {
                    both = LogAdd(both, first + Slips.LogAgain(readings[i], readings[j]));
                }

                Add(ref total, shares, _all + WithoutTwo(n, i, j) + both, i, j);
            }
        }

        for (var i = 0; i < n; i++)
        {
            Repeated(readings, i, slip, ref total, shares);
        }

        return total + (n * Math.Log(1 - SlipOdds));
    }

    /// <summary>The same wrong pin three times or more; two times is among the pairs.</summary>
    private void Repeated(ReadOnlySpan<NumberRead> readings, int first, double slip, ref double total, Span<double> shares)
    {
        var pin = readings[first].Pin;
        var members = 0;
        for (var i = 0; i < readings.Length; i++)
        {
            if (i < first && readings[i].Pin == pin)
            {
                return;
            }

            members += readings[i].Pin == pin ? 1 : 0;
        }

        if (pin < 0 || members < 3)
        {
            return;
        }

        var set = new int[members];
        var log = _all + slip + _slips[first];
        for (int i = 0, k = 0; i < readings.Length; i++)
        {
            if (readings[i].Pin == pin)
            {
                set[k++] = i;
                log += k == 1 ? 0 : Slips.LogAgain(readings[first], readings[i], k == 2 ? Slips.AgainShare : Slips.OftenShare);
            }
        }

        log += WithoutSet(readings.Length, set);
        if (shares.IsEmpty)
        {
            total = LogAdd(total, log);
            return;
        }

        foreach (var i in set)
        {
            shares[i] += Math.Exp(log - _total);
        }
    }

    private void Add(ref double total, Span<double> shares, double log, int i, int j)
    {
        if (shares.IsEmpty)
        {
            total = LogAdd(total, log);
            return;
        }

        var share = Math.Exp(log - _total);
        shares[i] += share;
        if (j != i)
        {
            shares[j] += share;
        }
    }

    /// <summary>
    /// What dropping one reading adds to the logarithm: minus its log probability given the others, which the precision
    /// matrix holds (conditional variance 1/P_ii, conditional residual (P·e)_i / P_ii).
    /// </summary>
    private double WithoutOne(int n, int i)
    {
        var p = _precision[(i * n) + i];
        var e = _weighted[i] / p;
        return 0.5 * ((e * e * p) - Math.Log(p) + Math.Log(2 * Math.PI)) - _logs[i];
    }

    private double WithoutTwo(int n, int i, int j)
    {
        var a = _precision[(i * n) + i];
        var b = _precision[(i * n) + j];
        var d = _precision[(j * n) + j];
        var determinant = (a * d) - (b * b);
        var u = _weighted[i];
        var v = _weighted[j];
        var quadratic = ((d * u * u) - (2 * b * u * v) + (a * v * v)) / determinant;
        return (0.5 * (quadratic - Math.Log(determinant))) + Math.Log(2 * Math.PI) - _logs[i] - _logs[j];
    }

    /// <summary>The same for any set, by elimination on its part of the precision matrix.</summary>
    private double WithoutSet(int n, int[] set)
    {
        var m = set.Length;
        var part = new double[m * m];
        var right = new double[m];
        var log = m * 0.5 * Math.Log(2 * Math.PI);
        for (var i = 0; i < m; i++)
        {
            right[i] = _weighted[set[i]];
            log -= _logs[set[i]];
            for (var j = 0; j < m; j++)
            {
                part[(i * m) + j] = _precision[(set[i] * n) + set[j]];
            }
        }

        for (var k = 0; k < m; k++)
        {
            var pivot = Math.Max(part[(k * m) + k], 1e-18);
            log += 0.5 * ((right[k] * right[k] / pivot) - Math.Log(pivot));
            for (var i = k + 1; i < m; i++)
            {
                var factor = part[(i * m) + k] / pivot;
                right[i] -= factor * right[k];
                for (var j = k; j < m; j++)
                {
                    part[(i * m) + j] -= factor * part[(k * m) + j];
                }
            }
        }

        return log;
    }

    private void Prepare(int n)
    {
        if (_residual.Length < n)
        {
            _factor = new double[n * n];
            _precision = new double[n * n];
            _residual = new double[n];
            _weighted = new double[n];
            _slips = new double[n];
            _logs = new double[n];
        }
    }

    private void Covariance(ReadOnlySpan<NumberRead> readings, ReadOnlySpan<Forecast> forecasts)
    {
        var n = readings.Length;
        (_floating, _quiet) = (0, 0);
        for (var i = 0; i < n; i++)
        {
            _residual[i] = readings[i].Value - forecasts[i].Mean;
            _logs[i] = Math.Log(readings[i].Step);
            for (var j = 0; j <= i; j++)
            {
                var sum = Dot(forecasts[i].Slopes, forecasts[j].Slopes);
                if (i == j)
                {
                    // The display's step enters so that no count can have a probability above one.
                    sum += readings[i].Step * readings[i].Step / (2 * Math.PI);
                    sum += forecasts[i].QuietVariance > 0 ? Floating(i, readings[i].Value, forecasts[i], sum) : forecasts[i].OwnVariance;
                }

                _factor[(i * n) + j] = sum;
            }
        }
    }

    /// <summary>
    /// A floating wire shows a ghost, a faint one, or nothing: whichever explains the reading best. (What floats shares next to
    /// nothing with other readings, so the best stands for their sum.)
    /// </summary>
    /// <param name="shared">Variance of the step and of the shared unknowns.</param>
    /// <returns>The reading's own variance.</returns>
    private double Floating(int i, double value, Forecast forecast, double shared)
    {
        // The first quiet wire shows what leaks into it, or nothing, or something between; the next shows one or the other.
        var isNext = _quiet > 0;
        var centre = isNext && _residual[i] * _residual[i] < value * value ? forecast.Mean : 0;
        var own = forecast.QuietVariance - (isNext ? forecast.Mean * forecast.Mean : 0);
        var faint = own + (Forecast.FaintShare * Forecast.FaintShare * (forecast.OwnVariance - own));
        var share = Forecast.QuietShareAfter(_quiet, _floating++);
        var quietly = LogOf(value - centre, own, share);
        var faintly = LogOf(_residual[i], faint, (1 - share) / 2);
        var loudly = LogOf(_residual[i], forecast.OwnVariance, (1 - share) / 2);
        if (quietly > Math.Max(faintly, loudly))
        {
            _quiet++;
            _residual[i] = value - centre;
            _logs[i] += Math.Log(share);
            return own;
        }

        _logs[i] += Math.Log((1 - share) / 2);
        return faintly > loudly ? faint : forecast.OwnVariance;

        double LogOf(double off, double variance, double odds) =>
            Math.Log(odds) - (0.5 * ((off * off / (variance + shared)) + Math.Log(variance + shared)));
    }

    /// <summary>Weighs the residuals with the precision; returns their squared distance.</summary>
    private double Weigh(int n)
    {
        var quadratic = 0.0;
        for (var i = 0; i < n; i++)
        {
            var sum = 0.0;
            for (var j = 0; j < n; j++)
            {
                sum += _precision[(i * n) + j] * _residual[j];
            }

            _weighted[i] = sum;
            quadratic += sum * _residual[i];
        }

        return quadratic;
    }

    internal static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var k = 0; k < a.Length; k++)
        {
            sum += a[k] * b[k];
        }

        return sum;
    }

    /// <summary>Cholesky factor, then the inverse; returns the logarithm of the determinant.</summary>
    private double Invert(int n)
    {
        var logDeterminant = 0.0;
        for (var j = 0; j < n; j++)
        {
            for (var i = j; i < n; i++)
            {
                var sum = _factor[(i * n) + j];
                for (var k = 0; k < j; k++)
                {
                    sum -= _factor[(i * n) + k] * _factor[(j * n) + k];
                }

                // Positive by construction: every diagonal carries its reading's own variance.
                _factor[(i * n) + j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-18)) : sum / _factor[(j * n) + j];
            }

            logDeterminant += 2 * Math.Log(_factor[(j * n) + j]);
        }

        for (var column = 0; column < n; column++)
        {
            SolveColumn(n, column);
        }

        return logDeterminant;
    }

    private void SolveColumn(int n, int column)
    {
        for (var i = 0; i < n; i++)
        {
            var sum = i == column ? 1.0 : 0.0;
            for (var k = 0; k < i; k++)
            {
                sum -= _factor[(i * n) + k] * _precision[(k * n) + column];
            }

            _precision[(i * n) + column] = sum / _factor[(i * n) + i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            var sum = _precision[(i * n) + column];
            for (var k = i + 1; k < n; k++)
            {
                sum -= _factor[(k * n) + i] * _precision[(k * n) + column];
            }

            _precision[(i * n) + column] = sum / _factor[(i * n) + i];
        }
    }

    internal static double LogAdd(double a, double b)
    {
        var high = Math.Max(a, b);
        return double.IsNegativeInfinity(high) ? high : high + Math.Log(Math.Exp(a - high) + Math.Exp(b - high));
    }
}
