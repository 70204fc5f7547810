using System.Globalization;
using System.Text.Json;

namespace Halfsplit.Jobs.Events;

/// <summary>
/// Reads the fields of one JSON object. The first field that is missing or of the wrong type is remembered in
/// <paramref name="trouble"/>, and a stand-in returned: whoever reads looks at the trouble once, at the end.
/// </summary>
internal readonly struct EventFields(JsonElement element, EventFields.Trouble trouble)
{
    /// <summary>The first field that could not be read.</summary>
    internal sealed class Trouble
    {
        public string? Field { get; private set; }

        public void Note(string field) => Field ??= field;
    }

    public string Text(string name) => OptionalText(name) ?? Missing(name, "");

    public string? OptionalText(string name)
    {
        if (!Find(name, out var value)) return null;
        return value.ValueKind == JsonValueKind.String ? TextOf(value, name) : Missing<string?>(name, null);
    }

    public double Number(string name) => OptionalNumber(name) ?? Missing(name, 0.0);

    public double? OptionalNumber(string name)
    {
        if (!Find(name, out var value)) return null;
        return value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var number) && double.IsFinite(number)
            ? number
            : Missing<double?>(name, null);
    }

    public decimal? OptionalDecimal(string name)
    {
        if (!Find(name, out var value)) return null;
        return value.ValueKind == JsonValueKind.Number && value.TryGetDecimal(out var number)
            ? number
            : Missing<decimal?>(name, null);
    }

    public bool Flag(string name)
    {
        if (!Find(name, out var value)) return false;
        return value.ValueKind is JsonValueKind.True or JsonValueKind.False ? value.GetBoolean() : Missing(name, false);
    }

    /// <summary>Null where it is not told.</summary>
    public bool? OptionalFlag(string name) => Find(name, out _) ? Flag(name) : null;

    public EventId Id(string name) => OptionalId(name) ?? Missing(name, default(EventId));

    public EventId? OptionalId(string name)
    {
        if (OptionalText(name) is not { } text) return null;
        return EventId.TryParse(text, out var id) ? id : Missing<EventId?>(name, null);
    }

    public DateTimeOffset Instant(string name) =>
        DateTimeOffset.TryParseExact(
            Text(name),
            "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK",
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal,
            out var instant)
            ? instant
            : Missing(name, default(DateTimeOffset));

    public T Choice<T>(string name, (string Name, T Value)[] names)
    {
        var text = Text(name);
        foreach (var (candidate, value) in names)
        {
            if (candidate == text) return value;
        }

        return Missing(name, names[0].Value);
    }

    public ValueList<string> Texts(string name)
    {
        if (!Find(name, out var value)) return [];
        if (value.ValueKind != JsonValueKind.Array) return Missing<ValueList<string>>(name, []);
        var texts = new List<string>();
        foreach (var item in value.EnumerateArray())
        {
            if (item.ValueKind != JsonValueKind.String) return Missing<ValueList<string>>(name, []);
            texts.Add(TextOf(item, name) ?? "");
        }

        return [.. texts];
    }

    public ValueList<Jumper> Jumpers(string name)
    {
        if (!Find(name, out var value)) return [];
        if (value.ValueKind != JsonValueKind.Array) return Missing<ValueList<Jumper>>(name, []);
        var jumpers = new List<Jumper>();
        foreach (var item in value.EnumerateArray())
        {
            if (item.ValueKind != JsonValueKind.Array || item.GetArrayLength() != 2
                || item[0].ValueKind != JsonValueKind.String || item[1].ValueKind != JsonValueKind.String)
            {
                return Missing<ValueList<Jumper>>(name, []);
            }

            jumpers.Add(new Jumper(TextOf(item[0], name) ?? "", TextOf(item[1], name) ?? ""));
        }

        return [.. jumpers];
    }

    public ValueList<T> Objects<T>(string name, Func<EventFields, T> read)
    {
        if (!Find(name, out var value)) return [];
        if (value.ValueKind != JsonValueKind.Array) return Missing<ValueList<T>>(name, []);
        var items = new List<T>();
        foreach (var item in value.EnumerateArray())
        {
            if (item.ValueKind != JsonValueKind.Object) return Missing<ValueList<T>>(name, []);
            items.Add(read(new EventFields(item, trouble)));
        }

        return [.. items];
    }

    /// <summary>A whole number, 0 or more.</summary>
    public int Count(string name) => Number(name) is >= 0 and <= int.MaxValue and var number && double.IsInteger(number)
        ? (int)number
        : Missing(name, 0);

    public EventFields? OptionalObject(string name)
    {
        if (!Find(name, out var value)) return null;
        return value.ValueKind == JsonValueKind.Object
            ? new EventFields(value, trouble)
            : Missing<EventFields?>(name, null);
    }

    /// <summary>Notes that a field is not as it should be, and returns the stand-in.</summary>
    public T Missing<T>(string name, T standIn)
    {
        trouble.Note(name);
        return standIn;
    }

    /// <summary>Null counts as absent.</summary>
    private bool Find(string name, out JsonElement value)
    {
        value = default;
        return element.ValueKind == JsonValueKind.Object
            && element.TryGetProperty(name, out value) && value.ValueKind != JsonValueKind.Null;
    }

    private string? TextOf(JsonElement value, string name)
    {
        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException)
        {
            // An escaped half of a surrogate pair: JSON allows it, text does not.
            return Missing<string?>(name, null);
        }
    }
}
