using Halfsplit.Drawing.Schematic;

namespace Halfsplit.Drawing.Layout;

/// <summary>Groups the links of a channel into nets.</summary>
internal static class ChannelNets
{
    public static List<Net> Of(List<Link> links)
    {
        var netOf = new Dictionary<Port, Net>();
        var nets = new List<Net>();
        foreach (var link in links)
        {
            var net = netOf.GetValueOrDefault(link.Upper) ?? netOf.GetValueOrDefault(link.Lower);
            if (net is null)
            {
                nets.Add(net = new Net());
            }

            net.Links.Add(link);
            Take(link.Upper, net);
            Take(link.Lower, net);
        }

        foreach (var net in nets)
        {
            foreach (var link in net.Links)
            {
                Stub(net.Tops, link.Upper, link.Upper.X);
                // The rail is met wherever a wire comes down to it.
                var isRail = link.Lower.Box is Symbols.BarBox { Rail: not null };
                Stub(net.Bottoms, link.Lower, isRail ? link.Upper.X : link.Lower.X);
            }
        }

        return [.. nets.Where(n => n.Links.Count > 0)];

        void Take(Port port, Net net)
        {
            // Wires that come down to the rail stay apart: it joins them itself.
            if (port.Box is Symbols.BarBox { Rail: not null })
            {
                return;
            }

            if (!netOf.TryGetValue(port, out var other))
            {
                netOf[port] = net;
            }
            else if (other != net)
            {
                net.Links.AddRange(other.Links);
                other.Links.Clear();
                foreach (var (known, _) in netOf.Where(p => p.Value == other).ToList())
                {
                    netOf[known] = net;
                }
            }
        }

        static void Stub(List<Stub> stubs, Port port, double x)
        {
            if (!port.IsPhantom && !stubs.Exists(s => s.Port == port && s.X == x))
            {
                stubs.Add(new Stub(x, port));
            }
        }
    }
}
