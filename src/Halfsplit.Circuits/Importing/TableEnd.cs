using System.Text.RegularExpressions;

namespace Halfsplit.Circuits.Importing;

/// <summary>One end of a wire in a table: a part, and its terminal as the table writes it.</summary>
/// <param name="Part">Fit for a sheet.</param>
/// <param name="Terminal">As written; null where the table says none.</param>
internal readonly partial record struct TableEnd(string Part, string? Terminal)
{
    /// <summary>The column of terminals has a dash alone: the minus, or a sign that there is none.</summary>
    public bool IsDash { get; init; }

    /// <summary>The table says for certain which terminal it is.</summary>
    public bool IsNamed => Terminal is not null && !IsDash;

    /// <summary>
    /// Reads <c>K2.30</c>, <c>K2:30</c>, <c>K2/30</c>, <c>K2-30</c>, <c>K2 30</c>, <c>-K2:30</c>; a bare "31" or "ground" is the body and a
    /// bare "30" the battery's positive post.
    /// </summary>
    /// <param name="terminal">From a column of its own; empty where there is none.</param>
    /// <returns>Null where no part is named.</returns>
    public static TableEnd? Parse(string text, string terminal)
    {
        if (terminal.Length == 0 && Designators.PlaceOf(text) is { } place)
        {
            var dot = place.IndexOf('.', StringComparison.Ordinal);
            return dot < 0 ? new TableEnd(place, null) : new TableEnd(place[..dot], place[(dot + 1)..]);
        }

        var match = terminal.Length > 0 ? Whole().Match(text) : Split().Match(text);
        match = match.Success ? match : Whole().Match(text);
        if (!match.Success || PartName(match.Groups["part"].Value) is not { Length: > 0 } part)
        {
            return null;
        }

        var own = match.Groups["terminal"] is { Success: true } group ? group.Value.Trim() : "";
        return new TableEnd(part, terminal.Length > 0 ? terminal : own.Length > 0 ? own : null);
    }

    /// <summary>A name that a sheet can have; empty where nothing is left of it.</summary>
    public static string PartName(string text)
    {
        var name = string.Concat(text.Trim().TrimStart('-', '=', '+').Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '_')).Trim('_');
        return name.Length == 0 ? "" : (char.IsAsciiLetter(name[0]) ? name : "X" + name)[..Math.Min(40, char.IsAsciiLetter(name[0]) ? name.Length : name.Length + 1)];
    }

    /// <summary>A part, one of the usual signs, a terminal. A dash is that sign only behind a designator such as K2.</summary>
    [GeneratedRegex(@"^\s*(?:(?<part>[-=+]?[^.:/]+?)\s*[.:/]\s*(?<terminal>[^.:/]+)|(?<part>[-=+]?[A-Za-z]{1,4}\d+)\s*[- ]\s*(?<terminal>[A-Za-z0-9+]{1,4}|[+-]))\s*$", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Split();

    [GeneratedRegex(@"^\s*(?<part>.+?)\s*$", RegexOptions.CultureInvariant | RegexOptions.Singleline, 1000)]
    private static partial Regex Whole();
}
