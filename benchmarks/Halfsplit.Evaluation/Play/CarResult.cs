using System.Collections.Immutable;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Evaluation.Cars;

namespace Halfsplit.Evaluation.Play;

/// <summary>How one player fared with one car: a line of a results file.</summary>
/// <param name="Car">Number of the car, which with sheet and variant draws it again.</param>
/// <param name="Fault">What was wrong, as <c>PART:MODE:SEVERITY</c>.</param>
/// <param name="Class">Kind of part and mode, for results by class.</param>
/// <param name="IsLoad">The load complained of had failed itself.</param>
/// <param name="Minutes">All of it: checks, repairs, proofs, putting back; times the variant's factor.</param>
/// <param name="Parts">Middle prices of all that was bought.</param>
/// <param name="WrongRepairs">Repairs that took away nothing that was wrong.</param>
/// <param name="WrongParts">Of these, the ones that cost money.</param>
/// <param name="FirstRight">The first repair took away what was wrong.</param>
/// <param name="InGroup">The group named at the first repair held the repair that was needed; null where none was named.</param>
/// <param name="Group">How many repairs the group named; null where none was named.</param>
/// <param name="InWideGroup">The same of the wider group, which held ninety-nine in a hundred of the odds.</param>
/// <param name="WideGroup">How many repairs that named.</param>
/// <param name="Proven">Closed as proven.</param>
/// <param name="Comeback">Closed as proven with something still wrong.</param>
/// <param name="Slips">Readings that slipped.</param>
/// <param name="Claims">Odds of each repair as claimed, and whether it cured.</param>
/// <param name="Suspects">Suspects' odds as stated along the way.</param>
public sealed record CarResult(
    string Sheet,
    string Variant,
    int Car,
    string Player,
    string Complaint,
    string Fault,
    string Class,
    bool IsLoad,
    double Minutes,
    double Parts,
    int Checks,
    int WrongRepairs,
    int WrongParts,
    bool FirstRight,
    bool? InGroup,
    int? Group,
    bool? InWideGroup,
    int? WideGroup,
    bool Proven,
    bool Comeback,
    int Slips,
    ImmutableArray<string> Repairs,
    ImmutableArray<Stated> Claims,
    ImmutableArray<Stated> Suspects)
{
    /// <summary>What names the line: the same car by the same player is played once.</summary>
    public string Key => $"{Sheet}|{Variant}|{Car}|{Player}";

    public bool HandedOver => !Proven;

    public static CarResult Of(string sheet, int car, IPlayer player, Attempt attempt)
    {
        ArgumentNullException.ThrowIfNull(player);
        ArgumentNullException.ThrowIfNull(attempt);
        var place = attempt.Place;
        var needed = attempt.Car.Hidden.Select(place.RepairOf).OfType<Repair>().Select(r => r.Id).ToList();
        var wrong = attempt.Repairs.Where(r => !r.Right).ToList();
        var claim = attempt.FirstClaim;
        bool IsNamed(string repair) => needed.Exists(n => repair == n || repair.Split(" + ").Contains(n));
        return new CarResult(
            sheet, place.Variant.Name, car, player.Name, place.Complaint.Name,
            string.Join(" + ", attempt.Car.Hidden), ClassOf(attempt), attempt.Car.Hidden.Any(f => IsOf(f.Part, place.Complaint.Load)),
            Math.Round(attempt.Minutes * place.Variant.Minutes, 2), attempt.Parts, attempt.Checks,
            wrong.Count, wrong.Count(r => r.Repair.Price.Middle > 0),
            attempt.Repairs.Count > 0 && attempt.Repairs[0].Right,
            claim?.Group.Any(IsNamed), claim?.Group.Length, claim?.WideGroup.Any(IsNamed), claim?.WideGroup.Length,
            attempt.IsProven, attempt.IsProven && attempt.Car.FaultsLeft > 0, attempt.Car.Slipped,
            [.. attempt.Repairs.Select(r => r.Repair.Id)], [.. attempt.Claims], [.. attempt.Suspects]);
    }

    private static string ClassOf(Attempt attempt) => attempt.Car.Hidden.Length > 1 ? "two faults"
        : attempt.Car.IsForeign ? "not on the sheet"
        : attempt.Place.ModeOf(attempt.Car.Hidden[0]) is { } mode ? $"{mode.Kind} {mode.Mode}" : "unknown";

    private static bool IsOf(string part, string load) => part == load || part.StartsWith(load + ".", StringComparison.Ordinal);
}
