using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>One line of the wiring: items in the order of the path, joined by wires or directly.</summary>
public sealed record WiringPath(ImmutableArray<PathItem> Items);

/// <summary>An item of a wiring path.</summary>
public abstract record PathItem;

/// <summary>
/// A part or a terminal on the path. Without a terminal name the path passes through the part (fuse, connector
/// cavity named, motor); two neighbouring items of the same part pass through it from the first to the second terminal.
/// </summary>
/// <param name="Part">The part's name.</param>
/// <param name="Terminal">Terminal or cavity; null to pass through.</param>
public sealed record PathPart(string Part, string? Terminal) : PathItem;

/// <summary>A wire on the path.</summary>
/// <param name="Gauge">Cross-section.</param>
/// <param name="Length">Metres.</param>
/// <param name="LengthWritten">The length as the sheet had it, so that feet stay feet.</param>
/// <param name="Colour">Base and tracer by IEC 60757, "YE/BK"; null if unknown.</param>
/// <param name="Name">A name given in the sheet; null: named by its ends, <c>K2.87~C3.4a</c>.</param>
/// <param name="Place">Where the wire runs, for its surroundings; null if not said.</param>
/// <param name="GaugeGuessed">Nobody looked: the cross-section is a guess, and what is predicted from it spreads wider.</param>
/// <param name="LengthGuessed">The same of the length.</param>
public sealed record PathWire(
    WireGauge Gauge,
    double Length,
    string LengthWritten,
    string? Colour,
    string? Name,
    string? Place,
    bool GaugeGuessed = false,
    bool LengthGuessed = false) : PathItem;

/// <summary>A wire between two terminals: a path's wire with its ends resolved.</summary>
/// <param name="Id">Name for faults and suspects.</param>
public sealed record Wire(string Id, TerminalName From, TerminalName To, PathWire Spec);

/// <summary>Two terminals that touch directly: a bus bar, a plug on a post.</summary>
public sealed record Joint(TerminalName First, TerminalName Second);
