using System.Collections.Immutable;
using Halfsplit.Diagnosis.Evidence;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>The outcomes of a measurement that are worth telling apart: words, OL, and the stretches between expected numbers.</summary>
internal sealed class PinOutcomes
{
    /// <summary>Expected numbers nearer to each other, in spreads, share a stretch.</summary>
    private const double Apart = 2;

    private readonly ImmutableArray<PinWord> _words;
    private readonly ImmutableArray<double> _cuts;
    private readonly bool _hasNumbers;

    public PinOutcomes(IEnumerable<PinExpectation> expectations)
    {
        var all = expectations.Distinct().ToList();
        _words = [.. all.OfType<PinExpectation.OneOf>().SelectMany(o => new[] { o.Word, o.Otherwise }).Distinct().Order()];
        _hasNumbers = _words.Length == 0;
        var near = all.OfType<PinExpectation.Near>().OrderBy(n => n.Mean).ToList();
        var cuts = ImmutableArray.CreateBuilder<double>();
        for (var i = 1; i < near.Count; i++)
        {
            var spread = near[i - 1].Spread + near[i].Spread;
            if (near[i].Mean - near[i - 1].Mean > Apart * spread / 2)
            {
                cuts.Add(near[i - 1].Mean + ((near[i].Mean - near[i - 1].Mean) * near[i - 1].Spread / spread));
            }
        }

        _cuts = cuts.ToImmutable();
    }

    /// <summary>Words, or OL and the stretches.</summary>
    public int Count => _hasNumbers ? _cuts.Length + 2 : _words.Length;

    /// <summary>How likely each outcome is, slips included.</summary>
    public double[] Shares(PinExpectation expectation)
    {
        var shares = new double[Count];
        var slip = ReferenceEquals(expectation, PinExpectation.Anything) ? 1 : PinLikelihood.Slip;
        for (var i = 0; i < shares.Length; i++)
        {
            shares[i] = (slip / shares.Length) + ((1 - slip) * Meant(expectation, i));
        }

        return shares;
    }

    /// <summary>The outcome that is meant when nothing slips; −1 where there is none.</summary>
    public int Usual(PinExpectation expectation) => ReferenceEquals(expectation, PinExpectation.Anything)
        ? -1
        : Enumerable.Range(0, Count).MaxBy(i => Meant(expectation, i));

    private double Meant(PinExpectation expectation, int outcome) => expectation switch
    {
        PinExpectation.OneOf one => _words[outcome] == one.Word ? one.Share : _words[outcome] == one.Otherwise ? 1 - one.Share : 0,
        // The last outcome is OL.
        PinExpectation.Near near => outcome == _cuts.Length + 1 ? 0 : Below(near, outcome) - Below(near, outcome - 1),
        _ => outcome == Count - 1 && _hasNumbers ? 1 : 0,
    };

    private double Below(PinExpectation.Near near, int stretch) =>
        stretch < 0 ? 0 : stretch >= _cuts.Length ? 1 : Normal.Below((_cuts[stretch] - near.Mean) / near.Spread);
}
