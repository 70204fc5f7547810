using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>A lamp of several filaments with a common return.</summary>
internal sealed class LampBox : PartBox
{
    private const double Pitch = 80, MiddleHeight = 34;

    private readonly List<Port> _filaments;
    private readonly Port _common;

    public LampBox(Lamp lamp, Potentials potentials)
        : base(lamp)
    {
        var isTurned = lamp.Filaments.Average(f => potentials.Of(new(lamp.Id, f.Terminal))) < potentials.Of(new(lamp.Id, lamp.Common)) - 1e-4;
        _filaments = [.. lamp.Filaments.Select(f => new Port(this, isTurned ? Side.Bottom : Side.Top, f.Terminal))];
        _common = new Port(this, isTurned ? Side.Top : Side.Bottom, lamp.Common);
        (isTurned ? Bottom : Top).AddRange(_filaments);
        (isTurned ? Top : Bottom).Add(_common);
    }

    public override bool HasFreePorts => true;

    public override void Arrange()
    {
        var (width, height) = ArrangeTexts();
        var ordered = _common.Side == Side.Bottom ? Top : Bottom;
        for (var i = 0; i < ordered.Count; i++)
        {
            ordered[i].Offset = 34 + (Pitch * i);
        }

        _common.Offset = ordered[0].Offset;
        SetBeside(ordered[^1].Offset + 22, height, MiddleHeight);
        Width = Math.Ceiling(TextX + Math.Max(width, VoltsRoom));
    }

    public override void Draw(Pen pen)
    {
        var middle = Height / 2;
        var isTurned = _common.Side == Side.Top;
        var (filamentEdge, commonEdge) = isTurned ? (Height, 0.0) : (0.0, Height);
        var away = isTurned ? 1 : -1;
        var bar = middle - (17 * away);
        foreach (var port in _filaments)
        {
            var x = port.Offset;
            var flow = pen.Shown.FlowAt(port);
            pen.Wire(flow, x, filamentEdge, x, middle + (11 * away));
            pen.Circle("hs-body", x, middle, 11);
            pen.Line("hs-symbol", x - 7.8, middle - 7.8, x + 7.8, middle + 7.8);
            pen.Line("hs-symbol", x - 7.8, middle + 7.8, x + 7.8, middle - 7.8);
            pen.Wire(flow, (x, middle - (11 * away)), (x, bar), (_common.Offset, bar));
        }

        pen.Wire(pen.Shown.FlowAt(_common), _common.Offset, bar, _common.Offset, commonEdge);
        pen.Circle("hs-dot", _common.Offset, bar, 2.4);
        foreach (var port in Ports)
        {
            DrawTerminal(pen, port);
        }

        DrawTexts(pen);
    }
}
