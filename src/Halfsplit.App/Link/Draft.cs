using Halfsplit.App.Desk;

namespace Halfsplit.App.Link;

/// <summary>A reading that is being typed. Kept with every key, so that a reload or an empty battery loses nothing.</summary>
/// <param name="Check">The check it answers.</param>
/// <param name="Points">The two points, where the person chose them.</param>
/// <param name="Ticked">The lines of the set-up that are ticked off.</param>
/// <param name="Read">Ids of the cautions that were read in this job.</param>
public sealed record Draft(string? Check, string Typed, PointsWish? Points, int Ticked, string[] Read)
{
    public static Draft Empty { get; } = new(null, "", null, 0, []);
}

/// <summary>A job's lines as they are kept.</summary>
public sealed record JobLines(string Job, string[] Lines);
