using CsCheck;
using Halfsplit.Diagnosis.Evidence;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Evidence;

/// <summary>The fast joint likelihood against brute force: every set of slips, each marginal by Gaussian elimination.</summary>
public sealed class JointLikelihoodTests
{
    private static readonly Gen<(double[] Values, double[] Means, double[] Own, double[][] Slopes)> Cases =
        from n in Gen.Int[1, 6]
        from values in Gen.Double[-1, 13].Array[n]
        from means in Gen.Double[-1, 13].Array[n]
        from own in Gen.Double[1e-4, 0.1].Array[n]
        from slopes in Gen.Double[-0.5, 0.5].Array[3].Array[n]
        select (values, means, own, slopes);

    [Fact]
    public void It_equals_the_sum_over_all_sets_of_up_to_two_slips()
    {
        Cases.Sample(
            c =>
            {
                const double Step = 0.01;
                const double Broad = -6.5;
                var reads = c.Values.Select(v => new NumberRead(v, Step, Broad)).ToArray();
                var forecasts = c.Means.Select((m, i) => new Forecast { Mean = m, OwnVariance = c.Own[i], Slopes = c.Slopes[i] }).ToArray();
                var fast = new JointLikelihood().Log(reads, forecasts);

                var slow = BruteForce(c.Values, forecasts, Step, Broad);

                Assert.Equal(slow, fast, 1e-6 * Math.Max(1, Math.Abs(slow)));
            },
            iter: 300);
    }

    private static double BruteForce(double[] values, Forecast[] forecasts, double step, double broad)
    {
        var n = values.Length;
        var total = double.NegativeInfinity;
        for (var set = 0; set < 1 << n; set++)
        {
            var slips = System.Numerics.BitOperations.PopCount((uint)set);
            if (slips > 2)
            {
                continue;
            }

            var kept = Enumerable.Range(0, n).Where(i => (set & (1 << i)) == 0).ToArray();
            var log = (slips * (Math.Log(JointLikelihood.SlipOdds) + broad)) + (kept.Length * Math.Log(1 - JointLikelihood.SlipOdds))
                + LogNormal(values, forecasts, kept, step);
            total = JointLikelihood.LogAdd(total, log);
        }

        return total;
    }

    /// <summary>Log of the density at the readings times the steps, by elimination on the covariance.</summary>
    private static double LogNormal(double[] values, Forecast[] forecasts, int[] kept, double step)
    {
        var n = kept.Length;
        var m = new double[n, n + 1];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                m[i, j] = forecasts[kept[i]].Slopes.Zip(forecasts[kept[j]].Slopes, (a, b) => a * b).Sum()
                    + (i == j ? forecasts[kept[i]].OwnVariance + (step * step / (2 * Math.PI)) : 0);
            }

            m[i, n] = values[kept[i]] - forecasts[kept[i]].Mean;
        }

        var logDeterminant = 0.0;
        var quadratic = 0.0;
        for (var k = 0; k < n; k++)
        {
            logDeterminant += Math.Log(m[k, k]);
            quadratic += m[k, n] * m[k, n] / m[k, k];
            for (var i = k + 1; i < n; i++)
            {
                var factor = m[i, k] / m[k, k];
                for (var j = k; j <= n; j++)
                {
                    m[i, j] -= factor * m[k, j];
                }
            }
        }

        return (-0.5 * (quadratic + logDeterminant + (n * Math.Log(2 * Math.PI)))) + (n * Math.Log(step));
    }
}
