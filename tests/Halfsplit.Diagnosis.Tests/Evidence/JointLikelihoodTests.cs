using CsCheck;
using Halfsplit.Diagnosis.Evidence;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Evidence;

/// <summary>The fast joint likelihood against brute force: every set of slips, each marginal by Gaussian elimination.</summary>
public sealed class JointLikelihoodTests
{
    private const double Spread = 0.03;

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
                var reads = c.Values.Select(v => new NumberRead(v, Step, Broad, Spread)).ToArray();
                var forecasts = c.Means.Select((m, i) => new Forecast { Mean = m, OwnVariance = c.Own[i], Slopes = c.Slopes[i] }).ToArray();
                var fast = new JointLikelihood().Log(reads, forecasts);

                var slow = BruteForce(reads, forecasts, Step);

                Assert.Equal(slow, fast, 1e-6 * Math.Max(1, Math.Abs(slow)));
            },
            iter: 300);
    }

    [Fact]
    public void A_reading_taken_again_may_repeat_its_slip_once_for_all()
    {
        Cases.Where(c => c.Values.Length >= 4).Sample(
            c =>
            {
                const double Step = 0.01;
                var reads = c.Values.Select((v, i) => new NumberRead(v, Step, -6.5, Spread, i < 2 ? 0 : i)).ToArray();
                var forecasts = c.Means.Select((m, i) => new Forecast { Mean = m, OwnVariance = c.Own[i], Slopes = c.Slopes[i] }).ToArray();

                Assert.Equal(BruteForce(reads, forecasts, Step), new JointLikelihood().Log(reads, forecasts), 1e-4);
            },
            iter: 100);
    }

    [Fact]
    public void The_shares_of_slips_are_those_of_the_sum()
    {
        Cases.Sample(
            c =>
            {
                const double Step = 0.01;
                var reads = c.Values.Select((v, i) => new NumberRead(v, Step, -6.5, Spread, i / 3)).ToArray();
                var forecasts = c.Means.Select((m, i) => new Forecast { Mean = m, OwnVariance = c.Own[i], Slopes = c.Slopes[i] }).ToArray();
                var joint = new JointLikelihood();
                joint.Log(reads, forecasts);
                var shares = new double[reads.Length];
                joint.SlipShares(reads, shares);

                Assert.All(shares, s => Assert.InRange(s, 0, 1 + 1e-9));
                for (var i = 0; i < shares.Length; i++)
                {
                    // A reading far from its mean in a world of its own can hardly be anything else.
                    if (reads.Length == 1)
                    {
                        var slip = Math.Log(JointLikelihood.SlipOdds) + Slips.Log(reads[0], forecasts[0]);
                        Assert.Equal(Math.Exp(slip - joint.Log(reads, forecasts)), shares[0], 1e-9);
                    }
                }
            },
            iter: 200);
    }

    [Fact]
    public void The_same_wrong_pin_many_times_over_is_no_more_certain_than_a_few_times()
    {
        var forecast = new Forecast { Mean = 12.4, OwnVariance = 0.001, Slopes = [0.05] };
        double Doubt(int times)
        {
            var reads = Enumerable.Range(0, times).Select(_ => new NumberRead(3.7, 0.01, -6.5, Spread, 0)).ToArray();
            var joint = new JointLikelihood();
            var forecasts = Enumerable.Repeat(forecast, times).ToArray();
            return joint.Log(reads, forecasts);
        }

        // Each repeat of a wrong pin costs what a repeat that agrees with itself costs, not another slip.
        Assert.InRange(Doubt(5) - Doubt(4), -6, 0);
        Assert.InRange(Doubt(2) - Doubt(1), -6, 0);
    }

    /// <summary>
    /// Once something else was read, what the car shows was read twice: the second time must speak for it, about as much as a slip
    /// seldom repeats itself.
    /// </summary>
    [Theory]
    [InlineData(12.39, 0.094, 0.19, 0.0025)]
    [InlineData(0.05, 0.5, 0.03, 0.016)]
    [InlineData(4, 12.4, 0.06, 0.0003)]
    public void A_right_reading_taken_again_speaks_for_itself(double shown, double wrong, double spread, double broad)
    {
        double LogOf(double predicted, int times)
        {
            NumberRead[] reads =
                [new(wrong, 0.01, Math.Log(broad), spread, 0), .. Enumerable.Repeat(new NumberRead(shown, 0.01, Math.Log(broad), spread, 0), times)];
            var forecast = new Forecast { Mean = predicted, OwnVariance = spread * spread, Slopes = [0.01] };
            return new JointLikelihood().Log(reads, [.. reads.Select(_ => forecast)]);
        }

        double For(int times) => LogOf(shown, times) - LogOf(wrong, times);

        Assert.InRange(For(2) - For(1), 0.5 * Math.Log(1 / Slips.AgainShare), 2 * Math.Log(1 / Slips.AgainShare));
    }

    /// <summary>A clamp shows amps without their sign: 0.24 A off, it shows 0.28 A of 0.04 A that run one way, 0.20 A of as many that run the other.</summary>
    [Theory]
    [InlineData(0.24)]
    [InlineData(-0.24)]
    public void A_clamp_that_is_off_shows_few_amps_turned(double off)
    {
        double[] amps = [0.04, -0.04, 1e-9, -1e-9, 0.2, -0.1];
        double LogOf(Func<double, double> shown)
        {
            var reads = amps.Select(a => new NumberRead(shown(a), 0.01, -6.5, Spread)).ToArray();
            var forecasts = amps.Select(a => Clamp(a)).ToArray();
            return new JointLikelihood().Log(reads, forecasts);
        }

        var (turned, asTheyRun) = (LogOf(a => Math.Abs(a + off)), LogOf(a => Math.Abs(a) + Math.Abs(off)));

        Assert.True(turned > asTheyRun + 3, $"{turned}, {asTheyRun}");

        static Forecast Clamp(double amps)
        {
            var zero = amps < 0 ? -0.1 : 0.1;
            return new Forecast { Mean = Math.Abs(amps), OwnVariance = 0.0009, Slopes = [zero], Zero = zero };
        }
    }

    private static double BruteForce(NumberRead[] reads, Forecast[] forecasts, double step)
    {
        var n = reads.Length;
        var total = double.NegativeInfinity;
        for (var set = 0; set < 1 << n; set++)
        {
            var slips = System.Numerics.BitOperations.PopCount((uint)set);
            if (slips > 2)
            {
                continue;
            }

            var kept = Enumerable.Range(0, n).Where(i => (set & (1 << i)) == 0).ToArray();
            int[] gone = [.. Enumerable.Range(0, n).Except(kept)];
            var prior = gone.Sum(i => Math.Log(JointLikelihood.SlipOdds) + Slips.Log(reads[i], forecasts[i]))
                + (kept.Length * Math.Log(1 - JointLikelihood.SlipOdds));
            if (gone is [var one, var two] && reads[one].Pin >= 0 && reads[one].Pin == reads[two].Pin)
            {
                prior = JointLikelihood.LogAdd(prior, Math.Log(JointLikelihood.SlipOdds) + ((n - 1) * Math.Log(1 - JointLikelihood.SlipOdds))
                    + Slips.Log(reads[one], forecasts[one]) + Slips.LogAgain(reads[one], reads[two]));
            }

            var log = prior + LogNormal([.. reads.Select(r => r.Value)], forecasts, kept, step);
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
