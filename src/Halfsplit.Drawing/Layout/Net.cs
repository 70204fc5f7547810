using Halfsplit.Drawing.Schematic;

namespace Halfsplit.Drawing.Layout;

/// <summary>
/// Wires of one channel that are joined at their ends: stubs from the row above and the row below, and one level line, the
/// trunk, that joins them unless one stub runs straight into the other.
/// </summary>
internal sealed class Net
{
    /// <summary>Stubs up to the row above.</summary>
    public List<Stub> Tops { get; } = [];

    /// <summary>Stubs down to the row below.</summary>
    public List<Stub> Bottoms { get; } = [];

    public List<Link> Links { get; } = [];

    /// <summary>Which level line, counted from the top of the channel; −1 where none is needed.</summary>
    public int Track { get; set; } = -1;

    public IEnumerable<Stub> Stubs => Tops.Concat(Bottoms);

    public double From => Stubs.Min(s => s.X);

    public double To => Stubs.Max(s => s.X);

    public bool HasTrunk => To - From > 0.5;
}

/// <summary>An upright piece of wire at one end of a net.</summary>
/// <param name="X">Pixels.</param>
/// <param name="Port">Where it ends; null where it ends on another net's trunk to step aside.</param>
/// <param name="Aside">The net that it steps over to.</param>
internal sealed record Stub(double X, Port? Port, Net? Aside = null);
