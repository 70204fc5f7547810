using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Wires;

/// <summary>Which fuse a wire and its load go with.</summary>
public static class WireFuse
{
    private static readonly ImmutableArray<double> Ratings =
        [.. FuseTable.Ratings(FuseType.BladeStandard).Concat(FuseTable.Ratings(FuseType.BladeMaxi)).Concat(FuseTable.Ratings(FuseType.Link)).Distinct().Order()];

    /// <summary>The smallest rating sold that carries the load day in, day out.</summary>
    public static double? ForLoad(double amps) =>
        Ratings.Where(r => r * BenchDefaults.Table["fuse.continuous-share"] >= amps - 1e-9).Select(r => (double?)r).FirstOrDefault();

    /// <summary>The largest rating sold that protects a wire bearing so many amps; null if even the smallest is too large.</summary>
    public static double? ForWire(double bearableAmps) =>
        Ratings.Where(r => r <= bearableAmps + 1e-9).Select(r => (double?)r).LastOrDefault();
}
