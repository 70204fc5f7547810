namespace Halfsplit.Drawing.Schematic;

/// <summary>Which edge of a box: wires enter at the top and leave at the bottom.</summary>
internal enum Side
{
    Top,
    Bottom,
}

/// <summary>
/// Something that takes room on the page: a symbol with its texts, a wire's label, or a wire on its way past a row.
/// Made once per layout and filled in by the steps of the layout in turn.
/// </summary>
internal abstract class Box
{
    /// <summary>Room at the left for the marks of a place's frame.</summary>
    public double FramePad { get; set; }

    public List<Port> Top { get; } = [];

    public List<Port> Bottom { get; } = [];

    /// <summary>Position among all boxes in the order of the sheet; ties break by it.</summary>
    public int Order { get; set; }

    public int Row { get; set; }

    /// <summary>Position in the row, from the left.</summary>
    public int Column { get; set; }

    /// <summary>Left edge, pixels.</summary>
    public double X { get; set; }

    /// <summary>Top edge, pixels.</summary>
    public double Y { get; set; }

    public double Width { get; protected set; }

    public double Height { get; protected set; }

    /// <summary>The place it lives in; null for what has none.</summary>
    public virtual string? Place => null;

    /// <summary>The place is written on a frame round this box and its neighbours.</summary>
    public bool IsFramed { get; set; }

    /// <summary>Ports of one side may be put in any order.</summary>
    public virtual bool HasFreePorts => false;

    /// <summary>Can be drawn as in a mirror, its ports from right to left.</summary>
    public virtual bool CanMirror => false;

    public bool IsMirrored { get; set; }

    public IEnumerable<Port> Ports => Top.Concat(Bottom);

    /// <summary>Works out the size and where along its edges the ports are.</summary>
    public abstract void Arrange();
}

/// <summary>Where wires meet a box. All links of one port are joined there.</summary>
internal sealed class Port(Box box, Side side, string? terminal)
{
    public Box Box { get; } = box;

    public Side Side { get; } = side;

    /// <summary>Name of the terminal in its part; null where the box has none.</summary>
    public string? Terminal { get; } = terminal;

    /// <summary>From the box's left edge, pixels.</summary>
    public double Offset { get; set; }

    public List<Link> Links { get; } = [];

    /// <summary>A turning point: the wire goes no further than the channel before it.</summary>
    public bool IsPhantom { get; init; }

    public double X => Math.Round(Box.X + Offset);
}

/// <summary>A connection from the bottom of one box down to the top of another.</summary>
/// <param name="upper">At the bottom of the upper box.</param>
/// <param name="lower">At the top of the lower box.</param>
/// <param name="conductor">What it is in the car.</param>
/// <param name="isReversed">The conductor's first end is the lower one.</param>
internal sealed class Link(Port upper, Port lower, Conductor conductor, bool isReversed)
{
    public Port Upper { get; } = upper;

    public Port Lower { get; } = lower;

    public Conductor Conductor { get; } = conductor;

    public bool IsReversed { get; } = isReversed;

    public int Span => Lower.Box.Row - Upper.Box.Row;

    /// <summary>Joins the ports' lists.</summary>
    public Link Attach()
    {
        Upper.Links.Add(this);
        Lower.Links.Add(this);
        return this;
    }
}
