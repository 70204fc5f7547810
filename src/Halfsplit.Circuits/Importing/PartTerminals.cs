using System.Collections.Immutable;

namespace Halfsplit.Circuits.Importing;

/// <summary>The terminals of one part of a table: what the rows call them, and what the sheet calls them.</summary>
internal sealed class PartTerminals(string kind)
{
    private static readonly ImmutableArray<string> Relay = ["30", "85", "86", "87", "87a", "87b"];

    private readonly List<string> _order = [];

    private static readonly string[] Plus = ["+", "b+", "pos", "plus", "m+"];

    /// <summary>Names for two ways through a part: the way in, the way out.</summary>
    private static readonly string[] First = [.. Plus, "1", "in", "a", "30", "15"], Second = ["2", "-", "b-", "neg", "minus", "m-", "out", "b", "31", "k"];

    /// <summary>The sheet's names in the order in which the rows came to them.</summary>
    public IReadOnlyList<string> Order => _order;

    /// <summary>True once a terminal without a name was taken by the direction of the row.</summary>
    public bool WentByDirection { get; private set; }

    /// <summary>True once the number of a terminal of a part with a single one was left out.</summary>
    public bool LeftOut { get; private set; }

    /// <summary>Parts of this kind have a minus.</summary>
    public bool HasMinus => kind is "battery" or "motor" or "led" or "solenoid";

    /// <summary>A row's name for a plus: beside it, a dash is the minus.</summary>
    public static bool IsPlus(string? raw) => raw is not null && Plus.Contains(raw.ToLowerInvariant());

    /// <summary>The sheet's name of a terminal; null where there is no such terminal on this kind of part, or none is named and one must be.</summary>
    /// <param name="raw">As the table has it; null where it has none.</param>
    /// <param name="isFrom">The wire runs from here: without a name, it leaves the part.</param>
    public string? Of(string? raw, bool isFrom)
    {
        // A dash is the minus only where there is one.
        raw = raw == "-" && !HasMinus ? null : raw;
        var name = kind switch
        {
            "splice" or "ground" or "metal" => Single(raw),
            "relay" => Relay.FirstOrDefault(t => string.Equals(t, raw, StringComparison.OrdinalIgnoreCase)),
            "battery" => Way(raw, "pos", "neg") ?? (raw is null && isFrom ? Directed("pos") : null),
            "starter" => Exact(raw, "30", "50", "31"),
            "alternator" => Exact(raw, "B+", "D+", "31"),
            "motor" or "led" or "solenoid" => TwoWays(raw, isFrom, "pos", "neg"),
            "diode" => TwoWays(raw, isFrom, "a", "k"),
            "fuse" or "fusible link" or "breaker" or "ptc" or "heater" or "sounder" or "resistor" => TwoWays(raw, isFrom, "1", "2"),
            "sensor" => raw is not null && Exact(raw, "supply", "signal", "ground") is { } of ? of : TwoWays(raw, isFrom, "1", "2"),
            "lamp" or "switch" => raw is null ? Directed(isFrom ? "2" : "1") : Clean(raw, '_'),
            "connector" => Cavity(raw),
            _ => raw is null ? null : Clean(raw, '-'),
        };
        if (name is not null && !_order.Contains(name))
        {
            _order.Add(name);
        }

        return name;
    }

    private string Single(string? raw)
    {
        LeftOut |= raw is not null;
        return "";
    }

    private static string? Exact(string? raw, params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            if (string.Equals(name, raw, StringComparison.OrdinalIgnoreCase))
            {
                return name;
            }
        }

        return null;
    }

    private string? TwoWays(string? raw, bool isFrom, string first, string second) =>
        raw is null ? Directed(isFrom ? second : first) : Way(raw, first, second);

    private static string? Way(string? raw, string first, string second)
    {
        var asked = raw?.ToLowerInvariant();
        return asked is null ? null : First.Contains(asked) || asked == first ? first : Second.Contains(asked) || asked == second ? second : null;
    }

    private string Directed(string name)
    {
        WentByDirection = true;
        return name;
    }

    /// <summary>Letters, digits and what else a sheet allows; null where nothing is left.</summary>
    private static string? Clean(string raw, char dash)
    {
        var name = string.Concat(raw.Trim().Select(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '+' || c == dash ? c : '_'));
        return name.Trim('_').Length == 0 || name.Length > 40 ? null : name;
    }

    /// <summary>Digits and capitals, with the half's small letter where the table says it.</summary>
    private static string? Cavity(string? raw)
    {
        if (raw is null)
        {
            return null;
        }

        var half = raw.Length > 1 && raw[^1] is 'a' or 'b' ? raw[^1..] : "";
        var number = raw[..^half.Length].ToUpperInvariant();
        return number.Length is > 0 and < 40 && number.All(c => char.IsAsciiDigit(c) || char.IsAsciiLetterUpper(c)) ? number + half : null;
    }
}
