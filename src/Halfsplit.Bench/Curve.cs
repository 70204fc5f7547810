using System.Collections.Immutable;

namespace Halfsplit.Bench;

/// <summary>A published table read between its rows: straight lines, and held beyond both ends.</summary>
internal sealed class Curve(IEnumerable<(double X, double Y)> points)
{
    private readonly ImmutableArray<(double X, double Y)> _points = [.. points.OrderBy(p => p.X)];

    public double At(double x)
    {
        if (x <= _points[0].X)
        {
            return _points[0].Y;
        }

        for (var i = 1; i < _points.Length; i++)
        {
            var (low, high) = (_points[i - 1], _points[i]);
            if (x <= high.X)
            {
                // The rows themselves come back exactly.
                return x == high.X ? high.Y : low.Y + ((high.Y - low.Y) * (x - low.X) / (high.X - low.X));
            }
        }

        return _points[^1].Y;
    }
}
