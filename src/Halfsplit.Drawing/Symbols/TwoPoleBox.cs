using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>A part with two ends, drawn in the run of its wire: fuse, resistor, motor, lamp, diode, simple switch.</summary>
internal sealed class TwoPoleBox : PartBox
{
    private const double SymbolHeight = 32, TextGap = 19;

    public TwoPoleBox(Part part, Potentials potentials)
        : base(part)
    {
        var (first, second) = (part.Terminals[0], part.Terminals[1]);
        var turned = potentials.IsBelow(new(part.Id, first), new(part.Id, second));
        Top.Add(new Port(this, Side.Top, turned ? second : first));
        Bottom.Add(new Port(this, Side.Bottom, turned ? first : second));
        IsTurned = turned;
    }

    /// <summary>The second terminal is the upper one.</summary>
    private bool IsTurned { get; }

    public override void Arrange()
    {
        var (width, height) = ArrangeTexts();
        var axis = Math.Max(NumberRoom(Top[0].Terminal!), Math.Max(NumberRoom(Bottom[0].Terminal!), 17));
        Top[0].Offset = Bottom[0].Offset = axis;
        SetBeside(axis + TextGap, height, SymbolHeight + 4, overlap: 1);
        Width = Math.Ceiling(Math.Max(TextX + width, axis + MarkRoom + VoltsRoom));
    }

    public override void Draw(Pen pen)
    {
        var (axis, middle) = (Top[0].Offset, Height / 2);
        var (from, to) = (middle - (SymbolHeight / 2), middle + (SymbolHeight / 2));
        pen.Wire(pen.Shown.FlowAt(Top[0]), axis, 0, axis, from);
        pen.Wire(pen.Shown.FlowAt(Top[0]), axis, to, axis, Height);
        TwoPoleSymbols.Draw(pen, Part, axis, from, to, IsTurned);
        DrawTerminal(pen, Top[0]);
        DrawTerminal(pen, Bottom[0]);
        DrawTexts(pen);
    }
}
