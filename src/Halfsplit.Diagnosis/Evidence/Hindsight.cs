namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// What the readings so far say about the answers of one car to come: they moved the battery's volts, the parts' true ohms and the degree
/// of the fault, which all its answers share. A point beside one that was read can only show what that one lets expect, so
/// it tells next to nothing.
/// </summary>
internal sealed class Hindsight
{
    private readonly double[] _means = [];
    private readonly double[][] _slopes;
    private readonly double[] _precision;
    private readonly double[] _covariance;
    private readonly PartsOfCell _parts;
    private readonly double _quietShare;

    /// <param name="forecasts">What the car predicted for each number read.</param>
    /// <param name="precision">Inverse covariance of those numbers, row by row.</param>
    /// <param name="weighted">The precision times how far each number lay from its prediction.</param>
    /// <param name="parts">Where the readings put the degree of the fault inside its cell.</param>
    /// <param name="quietShare">How likely the next floating wire is quiet.</param>
    public Hindsight(
        ReadOnlySpan<Forecast> forecasts, ReadOnlySpan<double> precision, ReadOnlySpan<double> weighted, PartsOfCell parts, double quietShare)
    {
        var n = forecasts.Length;
        _slopes = new double[n][];
        _precision = precision[..(n * n)].ToArray();
        _covariance = new double[n];
        _parts = parts;
        _quietShare = quietShare;
        if (n == 0)
        {
            return;
        }

        _means = new double[forecasts[0].Slopes.Length];
        for (var i = 0; i < n; i++)
        {
            _slopes[i] = forecasts[i].Slopes;
            for (var k = 0; k < _means.Length; k++)
            {
                _means[k] += weighted[i] * _slopes[i][k];
            }
        }
    }

    /// <summary>What a check shows of this car, the readings so far known.</summary>
    public Outlook Of(Forecast forecast)
    {
        var outlook = Outlook.Of(forecast);
        if (forecast.ByDegree is { } byDegree)
        {
            return outlook with { Groups = byDegree.Given(_parts) };
        }

        if (forecast.QuietVariance > 0)
        {
            // What floats shares next to nothing with other readings but its quiet.
            return outlook with { QuietShare = _quietShare };
        }

        if (forecast.IsBroad || forecast.Slopes.Length == 0 || _slopes.Length == 0)
        {
            return outlook;
        }

        for (var i = 0; i < _covariance.Length; i++)
        {
            _covariance[i] = JointLikelihood.Dot(forecast.Slopes, _slopes[i]);
        }

        var shared = JointLikelihood.Dot(forecast.Slopes, forecast.Slopes);
        var left = Math.Max(0, shared - Explained());
        var mean = forecast.Mean + JointLikelihood.Dot(forecast.Slopes, _means);
        return outlook with
        {
            // A clamp shows amps without their sign, whichever way its zero turned them.
            Mean = forecast.Zero == 0 ? mean : Math.Abs(mean),
            Spread = Math.Sqrt(forecast.OwnVariance + left),
        };
    }

    /// <summary>How much of a variance the readings take away whose covariances with them are in <see cref="_covariance"/>.</summary>
    private double Explained()
    {
        var n = _covariance.Length;
        var sum = 0.0;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                sum += _covariance[i] * _precision[(i * n) + j] * _covariance[j];
            }
        }

        return sum;
    }
}
