using System.Collections.Frozen;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Shelf;

namespace Halfsplit.Circuits.Lint;

/// <summary>
/// Which parts stand in fuel or at its lines (<c>data/fuel-words.csv</c>): a motor that is called a fuel pump, a solenoid that is
/// called an injector, and what has a fuel tank for its place. The word "fuel" alone says nothing: a gauge's lamp and a filler
/// flap's lock stand far from it. An injector need not say of what: a warning too many costs one word in the sheet.
/// </summary>
internal static class FuelWords
{
    public const string Caution = "fuel vapour";

    private static readonly FrozenDictionary<string, FrozenSet<string>> Roles = DataFile.Read("fuel-words.csv")
        .GroupBy(r => r.Text("role"), StringComparer.Ordinal)
        .ToFrozenDictionary(g => g.Key, g => g.Select(r => r.Text("word")).ToFrozenSet(StringComparer.Ordinal), StringComparer.Ordinal);

    public static bool StandsAtFuel(Part part) => part switch
    {
        Motor => Says($"{part.Id} {part.Notes.Name}", "pump") || IsTank(part.Notes.Place),
        Solenoid => SearchWords.Cut($"{part.Id} {part.Notes.Name}").Any(Roles["injector"].Contains) || IsTank(part.Notes.Place),
        Load or Sensor => IsTank(part.Notes.Place),
        _ => false,
    };

    /// <summary>"tank" alone, or with a word for fuel; a washer's tank is none.</summary>
    private static bool IsTank(string? place) =>
        place is not null && (Says(place, "tank") || SearchWords.Cut(place) is [var only] && Roles["tank"].Contains(only));

    /// <summary>A word for fuel and one for the thing, or one word for both.</summary>
    private static bool Says(string text, string thing)
    {
        var words = SearchWords.Cut(text);
        return words.Any(Roles["fuel " + thing].Contains) || (words.Any(Roles["fuel"].Contains) && words.Any(Roles[thing].Contains));
    }
}
