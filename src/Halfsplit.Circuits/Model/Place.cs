using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>What the surroundings do to metal; selects the failure weights of the parts that live there.</summary>
public enum PlaceEnvironment { Dry, Wet, Hot }

/// <summary>Where parts live and what it takes to get there.</summary>
/// <param name="Name">As the person knows it: "kick panel".</param>
/// <param name="OpenMinutes">Minutes to get access; the place then stays open.</param>
/// <param name="Tools">What is needed to open it.</param>
/// <param name="Cautions">Names of the cautions to show before the place is opened, e.g. "fuel vapour".</param>
/// <param name="Environment">Dry cabin, wet underbody, hot engine bay.</param>
/// <param name="Reach">Metres of lead from here to the battery's posts.</param>
/// <param name="Grid">How its slots lie, where it is a fuse and relay box that the sheet describes.</param>
public sealed record Place(
    string Name,
    double OpenMinutes,
    ImmutableArray<string> Tools,
    ImmutableArray<string> Cautions,
    PlaceEnvironment Environment = PlaceEnvironment.Dry,
    double Reach = 1.0,
    BoxGrid? Grid = null);
