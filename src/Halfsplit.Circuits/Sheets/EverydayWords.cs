using System.Collections.Frozen;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Sheets;

/// <summary>What people write, in either language, where a sheet has one word: "ca. 8 Fuß" for <c>about 8ft</c>.</summary>
internal static class EverydayWords
{
    /// <summary>The longer before those they begin with.</summary>
    private static readonly string[] Guesses =
        [WireText.About, "approximately", "approx.", "approx", "roughly", "circa", "ca.", "ca", "ungefähr", "zirka", "etwa", "~", "≈"];

    private static readonly FrozenDictionary<string, string> Units = new Dictionary<string, string>
    {
        ["feet"] = "ft", ["foot"] = "ft", ["fuß"] = "ft", ["fuss"] = "ft", ["'"] = "ft",
        // Apart from its number, "in" would begin the wire's place.
        ["in"] = "in", ["inch"] = "in", ["inches"] = "in", ["zoll"] = "in", ["\""] = "in",
        ["metre"] = "m", ["metres"] = "m", ["meter"] = "m", ["meters"] = "m",
        ["minute"] = "min", ["minutes"] = "min", ["minuten"] = "min",
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether a word for a guess stands before the value, and what stands behind it.</summary>
    public static (bool Guessed, string Value) Guess(string text)
    {
        text = text.Trim();
        foreach (var word in Guesses)
        {
            if (text.StartsWith(word, StringComparison.OrdinalIgnoreCase) && text.Length > word.Length
                && (!char.IsLetter(word[^1]) || !char.IsLetter(text[word.Length])))
            {
                return (true, text[word.Length..].Trim());
            }
        }

        return (false, text);
    }

    /// <summary>A number with its unit as a sheet writes it; any other text stays as it is.</summary>
    public static string Quantity(string text)
    {
        text = text.Trim();
        var number = Quantities.Quantity.NumberLength(text);
        return number > 0 && Units.TryGetValue(text[number..].Trim(), out var unit) ? text[..number] + unit : text;
    }
}
