using Halfsplit.Circuits.Model;

namespace Halfsplit.Drawing.Schematic;

/// <summary>Everything to be placed: boxes, and the links that run down from one to another without a circle.</summary>
internal sealed class Graph(Circuit circuit)
{
    public Circuit Circuit { get; } = circuit;

    public List<Box> Boxes { get; } = [];

    public List<Link> Links { get; } = [];

    public List<Conductor> Conductors { get; } = [];

    /// <summary>The metal at the foot of the drawing, if any: everything ends on it.</summary>
    public Box? Rail { get; set; }

    public T Add<T>(T box) where T : Box
    {
        box.Order = Boxes.Count;
        Boxes.Add(box);
        return box;
    }

    public void Add(Port upper, Port lower, Conductor conductor, bool isReversed) =>
        Links.Add(new Link(upper, lower, conductor, isReversed).Attach());
}
