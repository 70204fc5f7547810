using System.Globalization;
using System.Text.RegularExpressions;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Adapting;

/// <summary>
/// Changes as a person writes them (<c>docs/adapting.md</c>): <c>place K2 = boot side, 3 min</c>,
/// <c>length K2.87~C1.2a = unknown</c>, <c>connector C7 in K2.87~C1.2a at rear seat</c>, <c>without relay K2</c>.
/// The words are the same in every language, as those of a sheet are; values may be said in either, as <c>ca. 8 Fuß</c>.
/// </summary>
public static partial class ChangeText
{
    /// <summary>What stands where nobody knows.</summary>
    public const string Unknown = "unknown";

    /// <summary>Behind <c>without relay K2</c>: also through a switch that was not chosen for so much.</summary>
    private const string DespiteAmps = " despite the amps";

    private static readonly string[] Keys = ["id", "name", "place", "slot", "price", "open", "colour", "gauge", "length"];

    private static readonly string[] Beginnings = [.. Keys, "title", "connector", "splice", "without relay", "relay", "ground side"];

    /// <summary>True for what says that something is not known.</summary>
    public static bool IsUnknown(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Trim() is "?" || text.Trim().Equals(Unknown, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The change that is meant; null with the problem if none is.</summary>
    public static SheetChange? Parse(string text, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        problem = null;
        text = text.Trim();
        if (text.Length == 0)
        {
            problem = new Message("adapt.empty-change", string.Join(", ", Beginnings));
            return null;
        }

        var equals = text.IndexOf('=', StringComparison.Ordinal);
        if (equals > 0)
        {
            var (left, value) = (text[..equals].Trim(), text[(equals + 1)..].Trim());
            var space = left.IndexOf(' ', StringComparison.Ordinal);
            if (space < 0 && left.Equals("title", StringComparison.OrdinalIgnoreCase))
            {
                return new TitleSheet(value);
            }

            if (space > 0 && Valued(left[..space].ToLowerInvariant(), left[space..].Trim(), value, out var change, out problem))
            {
                return change;
            }
        }
        else if (Worded(text, out var change, out problem))
        {
            return change;
        }

        problem ??= NoSuchChange(text);
        return null;
    }

    /// <summary>The change as it is read back.</summary>
    public static string Write(SheetChange change) => change switch
    {
        TitleSheet c => $"title = {c.Title}",
        RenamePart c => $"id {c.Part} = {c.Id}",
        NamePart c => $"name {c.Part} = {c.Name ?? Unknown}",
        PlacePart c => $"place {c.Part} = {(c.Place is null ? Unknown : Place(c.Place))}",
        SlotPart c => $"slot {c.Part} = {c.Slot ?? Unknown}",
        PricePart c => $"price {c.Part} = {(c.Price is { } p ? $"{Quantity.Write(p.Low, Unit.None)} to {Quantity.Write(p.High, Unit.None)}" : Unknown)}",
        OpenPlace c => $"open {c.Place} = {(c.Minutes is { } m ? Quantity.Write(m, Unit.Minute) : Unknown)}",
        ColourWire c => $"colour {c.Wire} = {c.Colour ?? Unknown}",
        GaugeWire c => $"gauge {c.Wire} = {(c.Gauge is { } g ? WireText.Gauge(new PathWire(g, 1, "1m", null, null, null, c.Guessed)) : Unknown)}",
        LengthWire c => $"length {c.Wire} = {(c.Length is { } l ? WireText.Said(l, c.Guessed) : Unknown)}",
        InsertConnector c => $"connector {Id(c.Id)}in {c.Wire}{At(c.Place)}{After(c.Share)}{Named(c.Name)}",
        InsertSplice c => $"splice {Id(c.Id)}in {c.Wire}{At(c.Place)}{After(c.Share)}{Named(c.Name)}",
        RemoveRelay c => $"without relay {c.Relay}{(c.DespiteAmps ? DespiteAmps : "")}",
        AddRelay c => $"relay {Id(c.Id)}before {c.Load}{At(c.Place)}{Named(c.Name)}",
        SwitchGroundSide c => $"ground side {c.Load}",
        _ => throw new ArgumentException("There is no such change.", nameof(change)),
    };

    /// <summary>A place with its minutes, as <c>boot side, 3 min</c> or <c>boot side, unknown</c>; null where nobody knows where it is.</summary>
    public static PlaceChoice? ReadPlace(string text, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        problem = null;
        if (IsUnknown(text))
        {
            return null;
        }

        var comma = text.LastIndexOf(',');
        if (comma <= 0)
        {
            return new PlaceChoice(text.Trim());
        }

        var (name, behind) = (text[..comma].Trim(), text[(comma + 1)..].Trim());
        if (IsUnknown(behind))
        {
            return new PlaceChoice(name, null, MinutesUnknown: true);
        }

        return Quantity.NumberLength(behind) == 0 ? new PlaceChoice(text.Trim())
            : Quantity.TryParse(EverydayWords.Quantity(behind), Unit.Minute, Limits.Minutes, out var minutes, out problem) ? new PlaceChoice(name, minutes)
            : null;
    }

    private static bool Valued(string key, string what, string value, out SheetChange? change, out Message? problem)
    {
        var isUnknown = IsUnknown(value);
        problem = value.Length == 0 ? new Message("adapt.no-value", $"{key} {what}", Unknown) : null;
        change = null;
        if (problem is not null || !Keys.Append("color").Contains(key))
        {
            return false;
        }

        change = key switch
        {
            "id" => new RenamePart(what, value),
            "name" => new NamePart(what, isUnknown ? null : value),
            "slot" => new SlotPart(what, isUnknown ? null : value),
            "place" => ReadPlace(value, out problem) is { } place || problem is null ? new PlacePart(what, ReadPlace(value, out _)) : null,
            "price" => isUnknown ? new PricePart(what, null) : ReadPrice(value, out problem) is { } price ? new PricePart(what, price) : null,
            "open" => isUnknown ? new OpenPlace(what, null)
                : Quantity.TryParse(EverydayWords.Quantity(value), Unit.Minute, Limits.Minutes, out var minutes, out problem) ? new OpenPlace(what, minutes) : null,
            "colour" or "color" => new ColourWire(what, isUnknown ? null : value),
            "gauge" => isUnknown ? new GaugeWire(what, null)
                : ReadGauge(value, out problem) is { } wire ? new GaugeWire(what, wire.Gauge, wire.GaugeGuessed) : null,
            _ => isUnknown ? new LengthWire(what, null)
                : ReadLength(value, out problem) is { } wire ? new LengthWire(what, wire.LengthWritten, wire.LengthGuessed) : null,
        };
        return change is not null;
    }

    /// <summary>A price, <c>80 to 150</c>, <c>80 bis 150</c> or <c>80</c>.</summary>
    public static ValueRange? ReadPrice(string text, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (DashedRange().Match(text) is { Success: true } dashed)
        {
            problem = new Message("adapt.dashed-price", $"{dashed.Groups["low"].Value} to {dashed.Groups["high"].Value}");
            return null;
        }

        var ends = text.Split([" to ", " bis "], StringSplitOptions.TrimEntries);
        if (Quantity.TryParse(ends[0], Unit.None, Limits.Price, out var low, out problem)
            && Quantity.TryParse(ends[^1], Unit.None, Limits.Price, out var high, out problem))
        {
            problem = ends.Length > 2 || low > high ? new Message("adapt.bad-price") : null;
            return problem is null ? new ValueRange(low, high) : null;
        }

        return null;
    }

    /// <summary>A gauge as a sheet has it, with a word before a guess; the rest of the wire means nothing.</summary>
    public static PathWire? ReadGauge(string text, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (guessed, value) = EverydayWords.Guess(text);
        if (value.Length > 0 && Quantity.NumberLength(value) == value.Length)
        {
            // In a wire as a sheet has it a bare number would be a length.
            problem = new Message("adapt.gauge-unit", value);
            return null;
        }

        return WireText.TryParse($"wire {WireText.Said(value, guessed)} 1m", out var wire, out problem) ? wire : null;
    }

    /// <summary>A length as a sheet has it, with a word before a guess; the rest of the wire means nothing.</summary>
    public static PathWire? ReadLength(string text, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (guessed, value) = EverydayWords.Guess(text);
        return WireText.TryParse($"wire 1mm2 {WireText.Said(EverydayWords.Quantity(value), guessed)}", out var wire, out problem) ? wire : null;
    }

    private static bool Worded(string text, out SheetChange? change, out Message? problem)
    {
        (change, problem) = (null, null);
        if (InWire().Match(text) is { Success: true } inWire)
        {
            var place = inWire.Groups["place"] is { Success: true } at ? ReadPlace(at.Value, out problem) : null;
            double? share = null;
            if (problem is null && inWire.Groups["share"] is { Success: true } after)
            {
                share = Quantity.TryParse(after.Value, Unit.Percent, Limits.Share, out var read, out problem) ? read : null;
            }

            var (wire, id, name) = (inWire.Groups["wire"].Value, Said(inWire, "id"), Said(inWire, "name"));
            change = inWire.Groups["kind"].Value.Equals("connector", StringComparison.OrdinalIgnoreCase)
                ? new InsertConnector(wire, id, name, place, share)
                : new InsertSplice(wire, id, name, place, share);
            return problem is null;
        }

        if (WithoutRelay().Match(text) is { Success: true } without)
        {
            change = new RemoveRelay(without.Groups["part"].Value, without.Groups["despite"].Success);
            return true;
        }

        if (BeforeLoad().Match(text) is { Success: true } before)
        {
            var place = before.Groups["place"] is { Success: true } at ? ReadPlace(at.Value, out problem) : null;
            change = new AddRelay(before.Groups["load"].Value, Said(before, "id"), Said(before, "name"), place);
            return problem is null;
        }

        if (OnGroundSide().Match(text) is { Success: true } side)
        {
            change = new SwitchGroundSide(side.Groups["part"].Value);
            return true;
        }

        return false;
    }

    private static Message NoSuchChange(string text)
    {
        if (Beginnings.Where(b => $"{text} ".StartsWith(b + " ", StringComparison.OrdinalIgnoreCase)).MaxBy(b => b.Length) is { } begun)
        {
            return new Message("adapt.unfinished-change", text, Form(begun));
        }

        var word = text.Split(' ', 2)[0];
        return new Message("adapt.no-such-change", text, Spelling.Hint(word, Beginnings), string.Join(", ", Beginnings));
    }

    private static string Form(string beginning) => beginning switch
    {
        "title" => "title = TEXT",
        "open" => "open PLACE = MINUTES",
        "colour" or "gauge" or "length" => $"{beginning} WIRE = VALUE",
        "connector" or "splice" => $"{beginning} in WIRE",
        "without relay" => "without relay RELAY",
        "relay" => "relay before LOAD",
        "ground side" => "ground side LOAD",
        _ => $"{beginning} PART = VALUE",
    };

    private static string? Said(Match match, string group) =>
        match.Groups[group] is { Success: true } found && !IsUnknown(found.Value) ? found.Value : null;

    private static string Place(PlaceChoice place) => place.Name
        + (place.Minutes is { } minutes ? ", " + Quantity.Write(minutes, Unit.Minute) : place.MinutesUnknown ? ", " + Unknown : "");

    private static string Id(string? id) => id is null ? "" : id + " ";

    private static string At(PlaceChoice? place) => place is null ? "" : " at " + Place(place);

    private static string After(double? share) => share is { } part ? " after " + Quantity.Write(part, Unit.Percent) : "";

    private static string Named(string? name) => name is null ? "" : " named " + name;

    [GeneratedRegex(
        @"^(?<kind>connector|splice)(\s+(?<id>\S+))?\s+in\s+(?<wire>.+?)(\s+at\s+(?<place>.+?))?(\s+after\s+(?<share>.+?))?(\s+named\s+(?<name>.+))?$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex InWire();

    [GeneratedRegex(@"^without\s+relay\s+(?<part>.+?)(?<despite>\s+despite\s+the\s+amps)?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WithoutRelay();

    [GeneratedRegex(
        @"^relay(\s+(?<id>\S+))?\s+before\s+(?<load>.+?)(\s+at\s+(?<place>.+?))?(\s+named\s+(?<name>.+))?$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex BeforeLoad();

    [GeneratedRegex(@"^\s*(?<low>[0-9.,]+)\s*[-–—]\s*(?<high>[0-9.,]+)\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex DashedRange();

    [GeneratedRegex(@"^ground\s+side\s+(?<part>.+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OnGroundSide();
}
