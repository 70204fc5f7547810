using System.Collections.Immutable;

namespace Halfsplit.Circuits.Data;

/// <summary>A published table read between its rows: straight lines; beyond both ends held, or drawn on.</summary>
/// <param name="points">Two at least, in any order.</param>
/// <param name="drawnOn">Beyond its ends the last stretch goes on.</param>
public sealed class TableCurve(IEnumerable<(double X, double Y)> points, bool drawnOn = false)
{
    private readonly ImmutableArray<(double X, double Y)> _points = [.. points.OrderBy(p => p.X)];

    public double At(double x)
    {
        if (!drawnOn)
        {
            x = Math.Clamp(x, _points[0].X, _points[^1].X);
        }

        var i = 1;
        while (i < _points.Length - 1 && _points[i].X < x)
        {
            i++;
        }

        var (low, high) = (_points[i - 1], _points[i]);
        // The rows themselves come back exactly.
        return x == high.X ? high.Y : low.Y + ((high.Y - low.Y) * (x - low.X) / (high.X - low.X));
    }
}
