using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting;

/// <summary>
/// One way in which a car differs from a sheet. Parts and wires are named as in the sheet, or so that only one can be
/// meant: a part by its plain name, a wire by its ends. Null stands for what the person does not know.
/// </summary>
public abstract record SheetChange;

/// <summary>The sheet's title.</summary>
public sealed record TitleSheet(string Title) : SheetChange;

/// <summary>A part is called otherwise in this car's circuit: everywhere in the sheet.</summary>
public sealed record RenamePart(string Part, string Id) : SheetChange;

/// <summary>A part's name in plain words.</summary>
public sealed record NamePart(string Part, string? Name) : SheetChange;

/// <summary>Where a part is.</summary>
/// <param name="Place">Null: not known.</param>
public sealed record PlacePart(string Part, PlaceChoice? Place) : SheetChange;

/// <summary>A part's position in its box.</summary>
public sealed record SlotPart(string Part, string? Slot) : SheetChange;

/// <summary>What a new part costs.</summary>
public sealed record PricePart(string Part, ValueRange? Price) : SheetChange;

/// <summary>Minutes to get at a place that the sheet has.</summary>
public sealed record OpenPlace(string Place, double? Minutes) : SheetChange;

/// <summary>A wire's colour by IEC 60757, "YE/BK".</summary>
public sealed record ColourWire(string Wire, string? Colour) : SheetChange;

/// <summary>A wire's cross-section.</summary>
/// <param name="Guessed">It was estimated and not looked up.</param>
public sealed record GaugeWire(string Wire, WireGauge? Gauge, bool Guessed = false) : SheetChange;

/// <summary>A wire's length.</summary>
/// <param name="Length">As a sheet writes it, <c>4.2m</c>.</param>
/// <param name="Guessed">It was estimated and not measured.</param>
public sealed record LengthWire(string Wire, string? Length, bool Guessed = false) : SheetChange;

/// <summary>A connector that the sheet's wire has not.</summary>
/// <param name="Id">Its name in the circuit; null for the next free one.</param>
/// <param name="Share">Share of the wire's length that lies before it, 0 to 1; null: not known.</param>
public sealed record InsertConnector(string Wire, string? Id, string? Name = null, PlaceChoice? Place = null, double? Share = null)
    : SheetChange;

/// <summary>A splice that the sheet's wire has not.</summary>
/// <param name="Id">Its name in the circuit; null for the next free one.</param>
/// <param name="Share">Share of the wire's length that lies before it, 0 to 1; null: not known.</param>
public sealed record InsertSplice(string Wire, string? Id, string? Name = null, PlaceChoice? Place = null, double? Share = null)
    : SheetChange;

/// <summary>The car has no such relay: its contact is bridged, and what switched its coil switches the load.</summary>
/// <param name="DespiteAmps">The load's current may go through a switch or an output that was chosen for the coil.</param>
public sealed record RemoveRelay(string Relay, bool DespiteAmps = false) : SheetChange;

/// <summary>The car has a relay before this load: what fed the load pulls it in.</summary>
/// <param name="Load">The load, or its terminal where it has several that are fed: <c>LH.56b</c>.</param>
/// <param name="Id">The relay's name in the circuit; null for the next free one.</param>
public sealed record AddRelay(string Load, string? Id, string? Name = null, PlaceChoice? Place = null) : SheetChange;

/// <summary>The load is fed all the time, and its switch or relay closes its way to ground.</summary>
public sealed record SwitchGroundSide(string Load) : SheetChange;

/// <summary>A place, and the minutes to get at it.</summary>
/// <param name="Name">One of the sheet's places, or a new one.</param>
/// <param name="Minutes">Null: as the sheet says. A new place needs them.</param>
/// <param name="MinutesUnknown">Nobody knows the minutes of a new place.</param>
public sealed record PlaceChoice(string Name, double? Minutes = null, bool MinutesUnknown = false);
