using Halfsplit.Drawing.Layout;
using Halfsplit.Drawing.Schematic;

namespace Halfsplit.Drawing.Svg;

/// <summary>Draws the wires between the symbols, as thick as their amps.</summary>
internal static class Wiring
{
    public static void Draw(CircuitLayout layout, Pen pen)
    {
        pen.MoveTo(0, 0);
        for (var channel = 0; channel < layout.Channels.Count; channel++)
        {
            foreach (var net in layout.Channels[channel])
            {
                var conductors = net.Links.Select(l => l.Conductor).Distinct().ToList();
                if (conductors is [{ Wire: { } wire }])
                {
                    pen.Open("hs-conductor", ("data-wire", wire.Id));
                }
                else
                {
                    pen.Open("hs-joint");
                }

                Draw(layout, channel, net, pen);
                pen.Close();
            }
        }
    }

    private static void Draw(CircuitLayout layout, int channel, Net net, Pen pen)
    {
        if (net.Track < 0)
        {
            var (top, bottom) = (net.Tops[0], net.Bottoms[0]);
            pen.Wire(FlowOf(net, top, pen), top.X, BottomOf(top), top.X, TopOf(bottom));
            return;
        }

        var y = layout.TrackY(channel, net.Track);
        foreach (var top in net.Tops.Where(t => t.Aside is null))
        {
            pen.Wire(FlowOf(net, top, pen), top.X, BottomOf(top), top.X, y);
        }

        foreach (var bottom in net.Bottoms)
        {
            pen.Wire(FlowOf(net, bottom, pen), bottom.X, y, bottom.X, bottom.Aside is { } aside ? layout.TrackY(channel, aside.Track) : TopOf(bottom));
        }

        Trunk(net, y, pen);
    }

    /// <summary>The level line, piece by piece, each with what flows in it; a dot where three meet.</summary>
    private static void Trunk(Net net, double y, Pen pen)
    {
        var stubs = net.Tops.Select(s => (Stub: s, Sign: 1)).Concat(net.Bottoms.Select(s => (Stub: s, Sign: -1)))
            .OrderBy(s => s.Stub.X).ToList();
        double? flow = 0;
        for (var i = 0; i < stubs.Count; i++)
        {
            flow += FlowOf(net, stubs[i].Stub, pen) * stubs[i].Sign;
            if (i + 1 < stubs.Count && stubs[i + 1].Stub.X > stubs[i].Stub.X)
            {
                pen.Wire(flow, stubs[i].Stub.X, y, stubs[i + 1].Stub.X, y);
            }
        }

        foreach (var meeting in stubs.GroupBy(s => s.Stub.X))
        {
            var isInside = meeting.Key > net.From && meeting.Key < net.To;
            if (meeting.Count() + (isInside ? 2 : 1) >= 3)
            {
                pen.Circle("hs-dot", meeting.Key, y, 2.8);
            }
        }
    }

    /// <summary>Amps down through a stub.</summary>
    private static double? FlowOf(Net net, Stub stub, Pen pen)
    {
        var port = stub.Port ?? stub.Aside!.Stubs.First(s => s.Port is not null).Port!;
        double? sum = 0;
        foreach (var link in net.Links.Concat(stub.Aside?.Links ?? []).Distinct())
        {
            if (link.Upper == port || (link.Lower == port && (stub.Port is null || Math.Abs(StubX(link, port) - stub.X) < 0.5)))
            {
                sum += pen.Shown.FlowOf(link);
            }
        }

        return pen.Shown.HasPoint ? sum : null;
    }

    private static double StubX(Link link, Port port) => port.Box is Symbols.BarBox { Rail: not null } ? link.Upper.X : port.X;

    private static double BottomOf(Stub stub) => stub.Port!.Box.Y + stub.Port.Box.Height;

    private static double TopOf(Stub stub) => stub.Port!.Box.Y;

    /// <summary>The labels of the wires, each with a sleeve in the wire's colours.</summary>
    public static void DrawLabel(LabelBox label, Pen pen)
    {
        pen.MoveTo(label.X, label.Y);
        var wire = label.Wire;
        pen.Open("hs-conductor hs-label", ("id", pen.IdOf("wire", wire.Id)), ("data-wire", wire.Id));
        pen.Title(wire.Id);
        var link = label.Top[0].Links[0];
        pen.Wire(pen.Shown.FlowOf(link), LabelBox.Axis, 0, LabelBox.Axis, label.Height);
        WireColours.Sleeve(pen, wire.Spec.Colour, LabelBox.Axis, 4, label.Height - 8);
        var y = LabelBox.FirstLine;
        foreach (var line in label.Lines)
        {
            pen.Text("hs-wire-text", LabelBox.Axis + 7, y, line.ToString(pen.Shown.Formats));
            y += LabelBox.LineHeight;
        }

        if (pen.Shown.AmpsText(link.Conductor) is { } amps)
        {
            var flow = pen.Shown.FlowOf(link) ?? 0;
            var arrow = CurrentWidth.Step(flow) == 0 ? "" : flow > 0 ? "↓" : "↑";
            pen.Text("hs-amps", LabelBox.Axis + 7, y, arrow + amps);
        }

        if (pen.Shown.OddsOf(wire.Id) is { } odds)
        {
            pen.Badge(LabelBox.Axis + 7, y + 2, odds);
        }

        pen.Close();
    }
}
