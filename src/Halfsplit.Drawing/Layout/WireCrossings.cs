namespace Halfsplit.Drawing.Layout;

/// <summary>Counts where a wire of one net runs across a wire of another.</summary>
internal static class WireCrossings
{
    public static int Count(CircuitLayout layout) => layout.Channels.Sum(Count);

    private static int Count(List<Net> nets)
    {
        var count = 0;
        foreach (var trunk in nets.Where(n => n.Track >= 0))
        {
            foreach (var other in nets.Where(n => n != trunk))
            {
                count += other.Stubs.Select(s => s.X).Distinct().Count(x =>
                    x > trunk.From && x < trunk.To && Spans(other, x, trunk));
            }
        }

        return count;
    }

    /// <summary>Whether the upright wires of a net at this x pass the trunk's level.</summary>
    private static bool Spans(Net net, double x, Net trunk)
    {
        if (net.Track < 0)
        {
            return true;
        }

        return (net.Tops.Exists(s => s.X == x && (s.Aside is null ? -1 : s.Aside.Track) < trunk.Track) && net.Track > trunk.Track)
            || (net.Bottoms.Exists(s => s.X == x && (s.Aside is null ? int.MaxValue : s.Aside.Track) > trunk.Track) && net.Track < trunk.Track);
    }
}
