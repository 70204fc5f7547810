using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Sheets;

/// <summary>
/// Finds which half of a connector is b where the sheet does not say: the half that sits on a part, when the other
/// has a wire, as in <c>wire 2.5mm2 4.2m YE -> C3.4 -> M1.pos</c>. Between two wires the sheet has to say it.
/// </summary>
internal static class ConnectorSides
{
    public static ImmutableArray<Part> Complete(ImmutableArray<Part> parts, ImmutableArray<WiringPath> paths)
    {
        // A part that doesn't exist is said where the wiring names it, and not once more as the connector's.
        var known = parts.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        var sides = new Dictionary<string, SortedSet<string>>(StringComparer.Ordinal);
        foreach (var connector in parts.OfType<Connector>().Where(c => c.BelongsToB.IsEmpty))
        {
            sides.Add(connector.Id, new SortedSet<string>(StringComparer.Ordinal));
        }

        foreach (var path in paths)
        {
            for (var i = 0; i < path.Items.Length; i++)
            {
                if (path.Items[i] is PathPart point && sides.TryGetValue(point.Part, out var found)
                    && SittingOn(path.Items, i, sides) is { } part && known.Contains(part))
                {
                    found.Add(part);
                }
            }
        }

        return [.. parts.Select(p => p is Connector c && sides.TryGetValue(c.Id, out var found) && found.Count > 0
            ? c with { BelongsToB = [.. found] }
            : p)];
    }

    private static string? SittingOn(ImmutableArray<PathItem> items, int i, Dictionary<string, SortedSet<string>> sides)
    {
        var before = i > 0 ? items[i - 1] : null;
        var after = i + 1 < items.Length ? items[i + 1] : null;
        var part = (before, after) switch
        {
            (PathWire, PathPart next) => next.Part,
            (PathPart previous, PathWire) => previous.Part,
            _ => null,
        };
        return part is null || sides.ContainsKey(part) ? null : part;
    }
}
