using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets;

/// <summary>Reads what stands around the parts: places, conditions, complaints.</summary>
internal static class SurroundingsReader
{
    public static Place Place(MapReader map, string name)
    {
        if (name.Contains("->", StringComparison.Ordinal) || name != string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))
        {
            map.State.Error(map.Anchor, "sheet.bad-place-name", name);
        }

        return new Place(
            name,
            map.Quantity("open", Unit.Minute, Limits.Minutes, 0),
            map.Texts("tools"),
            map.Texts("cautions"),
            map.Word(
                "environment", PlaceEnvironment.Dry,
                ("dry", PlaceEnvironment.Dry), ("wet", PlaceEnvironment.Wet), ("hot", PlaceEnvironment.Hot)),
            map.Quantity("reach", Unit.Metre, Limits.Reach, 1),
            map.Inner("grid", $"grid of {name}") is { } grid ? GridReader.Read(grid) : null);
    }

    public static Condition Condition(MapReader map, string name)
    {
        var after = map.Text("after");
        var lasts = map.OptionalQuantity("lasts", Unit.Second, Limits.Seconds);
        var takes = map.Quantity("takes", Unit.Minute, Limits.Minutes, 0);
        var starter = map.OptionalQuantity("starter draws", Unit.Ampere, Limits.Amps);
        var alternator = map.OptionalQuantity("alternator holds", Unit.Volt, Limits.Volts);
        var turns = map.YesNo("engine turns", alternator is not null);
        var needs = map.Texts("needs");
        var settings = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var entry in map.Rest())
        {
            if (map.TextOf(entry.Value, entry.Key.Value) is { } text)
            {
                settings[entry.Key.Value] = Normal(text);
            }
        }

        return new Condition(name, settings.ToImmutable(), after, lasts, starter, alternator, turns, needs, takes);
    }

    public static Complaint Complaint(MapReader map, string name) => new(
        name,
        Required(map, "load", "load: M1"),
        map.Word("is", LoadCondition.Dead, ("dead", LoadCondition.Dead), ("weak", LoadCondition.Weak)),
        Required(map, "in", "in: priming"));

    /// <summary>A share is written with one space before its sign; everything else as it is.</summary>
    private static string Normal(string text) =>
        text.EndsWith('%') && Quantity.TryParse(text, Unit.Percent, Limits.Share, out var share, out _)
            ? Quantity.Write(share, Unit.Percent)
            : text;

    private static string Required(MapReader map, string key, string example)
    {
        if (map.Entry(key) is null)
        {
            map.Missing(key, example);
        }

        return map.Text(key) ?? "";
    }
}
