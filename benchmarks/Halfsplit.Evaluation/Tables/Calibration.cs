using System.Collections.Immutable;
using Halfsplit.Evaluation.Play;

namespace Halfsplit.Evaluation.Tables;

/// <summary>How well stated odds agree with what came true.</summary>
/// <param name="Bins">Lower edge, count, mean of the odds stated, share that came true.</param>
/// <param name="ExpectedError">Expected calibration error: mean distance between odds and share, weighted by count.</param>
/// <param name="Brier">Mean square of odds minus outcome.</param>
public sealed record Calibration(
    ImmutableArray<(double From, int Count, double Stated, double Hit)> Bins, double ExpectedError, double Brier, int Count)
{
    private static readonly ImmutableArray<double> Edges = [0, 0.01, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99];

    public static Calibration Of(IReadOnlyCollection<Stated> stated)
    {
        ArgumentNullException.ThrowIfNull(stated);
        var bins = ImmutableArray.CreateBuilder<(double, int, double, double)>();
        var error = 0.0;
        for (var i = 0; i < Edges.Length; i++)
        {
            var to = i + 1 < Edges.Length ? Edges[i + 1] : double.PositiveInfinity;
            var here = stated.Where(s => s.Odds >= Edges[i] && s.Odds < to).ToList();
            if (here.Count == 0)
            {
                continue;
            }

            var odds = here.Average(s => s.Odds);
            var hit = here.Average(s => s.Hit ? 1.0 : 0);
            bins.Add((Edges[i], here.Count, odds, hit));
            error += here.Count * Math.Abs(odds - hit) / stated.Count;
        }

        var brier = stated.Count == 0 ? 0 : stated.Average(s => (s.Odds - (s.Hit ? 1 : 0)) * (s.Odds - (s.Hit ? 1 : 0)));
        return new Calibration(bins.ToImmutable(), error, brier, stated.Count);
    }
}
