using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Coverage;

/// <summary>
/// The degrees in which each suspect is compared: its likeliest, its lightest and heaviest that still cause the complaint,
/// and those as bad as the likeliest of the others.
/// </summary>
internal sealed class CarsOfSuspects
{
    /// <summary>Ohms that differ by less than this factor are as bad: half a quarter of a decade.</summary>
    private const double AsBad = 1.34;

    private readonly List<Hypothesis>[] _all;

    public CarsOfSuspects(HypothesisSpace space)
    {
        _all = [.. space.Suspects.Select(_ => new List<Hypothesis>())];
        foreach (var car in space.Hypotheses)
        {
            // Draws of the thresholds only blur what the usual ones show.
            if (!car.IsNone && (car.ThresholdFactor == 1 || _all[car.Suspect].Count == 0))
            {
                _all[car.Suspect].Add(car);
            }
        }
    }

    /// <summary>The middle one of those of the highest weight; null for "none of these".</summary>
    public Hypothesis? Likeliest(int suspect)
    {
        var cars = _all[suspect];
        if (cars.Count == 0)
        {
            return null;
        }

        var most = cars.Max(c => c.LogPrior);
        var best = cars.Where(c => c.LogPrior > most - 1e-9).ToList();
        return best[best.Count / 2];
    }

    /// <summary>The pairs of cars that stand for two suspects at their likeliest degrees.</summary>
    public IEnumerable<(Hypothesis, Hypothesis)> AtLikeliest(int a, int b)
    {
        var (carA, carB) = (Likeliest(a)!, Likeliest(b)!);
        yield return (carA, carB);
        if (AsBadAs(carA, b) is { } nearB && nearB != carB)
        {
            yield return (carA, nearB);
        }

        if (AsBadAs(carB, a) is { } nearA && nearA != carA)
        {
            yield return (nearA, carB);
        }
    }

    /// <summary>The pairs that stand for two suspects at their lightest and heaviest.</summary>
    public IEnumerable<(Hypothesis, Hypothesis)> AtWorst(int a, int b)
    {
        foreach (var carA in Ends(a))
        {
            foreach (var carB in Ends(b))
            {
                yield return (carA, carB);
            }
        }
    }

    private IEnumerable<Hypothesis> Ends(int suspect) => new[] { _all[suspect][0], _all[suspect][^1] }.Distinct();

    private Hypothesis? AsBadAs(Hypothesis car, int suspect)
    {
        if (car.Faults[^1].Severity is not { } ohms || car.Severity is null)
        {
            return null;
        }

        var near = _all[suspect].Where(c => c.Severity is not null).MinBy(c => Math.Abs(Math.Log(c.Faults[^1].Severity!.Value / ohms)));
        return near is not null && Math.Abs(Math.Log(near.Faults[^1].Severity!.Value / ohms)) < Math.Log(AsBad) ? near : null;
    }
}
