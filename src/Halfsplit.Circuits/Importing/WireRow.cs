using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Importing;

/// <summary>A row of the table of wires, its values as a sheet writes them.</summary>
/// <param name="Gauge">Null where the two terminals touch without a wire.</param>
internal sealed record WireRow(int Line, TableEnd From, TableEnd To, string? Gauge, string? Length, string? Colour, string? Name, string? Place)
{
    private const string Table = "wires";

    /// <summary>Shorter and longer wires are rather a unit mistaken, or a point between thousands: common practice, no published source.</summary>
    private static readonly ValueRange UsualMetres = new(0.02, 30);

    /// <summary>Reads the rows; what can't be read is remarked and left out.</summary>
    public static ImmutableArray<WireRow> Read(ImmutableArray<TableLine> lines, Action<int, ProblemSeverity, Message> remark)
    {
        if (lines.Length <= 1)
        {
            remark(0, ProblemSeverity.Error, new Message("table.empty"));
            return [];
        }

        var header = new TableHeader(Table, lines[0]);
        foreach (var column in (string[])["from", "to"])
        {
            if (!header.Has(column))
            {
                remark(lines[0].Line, ProblemSeverity.Error, new Message("table.no-column", column, string.Join(", ", lines[0].Fields)));
            }
        }

        if (!header.Has("from") || !header.Has("to"))
        {
            return [];
        }

        foreach (var unknown in header.Unknown)
        {
            remark(lines[0].Line, ProblemSeverity.Note, new Message("table.column-left-out", unknown));
        }

        var rows = lines.RemoveAt(0);
        var gauge = WireColumns.UsualGauge(header.UnitOf("gauge"), rows.Select(r => header.Of(r, "gauge")));
        var length = WireColumns.UsualLength(header.UnitOf("length"), rows.Select(r => header.Of(r, "length")));
        Usual(rows, header, "gauge", gauge, remark);
        Usual(rows, header, "length", length, remark);
        var names = rows.Select(r => header.Of(r, "wire")).Where(n => n.Length > 0).GroupBy(n => n, StringComparer.Ordinal)
            .Where(g => g.Count() > 1).Select(g => g.Key).ToHashSet(StringComparer.Ordinal);
        return [.. rows.Select(r => Read(r, header, gauge, length, names, remark)).OfType<WireRow>()];
    }

    /// <summary>Says in which unit the numbers without one were taken, where neither the header nor the cell says it.</summary>
    private static void Usual(ImmutableArray<TableLine> rows, TableHeader header, string column, string unit, Action<int, ProblemSeverity, Message> remark)
    {
        if (header.UnitOf(column).Length == 0 && rows.Any(r => WireColumns.Number(header.Of(r, column)) is not null))
        {
            remark(0, ProblemSeverity.Warning, new Message($"table.usual-{column}", unit));
        }
    }

    private static WireRow? Read(
        TableLine line, TableHeader header, string usualGauge, string usualLength, HashSet<string> twice, Action<int, ProblemSeverity, Message> remark)
    {
        void Say(ProblemSeverity severity, string code, params object[] arguments) => remark(line.Line, severity, new Message(code, arguments));
        var (fromText, toText) = (header.Of(line, "from"), header.Of(line, "to"));
        if (TableEnd.Parse(fromText, header.Of(line, "from pin")) is not { } from || TableEnd.Parse(toText, header.Of(line, "to pin")) is not { } to)
        {
            Say(ProblemSeverity.Error, "table.no-end", fromText, toText);
            return null;
        }

        foreach (var (text, end) in ((string, TableEnd)[])[(fromText, from), (toText, to)])
        {
            if (!text.Contains(end.Part, StringComparison.Ordinal) && Designators.PlaceOf(text) is null)
            {
                Say(ProblemSeverity.Note, "table.renamed", text, end.Part);
            }
        }

        var cell = header.Of(line, "gauge");
        if (WireColumns.IsDirect(cell))
        {
            return new WireRow(line.Line, from, to, null, null, null, null, null);
        }

        var gauge = cell.Length == 0 ? null : WireColumns.Gauge(cell, usualGauge);
        if (gauge is null)
        {
            Say(ProblemSeverity.Warning, cell.Length == 0 ? "table.gauge-missing" : "table.gauge-unread", Assumed("gauge"), cell);
        }

        cell = header.Of(line, "length");
        var length = cell.Length == 0 ? null : WireColumns.Length(cell, usualLength);
        if (length is null)
        {
            Say(ProblemSeverity.Warning, cell.Length == 0 ? "table.length-missing" : "table.length-unread", Assumed("length"), cell);
        }

        else if (Quantity.TryParse(length, Unit.Metre, Limits.Metres, out var metres, out _) && !UsualMetres.Contains(metres))
        {
            Say(ProblemSeverity.Warning, "table.length-odd", length, cell);
        }

        cell = header.Of(line, "colour");
        var colour = cell.Length == 0 ? null : WireColumns.Colour(cell);
        if (colour is null && cell.Length > 0)
        {
            Say(ProblemSeverity.Warning, "table.colour-unread", cell);
        }

        cell = header.Of(line, "wire");
        var name = cell.Length > 0 && SheetNames.IsTerminal(cell) && !twice.Contains(cell) ? cell : null;
        if (name is null && cell.Length > 0)
        {
            Say(ProblemSeverity.Note, "table.wire-name-left-out", cell);
        }

        cell = string.Join(' ', header.Of(line, "place").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        var place = cell.Length > 0 && !cell.Contains("->", StringComparison.Ordinal) ? cell : null;
        return new WireRow(line.Line, from, to, gauge ?? Assumed("gauge"), length ?? Assumed("length"), colour, name, place);
    }

    private static string Assumed(string key) => AssumedValues.Of("wire").Single(v => v.Key == key).Value;
}
