namespace Halfsplit.Bench.Motors;

/// <summary>Many turns laid over one another.</summary>
/// <param name="Profile">Amps along a turn, so many steps for each ripple.</param>
/// <param name="Dip">Amps by which the weakest hump lies below the middle one.</param>
/// <param name="Residual">Amps that do not repeat, as a spread.</param>
/// <param name="Skewness">Of what does not repeat; below 0 where the current breaks off.</param>
internal sealed record TurnFold(double[] Profile, double Dip, double Residual, double Skewness)
{
    private const int StepsPerRipple = 8;

    public static TurnFold Of(double[] amps, double samplesPerSecond, double turns, int ripples)
    {
        var steps = ripples * StepsPerRipple;
        var (sum, count) = (new double[steps], new int[steps]);
        for (var i = 0; i < amps.Length; i++)
        {
            var step = Step(i);
            sum[step] += amps[i];
            count[step]++;
        }

        var mean = amps.Average();
        var profile = sum.Select((s, i) => count[i] == 0 ? mean : s / count[i]).ToArray();
        var (squares, cubes) = (0.0, 0.0);
        for (var i = 0; i < amps.Length; i++)
        {
            var off = amps[i] - profile[Step(i)];
            (squares, cubes) = (squares + (off * off), cubes + (off * off * off));
        }

        var spread = Math.Sqrt(squares / amps.Length);
        return new TurnFold(profile, DipOf(profile, ripples), spread, spread > 0 ? cubes / amps.Length / (spread * spread * spread) : 0);

        int Step(int i) => (int)(i * turns / samplesPerSecond % 1 * steps) % steps;
    }

    /// <summary>Humps are parted where the middle one of all is lowest: a single deep dip does not shift the parting.</summary>
    private static double DipOf(double[] profile, int ripples)
    {
        var offset = Enumerable.Range(0, StepsPerRipple).MinBy(o => Enumerable.Range(0, ripples).Select(r => profile[(r * StepsPerRipple) + o]).Order().ElementAt(ripples / 2));
        var humps = Enumerable.Range(0, ripples)
            .Select(r => Enumerable.Range(0, StepsPerRipple).Average(s => profile[((r * StepsPerRipple) + offset + s) % profile.Length]))
            .Order().ToArray();
        return humps[humps.Length / 2] - humps[0];
    }
}
