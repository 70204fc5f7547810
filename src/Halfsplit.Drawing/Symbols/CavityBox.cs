using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>One cavity of a connector: its two halves, the pin in the socket.</summary>
internal sealed class CavityBox : PartBox
{
    private const double SymbolHeight = 22;

    private readonly string _cavity;

    public CavityBox(Connector connector, string cavity, bool isFirst, Potentials potentials)
        : base(connector)
    {
        (_cavity, HasName) = (cavity, isFirst);
        var turned = potentials.IsBelow(new(connector.Id, cavity + "a"), new(connector.Id, cavity + "b"));
        Top.Add(new Port(this, Side.Top, cavity + (turned ? "b" : "a")));
        Bottom.Add(new Port(this, Side.Bottom, cavity + (turned ? "a" : "b")));
    }

    public override string Identity => $"{Part.Id}.{_cavity}";

    protected override bool HasName { get; }

    public override void Arrange()
    {
        var (width, height) = ArrangeTexts();
        var axis = Math.Max(NumberRoom(_cavity + "b"), 15);
        Top[0].Offset = Bottom[0].Offset = axis;
        SetBeside(axis + 15, height, SymbolHeight + 4, overlap: 1);
        Width = Math.Ceiling(Math.Max(TextX + width, axis + MarkRoom + VoltsRoom));
    }

    public override void Draw(Pen pen)
    {
        var (axis, middle) = (Top[0].Offset, Height / 2);
        var flow = pen.Shown.FlowAt(Top[0]);
        pen.Wire(flow, axis, 0, axis, middle - 5);
        pen.Wire(flow, axis, middle + 6, axis, Height);
        pen.Path("hs-open", $"M{Pen.N(pen.X + axis - 7)} {Pen.N(pen.Y + middle + 2)}a7 7 0 0 1 14 0");
        pen.Path("hs-solid", $"M{Pen.N(pen.X + axis - 2.5)} {Pen.N(pen.Y + middle - 1)}h5v9h-5z");
        DrawTerminal(pen, Top[0]);
        DrawTerminal(pen, Bottom[0]);
        DrawTexts(pen);
    }
}
