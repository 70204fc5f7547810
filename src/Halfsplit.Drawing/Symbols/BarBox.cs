using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>A splice, a ground point or a piece of metal: everything that meets there is one terminal.</summary>
internal sealed class BarBox(Part part) : PartBox(part)
{
    private const double DotHeight = 26, MetalHeight = 44;

    /// <summary>Where the rail at the foot of the drawing begins and ends, from the box's left edge; null for any other bar.</summary>
    public (double From, double To)? Rail { get; set; }

    private bool IsMetal => Part is Metal;

    protected override double WidthOfNames => 84;

    /// <summary>Behind the identity and its odds.</summary>
    private double VoltsX => TextX + TextMeasure.Width(Identity, TextMeasure.Identity, bold: true) + OddsRoom;

    public Port PortAt(Side side)
    {
        var ports = side == Side.Top ? Top : Bottom;
        if (ports.Count == 0)
        {
            ports.Add(new Port(this, side, ""));
        }

        return ports[0];
    }

    public override void Arrange()
    {
        var (width, height) = ArrangeTexts();
        var axis = IsMetal ? 18 : 14;
        foreach (var port in Ports)
        {
            port.Offset = axis;
        }

        TextX = axis + (IsMetal ? 20 : 12);
        Height = Math.Ceiling(Math.Max(height + 8, IsMetal ? MetalHeight : DotHeight));
        TextY = IsMetal ? Height - height : (Height - height) / 2;
        Width = Math.Ceiling(TextX + Math.Max(width, VoltsX - TextX + VoltsRoom));
    }

    public override void Draw(Pen pen)
    {
        var axis = Ports.Select(p => p.Offset).DefaultIfEmpty(14).First();
        var middle = Rail is not null ? 0 : IsMetal ? 12 : Height / 2;
        if (Rail is null && Top.Count > 0)
        {
            pen.Wire(pen.Shown.FlowAt(Top[0]), axis, 0, axis, middle);
        }

        if (Bottom.Count > 0)
        {
            pen.Wire(pen.Shown.FlowAt(Bottom[0]), axis, middle, axis, Height);
        }

        if (Rail is { } rail)
        {
            pen.Line("hs-rail", rail.From, middle, rail.To, middle);
            Earth(pen, axis, middle);
        }
        else if (IsMetal)
        {
            pen.Line("hs-rail", axis - 14, middle, axis + 14, middle);
        }
        else if (Part is Ground)
        {
            pen.Circle("hs-ring", axis, middle, 5);
            pen.Circle("hs-dot", axis, middle, 2);
        }
        else
        {
            pen.Circle("hs-dot", axis, middle, 3.6);
        }

        DrawPoint(pen, axis, middle);
        DrawTexts(pen);
    }

    /// <summary>The one terminal, which has no number.</summary>
    private void DrawPoint(Pen pen, double axis, double middle)
    {
        var name = new TerminalName(Part.Id);
        pen.Open("hs-terminal", ("id", pen.IdOf("terminal", Part.Id)), ("data-terminal", Part.Id));
        if (pen.Shown.VoltsOf(name) is { } volts)
        {
            pen.Text("hs-volts", VoltsX, TextY + 10, volts);
        }

        pen.Circle("hs-touch", axis, middle, 10);
        pen.Close();
        pen.Marks.Add(new TerminalPoint(name, X + axis, Y + middle));
    }

    private static void Earth(Pen pen, double x, double y)
    {
        pen.Line("hs-symbol", x, y, x, y + 10);
        for (var i = 0; i < 3; i++)
        {
            pen.Line("hs-symbol", x - 11 + (4 * i), y + 10 + (5 * i), x + 11 - (4 * i), y + 10 + (5 * i));
        }
    }
}
