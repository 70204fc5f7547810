using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>A box with named pins at its top and bottom: a module, an alternator, a starter, a sensor with three wires.</summary>
internal sealed class PinBox : PartBox
{
    private const double LeastPitch = 62, PinRows = 30;

    public PinBox(Part part, Func<string, Side> sideOf)
        : base(part)
    {
        foreach (var terminal in part.Terminals)
        {
            var side = sideOf(terminal);
            (side == Side.Top ? Top : Bottom).Add(new Port(this, side, terminal));
        }
    }

    public override bool HasFreePorts => true;

    protected override double WidthOfNames => 130;

    public override void Arrange()
    {
        var (width, height) = ArrangeTexts();
        var wide = Math.Max(PutInRow(Top), Math.Max(PutInRow(Bottom), width + 24));
        TextX = 12;
        TextY = Strip + PinRows - 12;
        Height = Math.Ceiling(height + (2 * (Strip + PinRows)) - 20);
        Width = Math.Ceiling(wide);
    }

    private static double PutInRow(List<Port> ports)
    {
        var x = 0.0;
        foreach (var port in ports)
        {
            var room = Math.Max(LeastPitch, TextMeasure.Width(port.Terminal!, TextMeasure.Small) + 12);
            port.Offset = Math.Round(x + Math.Min(room / 2, 34));
            x += room;
        }

        return x;
    }

    public override void Draw(Pen pen)
    {
        pen.Rect("hs-body hs-module", 0, Strip, Width, Height - (2 * Strip));
        if (Part is Starter or Alternator)
        {
            pen.Circle("hs-body", Width - 20, Height / 2, 13);
            pen.Text("hs-letter hs-middle", Width - 20, (Height / 2) + 4.5, Part is Starter ? "M" : "G");
        }

        foreach (var port in Ports)
        {
            var isTop = port.Side == Side.Top;
            pen.Wire(pen.Shown.FlowAt(port), port.Offset, isTop ? 0 : Height, port.Offset, isTop ? Strip : Height - Strip);
            var isDriving = Part is Module && pen.Shown.IsDriving(Part.Id, port.Terminal!);
            pen.Text(
                isDriving ? "hs-number hs-middle hs-driving" : "hs-number hs-middle",
                port.Offset, isTop ? Strip + 11 : Height - Strip - 5, port.Terminal!);
            if (isDriving)
            {
                pen.Circle("hs-driving-dot", port.Offset, isTop ? Strip : Height - Strip, 3.4);
            }

            DrawTerminal(pen, port, hasNumber: false);
        }

        DrawTexts(pen);
    }
}
