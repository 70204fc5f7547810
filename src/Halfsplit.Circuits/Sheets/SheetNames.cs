using System.Collections.Immutable;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets;

/// <summary>What parts and terminals may be called, so that paths, faults and commands can name them without quotes.</summary>
internal static class SheetNames
{
    /// <summary>Words that mean something else where a part's name could stand.</summary>
    public static ImmutableArray<string> Reserved { get; } = ["wire", "after", "takes", "lasts", "needs"];

    /// <summary>A letter, then letters, digits, dashes and underscores.</summary>
    public static bool IsPart(string name) =>
        name.Length is > 0 and <= 40
        && char.IsAsciiLetter(name[0])
        && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_')
        && !Reserved.Contains(name);

    /// <summary>Letters, digits, dashes, underscores, and the signs of B+ and B-.</summary>
    public static bool IsTerminal(string name) =>
        name.Length is > 0 and <= 40 && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '+')
        && !name.Contains("->", StringComparison.Ordinal);

    /// <summary>Complains of terminal names that cannot be and of those that come twice.</summary>
    public static void CheckTerminals(MapReader map, string key, IReadOnlyList<string> names)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var name in names)
        {
            if (!IsTerminal(name))
            {
                map.State.Error(map.Entry(key)?.Value ?? map.Anchor, "sheet.bad-terminal", name);
            }
            else if (!seen.Add(name))
            {
                map.State.Error(map.Entry(key)?.Value ?? map.Anchor, "sheet.terminal-twice", name, map.Owner);
            }
        }
    }
}
