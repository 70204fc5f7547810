using System.Collections.Immutable;

namespace Halfsplit.Evaluation.Cars;

/// <summary>Where the weights come from by which faults are drawn.</summary>
public enum FaultSource
{
    /// <summary>The usual weights, each bent by a factor of its own that the players do not know.</summary>
    Bent,

    /// <summary>Every part fails as often as every other, and in each of its ways as often: another distribution altogether.</summary>
    Flat,
}

/// <summary>In what the drawn cars differ from what the players assume.</summary>
/// <param name="Name">As on the command line.</param>
/// <param name="Source">Where the weights of the faults come from.</param>
/// <param name="LoadShare">Share of cars in which the load complained of itself has failed; null: as the weights have it.</param>
/// <param name="Wider">Multiplies the spread of parts, 1 for the usual.</param>
/// <param name="Slips">Share of readings that slip: wrong pin, no contact, wrong unit.</param>
/// <param name="SlipsRepeat">The same reading slips the same way every time.</param>
/// <param name="Faults">How many faults at once.</param>
/// <param name="Shows">Share of readings at which the fault is there; 1: always.</param>
/// <param name="OhmsFall">Power with which a bad joint's ohms fall with its amps; 0: ohmic.</param>
/// <param name="OtherSheet">The car has a connector in its wiring that the sheet does not know.</param>
/// <param name="Minutes">Multiplies all minutes; the players know it.</param>
public sealed record Variant(
    string Name,
    FaultSource Source = FaultSource.Bent,
    double? LoadShare = null,
    double Wider = 1,
    double Slips = 0.02,
    bool SlipsRepeat = false,
    int Faults = 1,
    double Shows = 1,
    double OhmsFall = 0,
    bool OtherSheet = false,
    double Minutes = 1)
{
    /// <summary>Every variant there is.</summary>
    public static ImmutableArray<Variant> All { get; } =
    [
        new("base"),
        new("flat-weights", Source: FaultSource.Flat),
        new("load-30", LoadShare: 0.30),
        new("load-45", LoadShare: 0.45),
        new("load-60", LoadShare: 0.60),
        new("minutes-half", Minutes: 0.5),
        new("minutes-double", Minutes: 2),
        new("wide-parts", Wider: 2),
        new("no-slips", Slips: 0),
        new("slips-repeat", Slips: 0.10, SlipsRepeat: true),
        new("two-faults", Faults: 2),
        new("intermittent", Shows: 0.7),
        new("not-ohmic", OhmsFall: 0.4),
        new("other-sheet", OtherSheet: true),
    ];

    public static Variant? Find(string name) => All.FirstOrDefault(v => v.Name == name);
}
