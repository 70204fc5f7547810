namespace Halfsplit.Diagnosis.Evidence;

/// <content>What a clamp shows of amps so few that its zero turns them.</content>
internal sealed partial class JointLikelihood
{
    /// <summary>
    /// A clamp shows amps without their sign, so where few run its zero says which way they seem to run: each as it does, or all of them
    /// this way, or all of them that, whichever explains the readings best.
    /// </summary>
    private void Turn(ReadOnlySpan<NumberRead> readings, ReadOnlySpan<Forecast> forecasts)
    {
        var few = 0;
        foreach (var forecast in forecasts)
        {
            few += IsFew(forecast) ? 1 : 0;
        }

        // One reading alone is likeliest the way it runs, and readings of many amps say next to nothing of the zero.
        if (few < 2)
        {
            return;
        }

        var n = readings.Length;
        var best = 0;
        for (var way = -1; way <= 1; way += 2)
        {
            TurnTo(way, readings, forecasts);
            var quadratic = Weigh(n);
            if (quadratic < _quadratic)
            {
                (best, _quadratic) = (way, quadratic);
            }
        }

        if (best != 1)
        {
            TurnTo(best, readings, forecasts);
            Weigh(n);
        }
    }

    /// <param name="way">1 along the wires, −1 against them, 0 each as its amps run.</param>
    private void TurnTo(int way, ReadOnlySpan<NumberRead> readings, ReadOnlySpan<Forecast> forecasts)
    {
        for (var i = 0; i < readings.Length; i++)
        {
            if (IsFew(forecasts[i]))
            {
                var sign = way == 0 ? 1 : way * Math.Sign(forecasts[i].Zero);
                _residual[i] = (sign * readings[i].Value) - forecasts[i].Mean;
            }
        }
    }

    /// <summary>Few enough amps that a clamp's zero may turn them.</summary>
    private static bool IsFew(Forecast forecast) => forecast.Zero != 0 && forecast.Mean < 4 * Math.Abs(forecast.Zero);
}
