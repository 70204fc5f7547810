using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Coverage;

/// <summary>Two cars of different suspects that no check so far tells apart.</summary>
/// <param name="A">Index of the first suspect.</param>
/// <param name="B">Index of the second suspect.</param>
/// <param name="IsLikeliest">They stand for the likeliest degrees.</param>
internal readonly record struct CarPair(int A, int B, Hypothesis CarA, Hypothesis CarB, bool IsLikeliest);

/// <summary>The pairs that are left, fewer with every check: only cars that are still in one are simulated on.</summary>
internal sealed class PairsLeft(Forecaster forecaster, List<CarPair> pairs)
{
    /// <summary>A quick look must come so near before it is worth a full one.</summary>
    private const double Promising = 0.5;

    private readonly Screening _screening = new(forecaster);
    private readonly Dictionary<int, Outlook> _looks = [];

    public List<CarPair> Left { get; private set; } = pairs;

    /// <summary>Looks with the meter's own load: dearer, and only needed for what the quick look left.</summary>
    public bool IsCareful { get; set; }

    /// <summary>Takes out what a check tells apart.</summary>
    /// <param name="isSafe">Asked only of a check that tells a pair apart.</param>
    public void Apply(Check check, Func<Check, CarPair, bool> isSafe)
    {
        _looks.Clear();
        List<CarPair>? kept = null;
        for (var i = 0; i < Left.Count; i++)
        {
            if (Parts(check, Left[i]) && isSafe(check, Left[i]))
            {
                kept ??= Left[..i];
            }
            else
            {
                kept?.Add(Left[i]);
            }
        }

        Left = kept ?? Left;
    }

    /// <summary>True where a check tells any of these apart.</summary>
    /// <param name="isSafe">Asked only of a check that tells a pair apart.</param>
    public bool PartsAny(Check check, IEnumerable<CarPair> some, Func<Check, CarPair, bool> isSafe)
    {
        _looks.Clear();
        return some.Any(pair => Parts(check, pair) && isSafe(check, pair));
    }

    private bool Parts(Check check, in CarPair pair) =>
        Distinction.Between(check, Look(check, pair.CarA), Look(check, pair.CarB)) >= Promising
        && Distinction.Between(check, forecaster.Of(pair.CarA, check, []), forecaster.Of(pair.CarB, check, [])) >= Distinction.Apart;

    private Outlook Quick(Check check, Hypothesis car)
    {
        var one = new Outlook[1];
        _screening.Look(check, [car], [], one);
        return one[0];
    }

    private Outlook Look(Check check, Hypothesis car)
    {
        if (!_looks.TryGetValue(car.Index, out var look))
        {
            _looks[car.Index] = look = IsCareful
                ? CarefulLook.Of(forecaster, _screening, check, car, [])
                : Quick(check, car);
        }

        return look;
    }
}
