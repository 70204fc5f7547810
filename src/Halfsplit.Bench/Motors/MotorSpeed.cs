namespace Halfsplit.Bench.Motors;

/// <summary>How fast a motor turns, from the lines of its spectrum.</summary>
/// <param name="Turns">A second; null where nothing tells.</param>
/// <param name="RippleHertz">Null where there is no ripple above the noise.</param>
internal sealed record MotorSpeed(double? Turns, int? RipplesPerTurn, double? RippleHertz)
{
    private static readonly double SlowestRpm = BenchDefaults.Table["motor.search-slowest-rpm"], FastestRpm = BenchDefaults.Table["motor.search-fastest-rpm"];

    /// <summary>A line is more than noise above so many times the median line.</summary>
    private static readonly double AboveFloor = BenchDefaults.Table["motor.above-floor"];

    /// <summary>The ripple's own line counts for so many of the others.</summary>
    private static readonly double RippleWeight = BenchDefaults.Table["motor.ripple-weight"];

    private const int Candidates = 12;

    private static readonly int[] Multiples = [2, 3];

    /// <summary>A faster motor must explain so much of what the slower one does.</summary>
    private static readonly double LeastOfScore = BenchDefaults.Table["motor.least-of-score"];

    /// <summary>A line below this share of the strongest is not there.</summary>
    private static readonly double Missing = BenchDefaults.Table["motor.missing-line"];

    private static readonly int FewestBars = (int)BenchDefaults.Table.RangeOf("motor.usual-bars").Low, MostBars = (int)BenchDefaults.Table.RangeOf("motor.usual-bars").High;

    /// <summary>The best number of ripples must lead the next by so much, or the number is left open.</summary>
    private static readonly double ClearLead = BenchDefaults.Table["motor.clear-lead"];

    /// <summary>What a line must bring, as the logarithm of its strength over the floor: five times as high as noise.</summary>
    private static readonly double WorthALine = BenchDefaults.Table["motor.worth-a-line"];

    /// <param name="bars">Null to look for a pattern that repeats.</param>
    public static MotorSpeed Of(MotorSpectrum spectrum, int? bars, double seconds)
    {
        var peaks = spectrum.Peaks(SlowestRpm / 60, spectrum.HighestHertz / 1.05, Candidates).Where(p => p.Amps > AboveFloor * spectrum.Floor).ToList();
        if (peaks.Count == 0)
        {
            return new MotorSpeed(null, null, null);
        }

        var within = 1 / seconds;
        return bars is { } known
            ? OfBars(spectrum, peaks, Commutator.RipplesPerTurn(known), within)
            : OfPattern(spectrum, peaks[0].Hertz, within);
    }

    /// <summary>The speed whose multiples hold most of the strength; the ripple's own counts for more.</summary>
    private static MotorSpeed OfBars(MotorSpectrum spectrum, List<(double Hertz, double Amps)> peaks, int ripples, double within)
    {
        var (best, most) = (0.0, 0.0);
        foreach (var (hertz, _) in peaks)
        {
            for (var k = 1; k <= 2 * ripples; k++)
            {
                var turns = hertz / k;
                if (!IsPlausible(turns) || turns * ripples > spectrum.HighestHertz)
                {
                    continue;
                }

                var score = Score(spectrum, turns, ripples, within);
                if (score > most * (1 + 1e-9))
                {
                    (best, most) = (turns, score);
                }
            }
        }

        if (most == 0)
        {
            return new MotorSpeed(null, null, null);
        }

        foreach (var times in Multiples)
        {
            best = IsMultiple(spectrum, best, times, ripples, within, most) ? best * times : best;
        }

        // The ripple's own line, many times the speed, gives it many times as exactly.
        var ripple = spectrum.Peaks((best * ripples) - within, (best * ripples) + within, 1).Select(p => (double?)p.Hertz).FirstOrDefault() ?? best * ripples;
        return new MotorSpeed(ripple / ripples, ripples, ripple);
    }

    /// <summary>No small motor turns slower or faster.</summary>
    internal static bool IsPlausible(double turns) => turns * 60 >= SlowestRpm && turns * 60 <= FastestRpm;

    /// <summary>
    /// True if only every second or third line is there: then the motor turns twice or three times as fast. Not where a ripple stands out
    /// of its neighbours at the slower speed: a bad bar passes two brushes in a turn, and leaves only every second line as well.
    /// </summary>
    private static bool IsMultiple(MotorSpectrum spectrum, double turns, int times, int ripples, double within, double score)
    {
        if (turns * times * 60 > FastestRpm || turns * times * ripples > spectrum.HighestHertz
            || Score(spectrum, turns * times, ripples, within) < LeastOfScore * score
            || StandsOut(turns * ripples) > StandsOut(turns * times * ripples))
        {
            return false;
        }

        var lines = Enumerable.Range(1, 2 * ripples).Select(k => (Between: k % times != 0, Size: spectrum.Near(k * turns, within / 2))).ToList();
        return lines.Where(l => l.Between).Max(l => l.Size) < Missing * lines.Max(l => l.Size);

        double StandsOut(double hertz) =>
            spectrum.Near(hertz, within / 2) - ((spectrum.Near(hertz - (times * turns), within / 2) + spectrum.Near(hertz + (times * turns), within / 2)) / 2);
    }

    private static double Score(MotorSpectrum spectrum, double turns, int ripples, double within)
    {
        var score = 0.0;
        for (var k = 1; k <= 2 * ripples && k * turns < spectrum.HighestHertz; k++)
        {
            var size = spectrum.Near(k * turns, within / 2);
            var power = Math.Max(0, (size * size) - (AboveFloor * AboveFloor * spectrum.Floor * spectrum.Floor));
            score += k == ripples ? RippleWeight * power : power;
        }

        return score;
    }

    /// <summary>The strongest line is the ripple; the number of ripples in a turn is the one at whose part other lines stand.</summary>
    private static MotorSpeed OfPattern(MotorSpectrum spectrum, double ripple, double within)
    {
        var (best, most, second) = (0, 0.0, 0.0);
        // Arcing is louder at low frequencies: what is noise is judged near the ripple.
        var floor = spectrum.FloorBetween(ripple / 4, 2 * ripple);
        foreach (var ripples in Enumerable.Range(FewestBars, MostBars - FewestBars + 1).Select(Commutator.RipplesPerTurn).Distinct().Order())
        {
            var gain = 0.0;
            for (var k = 1; k < ripples; k++)
            {
                var over = spectrum.Near(ripple * k / ripples, within / 2) / floor;
                gain += Math.Log(1 + (over * over / 4)) - WorthALine;
            }

            if (gain > most && IsPlausible(ripple / ripples))
            {
                (best, most, second) = (ripples, gain, most);
            }
            else
            {
                second = Math.Max(second, gain);
            }
        }

        return best == 0 || most - second < ClearLead ? new MotorSpeed(null, null, ripple) : new MotorSpeed(ripple / best, best, ripple);
    }
}
