using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Sheets.Tree;

/// <summary>
/// Takes the values of one map by their keys, says what is wrong with each, and at the end what keys nobody asked for.
/// After an error the fallback is returned, so that reading goes on; the state remembers that no circuit may come of it.
/// </summary>
/// <param name="map">The map.</param>
/// <param name="anchor">What to point at when a key is missing.</param>
/// <param name="owner">What the map describes, for messages: "fuse F1".</param>
/// <param name="path">Keys that lead here.</param>
/// <param name="state">Problems and positions.</param>
internal sealed class MapReader(
    SheetMap map, SheetNode anchor, string owner, ImmutableArray<string> path, ReadingState state)
{
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);

    public ReadingState State => state;

    public string Owner => owner;

    public SheetNode Anchor => anchor;

    public SheetMap Map => map;

    /// <summary>The entry of this key; its position is remembered.</summary>
    public SheetEntry? Entry(string key)
    {
        _asked.Add(key);
        foreach (var entry in map.Entries)
        {
            if (entry.Key.Value == key)
            {
                Remember(entry);
                return entry;
            }
        }

        return null;
    }

    /// <summary>The entries nobody asked for yet; they count as asked for now.</summary>
    public List<SheetEntry> Rest()
    {
        var rest = map.Entries.Where(e => !_asked.Contains(e.Key.Value)).ToList();
        foreach (var entry in rest)
        {
            _asked.Add(entry.Key.Value);
            Remember(entry);
        }

        return rest;
    }

    /// <summary>Says that a key must be there.</summary>
    public void Missing(string key, string example) =>
        state.Error(anchor, "sheet.missing-key", owner, key, example);

    /// <summary>The text of a key; null if it is not there.</summary>
    public string? Text(string key) => Entry(key) is { } entry ? TextOf(entry.Value, key) : null;

    /// <summary>A list of texts; a single text counts as a list of one.</summary>
    public ImmutableArray<string> Texts(string key)
    {
        if (Entry(key) is not { } entry)
        {
            return [];
        }

        if (entry.Value is not SheetList list)
        {
            return TextOf(entry.Value, key) is { } single ? [single] : [];
        }

        var texts = ImmutableArray.CreateBuilder<string>();
        for (var i = 0; i < list.Items.Count; i++)
        {
            if (TextOf(list.Items[i], key) is { } text)
            {
                texts.Add(text);
            }
        }

        return texts.ToImmutable();
    }

    public bool YesNo(string key, bool fallback)
    {
        switch (Text(key))
        {
            case null:
                return fallback;
            case "yes" or "true":
                return true;
            case "no" or "false":
                return false;
            case { } other:
                state.Error(Entry(key)!.Value.Value, "sheet.yes-or-no", key, other);
                return fallback;
        }
    }

    /// <summary>One of several words.</summary>
    public T Word<T>(string key, T fallback, params ReadOnlySpan<(string Word, T Value)> words)
    {
        if (Text(key) is not { } text)
        {
            return fallback;
        }

        foreach (var (word, value) in words)
        {
            if (word == text)
            {
                return value;
            }
        }

        var known = words.ToArray().Select(w => w.Word).ToArray();
        state.Error(
            Entry(key)!.Value.Value, "sheet.unknown-word", key, text, string.Join(", ", known), Spelling.Hint(text, known));
        return fallback;
    }

    public double Quantity(string key, Unit unit, Limits limits, double fallback) =>
        OptionalQuantity(key, unit, limits) ?? fallback;

    public double RequiredQuantity(string key, Unit unit, Limits limits)
    {
        if (Entry(key) is null)
        {
            Missing(key, $"{key}: {unit.Example}");
            return limits.High;
        }

        return OptionalQuantity(key, unit, limits) ?? limits.High;
    }

    public double? OptionalQuantity(string key, Unit unit, Limits limits) =>
        Text(key) is { } text ? Parse(Entry(key)!.Value.Value, text, unit, limits) : null;

    /// <summary>Two quantities with a word between: "5.5 A at 13 V". The second may be left out for its fallback.</summary>
    public (double First, double Second)? Pair(
        string key, Unit first, Limits firstLimits, string between, Unit second, Limits secondLimits, double fallback)
    {
        if (Text(key) is not { } text)
        {
            return null;
        }

        var node = Entry(key)!.Value.Value;
        var split = text.IndexOf($" {between} ", StringComparison.Ordinal);
        var left = Parse(node, split < 0 ? text : text[..split], first, firstLimits);
        var right = split < 0 ? fallback : Parse(node, text[(split + between.Length + 2)..], second, secondLimits);
        return left is { } a && right is { } b ? (a, b) : null;
    }

    /// <summary>A range, "80 to 150" or "10 V to 15 V" or "10 to 15 V"; a single value is a range of nothing.</summary>
    public ValueRange? Range(string key, Unit unit, Limits limits)
    {
        if (Text(key) is not { } text)
        {
            return null;
        }

        var node = Entry(key)!.Value.Value;
        var split = text.IndexOf(" to ", StringComparison.Ordinal);
        if (split < 0)
        {
            return Parse(node, text, unit, limits) is { } single ? new ValueRange(single, single) : null;
        }

        var (left, right) = (text[..split].Trim(), text[(split + 4)..].Trim());
        var number = Quantities.Quantity.NumberLength(right);
        if (Quantities.Quantity.NumberLength(left) == left.Length)
        {
            left += right[number..];
        }

        if (Parse(node, left, unit, limits) is not { } low || Parse(node, right, unit, limits) is not { } high)
        {
            return null;
        }

        if (low > high)
        {
            state.Error(node, "sheet.range-backwards", key, text);
            return null;
        }

        return new ValueRange(low, high);
    }

    /// <summary>The map of a key, read with the same state; null if it is not there.</summary>
    public MapReader? Inner(string key, string innerOwner)
    {
        if (Entry(key) is not { } entry)
        {
            return null;
        }

        return Of(entry, innerOwner);
    }

    /// <summary>A reader for an entry of this map; null, with a problem, if it is no map.</summary>
    public MapReader? Of(SheetEntry entry, string innerOwner)
    {
        if (entry.Value is SheetMap inner)
        {
            return new MapReader(inner, entry.Key, innerOwner, path.Add(entry.Key.Value), state);
        }

        state.Error(entry.Value, "sheet.want-map", entry.Key.Value);
        return null;
    }

    /// <summary>Complains of every key that nobody asked for.</summary>
    public void Finish()
    {
        foreach (var entry in map.Entries)
        {
            if (state.IsFull)
            {
                return;
            }

            if (entry.Value is SheetText { Value.Length: 0 } && entry.Key.Value is [>= '0' and <= '9', ..])
            {
                state.Error(entry.Key, "sheet.decimal-comma", entry.Key.Value);
            }
            else if (!_asked.Contains(entry.Key.Value))
            {
                var hint = Spelling.Nearest(entry.Key.Value, _asked) is { } near
                    ? new Message("spelling.did-you-mean", near)
                    : new Message("spelling.keys-are", string.Join(", ", _asked.Order(StringComparer.Ordinal)));
                state.Error(entry.Key, "sheet.unknown-key", entry.Key.Value, owner, hint);
            }
        }
    }

    /// <summary>The text of a node, or a problem.</summary>
    public string? TextOf(SheetNode node, string key)
    {
        if (node is SheetText { Value: { } text } && !string.IsNullOrWhiteSpace(text))
        {
            return text.Trim();
        }

        state.Error(node, node is SheetText ? "sheet.empty" : "sheet.want-text", key);
        return null;
    }

    public double? Parse(SheetNode node, string text, Unit unit, Limits limits)
    {
        if (Quantities.Quantity.TryParse(text, unit, limits, out var value, out var problem))
        {
            return value;
        }

        state.Add(new SheetProblem(ProblemSeverity.Error, node.Position.Line, node.Position.Column, problem!));
        return null;
    }

    private void Remember(SheetEntry entry) =>
        state.Positions.Add([.. path, entry.Key.Value], entry.Key.Position, entry.Value.Position);
}
