using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Circuits.Shelf;

/// <summary>
/// What is on the shelf (<c>data/shelf.csv</c>, <c>data/shelf-systems.csv</c>). Reading every sheet to show a list would make a
/// phone wait; a test compares these tables with the sheets.
/// </summary>
public static class CircuitShelf
{
    /// <summary>Every complaint, by system in the table's order, then as the sheets have them.</summary>
    public static ImmutableArray<ShelvedComplaint> Complaints { get; } = Read();

    /// <summary>Codes of the systems, in the order in which they are shown.</summary>
    public static ImmutableArray<string> Systems { get; } = [.. Complaints.Select(c => c.Sheet.System).Distinct()];

    private static ImmutableArray<ShelvedComplaint> Read()
    {
        var rows = DataFile.Read("shelf.csv").ToLookup(r => r.Text("sheet"), StringComparer.Ordinal);
        var complaints = ImmutableArray.CreateBuilder<ShelvedComplaint>();
        foreach (var filed in DataFile.Read("shelf-systems.csv"))
        {
            ShelvedSheet? sheet = null;
            foreach (var row in rows[filed.Text("sheet")])
            {
                sheet ??= new ShelvedSheet(
                    filed.Text("sheet"), filed.Text("system"), int.Parse(row.Text("volts"), CultureInfo.InvariantCulture),
                    row.Text("title"), row.Text("summary"), Words(filed.Text("words")));
                complaints.Add(new ShelvedComplaint(sheet, row.Text("complaint"), row.Text("load"), [.. Words(row.Text("fuses")).Select(Fuse)]));
            }
        }

        return complaints.ToImmutable();
    }

    private static ShelvedFuse Fuse(string text) => text.Split('=') is [var id, var amps] ? new ShelvedFuse(id, amps) : throw new FormatException(text);

    private static ImmutableArray<string> Words(string text) => [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
}
