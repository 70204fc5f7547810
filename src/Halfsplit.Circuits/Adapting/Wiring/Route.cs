using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting.Wiring;

/// <summary>What lies between two neighbouring terminals of a route: a wire, nothing, or the inside of a part.</summary>
internal sealed class Link(PathWire? wire, bool isInside)
{
    /// <summary>The wire; null where the terminals touch and inside a part.</summary>
    public PathWire? Wire { get; set; } = wire;

    public bool IsInside => isInside;
}

/// <summary>A wiring path with every terminal said; between terminal n and n + 1 lies link n.</summary>
internal sealed class Route(List<TerminalName> terminals, List<Link> links, WiringPath? written = null)
{
    public List<TerminalName> Terminals => terminals;

    public List<Link> Links => links;

    /// <summary>The path as the parent has it; null once anything in it is changed.</summary>
    public WiringPath? Written { get; set; } = written;
}

/// <summary>A link outside of parts, seen from one of its ends.</summary>
/// <param name="Here">The end it is seen from.</param>
/// <param name="There">The other end.</param>
internal sealed record LinkEnd(Route Route, Link Link, TerminalName Here, TerminalName There)
{
    /// <summary>The same link from its other end.</summary>
    public LinkEnd Turned => new(Route, Link, There, Here);
}
