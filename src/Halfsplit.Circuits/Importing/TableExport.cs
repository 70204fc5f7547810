using System.Text;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Importing;

/// <summary>Writes a circuit as plain tables that <see cref="TableImport"/> and any spreadsheet read.</summary>
public static class TableExport
{
    private const string Direct = "direct";

    /// <summary>A row for each wire; then one for each pair of terminals that touch without a wire, its gauge "direct".</summary>
    public static string Wires(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var text = new StringBuilder();
        Row(text, ["from", "to", "gauge", "colour", "length", "wire", "place"]);
        foreach (var wire in circuit.Wires)
        {
            Row(text,
            [
                wire.From.ToString(), wire.To.ToString(),
                WireText.Gauge(wire.Spec), wire.Spec.Colour ?? "", WireText.Length(wire.Spec), wire.Spec.Name ?? "", wire.Spec.Place ?? "",
            ]);
        }

        foreach (var joint in circuit.Joints)
        {
            Row(text, [joint.First.ToString(), joint.Second.ToString(), Direct, "", "", "", ""]);
        }

        return text.ToString();
    }

    /// <summary>A row for each part, a column for each key that any of them has in a sheet.</summary>
    public static string Parts(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var parts = SheetWriter.PartMaps(circuit);
        var keys = parts.SelectMany(p => p.Map.Entries.Select(e => e.Key.Value)).Distinct(StringComparer.Ordinal).ToList();
        var text = new StringBuilder();
        Row(text, ["part", .. keys]);
        foreach (var (id, map) in parts)
        {
            Row(text, [id, .. keys.Select(k => map.Entries.FirstOrDefault(e => e.Key.Value == k).Value is { } value ? SheetPrinter.Cell(value) : "")]);
        }

        return text.ToString();
    }

    private static void Row(StringBuilder text, IEnumerable<string> fields) =>
        text.AppendJoin(',', fields.Select(f => TableText.Write(f, ','))).Append('\n');
}
