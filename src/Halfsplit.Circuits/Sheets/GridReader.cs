using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets;

/// <summary>Reads how the slots of a box lie: rows of names with spaces between.</summary>
internal static class GridReader
{
    private const string Example = "rows: [A1 A2 A3, B1 . B3]";

    /// <returns>Null with a problem where there are no rows.</returns>
    public static BoxGrid? Read(MapReader map)
    {
        var seen = map.Text("seen");
        if (map.Entry("rows") is not { } entry)
        {
            map.Missing("rows", Example);
            map.Finish();
            return null;
        }

        var rows = map.Texts("rows").Select(Cells).ToImmutableArray();
        map.Finish();
        if (rows.Length is 0 or > BoxGrid.Most || rows.Any(r => r.Length > BoxGrid.Most))
        {
            map.State.Error(entry.Value, "sheet.grid-size", BoxGrid.Most, Example);
            return null;
        }

        var grid = new BoxGrid(rows, seen);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var twice in grid.Named().Where(n => !names.Add(n)).Distinct(StringComparer.Ordinal))
        {
            map.State.Error(entry.Value, "sheet.grid-slot-twice", twice);
        }

        if (names.Count == 0)
        {
            map.State.Error(entry.Value, "sheet.grid-no-slot", Example);
        }

        return grid;
    }

    private static ImmutableArray<string> Cells(string row) =>
        [.. row.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];
}
