namespace Halfsplit.Circuits.Sheets;

/// <summary>A place in a text; lines and columns from 1, both 0 if unknown.</summary>
public readonly record struct SheetPosition(int Line, int Column);

/// <summary>
/// Where the pieces of a sheet stand, by their path of keys: ("parts", "F1", "rating"), ("wiring", "3", "2").
/// A piece that is not in the text (a default) has the position of what it belongs to.
/// </summary>
public sealed class SheetPositions
{
    private readonly Dictionary<string, SheetPosition> _keys = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SheetPosition> _values = new(StringComparer.Ordinal);

    internal SheetPositions() { }

    /// <summary>Positions of a circuit that was not read from a text.</summary>
    public static SheetPositions None { get; } = new();

    /// <summary>Where the key stands, or the nearest key above it.</summary>
    public SheetPosition OfKey(params ReadOnlySpan<string> path) => Find(_keys, path) ?? default;

    /// <summary>Where the value behind the key stands, or the nearest key above it.</summary>
    public SheetPosition OfValue(params ReadOnlySpan<string> path) =>
        _values.TryGetValue(Join(path), out var value) ? value : OfKey(path);

    internal void Add(ReadOnlySpan<string> path, SheetPosition key, SheetPosition value)
    {
        var name = Join(path);
        _keys[name] = key;
        _values[name] = value;
    }

    private static SheetPosition? Find(Dictionary<string, SheetPosition> from, ReadOnlySpan<string> path)
    {
        for (; path.Length > 0; path = path[..^1])
        {
            if (from.TryGetValue(Join(path), out var found))
            {
                return found;
            }
        }

        return null;
    }

    private static string Join(ReadOnlySpan<string> path) => string.Join('\n', path);
}
