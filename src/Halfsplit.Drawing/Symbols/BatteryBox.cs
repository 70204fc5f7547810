using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>The battery on its side, both posts downwards: the long plate is the positive one.</summary>
internal sealed class BatteryBox : PartBox
{
    private const double PlatesY = 17, Between = 60;

    public BatteryBox(Battery battery)
        : base(battery)
    {
        Bottom.Add(new Port(this, Side.Bottom, "neg"));
        Bottom.Add(new Port(this, Side.Bottom, "pos"));
    }

    public override bool CanMirror => true;

    public override void Arrange()
    {
        var (width, height) = ArrangeTexts();
        var left = NumberRoom("neg");
        Bottom[IsMirrored ? 1 : 0].Offset = left;
        Bottom[IsMirrored ? 0 : 1].Offset = left + Between + 12;
        TextX = left + Between + 26;
        TextY = 0;
        Height = Math.Ceiling(Math.Max(height + Strip + 4, PlatesY + 38));
        Width = Math.Ceiling(TextX + Math.Max(width, VoltsRoom));
    }

    public override void Draw(Pen pen)
    {
        var (neg, pos) = (Bottom[0].Offset, Bottom[1].Offset);
        var (middle, toPos) = ((neg + pos) / 2, Math.Sign(pos - neg));
        var flow = pen.Shown.FlowAt(Bottom[1]);
        pen.Wire(flow, (neg, Height), (neg, PlatesY), (middle - (9 * toPos), PlatesY));
        pen.Wire(flow, (pos, Height), (pos, PlatesY), (middle + (9 * toPos), PlatesY));
        for (var cell = -1; cell <= 1; cell += 2)
        {
            var at = middle + (cell * 5 * toPos);
            pen.Line("hs-plate", at + (2.5 * toPos), PlatesY - 12, at + (2.5 * toPos), PlatesY + 12);
            pen.Line("hs-plate hs-thick", at - (2.5 * toPos), PlatesY - 6, at - (2.5 * toPos), PlatesY + 6);
        }

        pen.Text("hs-letter hs-middle", middle + (18 * toPos), PlatesY - 4, "+");
        pen.Text("hs-letter hs-middle", middle - (18 * toPos), PlatesY - 4, "−");
        DrawTerminal(pen, Bottom[0]);
        DrawTerminal(pen, Bottom[1]);
        DrawTexts(pen);
    }
}
