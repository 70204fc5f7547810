namespace Halfsplit.Bench.Motors;

/// <summary>How fast a motor turns, from the lines of its spectrum.</summary>
/// <param name="Turns">A second; null where nothing tells.</param>
/// <param name="RippleHertz">Null where there is no ripple above the noise.</param>
internal sealed record MotorSpeed(double? Turns, int? RipplesPerTurn, double? RippleHertz)
{
    private const double SlowestRpm = 500, FastestRpm = 15_000;

    /// <summary>A line is more than noise above so many times the median line.</summary>
    private const double AboveFloor = 6;

    /// <summary>The ripple's own line counts for so many of the others.</summary>
    private const double RippleWeight = 3;

    private const int Candidates = 12;

    private static readonly int[] Multiples = [2, 3];

    /// <summary>A faster motor must explain so much of what the slower one does.</summary>
    private const double LeastOfScore = 0.5;

    /// <summary>A line below this share of the strongest is not there.</summary>
    private const double Missing = 0.08;

    private const int FewestBars = 5, MostBars = 12;

    /// <summary>The best number of ripples must lead the next by so much, or the number is left open.</summary>
    private const double ClearLead = 3;

    /// <summary>What a line must bring, as the logarithm of its strength over the floor: five times as high as noise.</summary>
    private const double WorthALine = 2;

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
                if (turns * 60 is < SlowestRpm or > FastestRpm || turns * ripples > spectrum.HighestHertz)
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

    /// <summary>True if only every second or third line is there: then the motor turns twice or three times as fast.</summary>
    private static bool IsMultiple(MotorSpectrum spectrum, double turns, int times, int ripples, double within, double score)
    {
        if (turns * times * 60 > FastestRpm || turns * times * ripples > spectrum.HighestHertz
            || Score(spectrum, turns * times, ripples, within) < LeastOfScore * score)
        {
            return false;
        }

        var lines = Enumerable.Range(1, 2 * ripples).Select(k => (Between: k % times != 0, Size: spectrum.Near(k * turns, within / 2))).ToList();
        return lines.Where(l => l.Between).Max(l => l.Size) < Missing * lines.Max(l => l.Size);
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

            if (gain > most && ripple / ripples * 60 is >= SlowestRpm and <= FastestRpm)
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
