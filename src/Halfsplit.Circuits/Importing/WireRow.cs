using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Importing;

/// <summary>A row of the table of wires, its values as a sheet writes them.</summary>
/// <param name="Gauge">With the sheet's word before a guess; null where the two terminals touch without a wire.</param>
/// <param name="Length">As the gauge.</param>
internal sealed record WireRow(int Line, TableEnd From, TableEnd To, string? Gauge, string? Length, string? Colour, string? Name, string? Place)
{
    private const string Table = "wires";

    /// <summary>Shorter and longer wires are rather a unit mistaken, or a point between thousands: common practice, no published source.</summary>
    private static readonly ValueRange UsualMetres = new(0.02, 30);

    /// <summary>Reads the rows; what can't be read is remarked and left out.</summary>
    public static ImmutableArray<WireRow> Read(ImmutableArray<TableLine> lines, Action<int, ProblemSeverity, Message> remark)
    {
        if (lines.Length > 0 && !new TableHeader(Table, lines[0]).Columns.Any() && lines[0].Fields.Count(IsEnd) >= 2)
        {
            remark(lines[0].Line, ProblemSeverity.Error, new Message("table.no-header", string.Join(", ", lines[0].Fields)));
            return [];
        }

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

        var all = lines.RemoveAt(0);
        header.TellLeftOut(lines[0].Line, all, remark);
        if (all.Any(r => header.Of(r, "remark").Length > 0))
        {
            remark(lines[0].Line, ProblemSeverity.Note, new Message("table.remarks-left-out"));
        }

        var rows = Once(all, header, remark);
        var gauge = WireColumns.UsualGauge(header.UnitOf("gauge"), Values(rows, header, "gauge"));
        var length = WireColumns.UsualLength(header.UnitOf("length"), Values(rows, header, "length"));
        Usual(rows, header, "gauge", gauge, remark);
        Usual(rows, header, "length", length, remark);
        var names = rows.Select(r => header.Of(r, "wire")).Where(n => n.Length > 0).GroupBy(n => n, StringComparer.Ordinal)
            .Where(g => g.Count() > 1).Select(g => g.Key).ToHashSet(StringComparer.Ordinal);
        return [.. rows.Select(r => Read(r, header, gauge, length, names, remark)).OfType<WireRow>()];
    }

    /// <summary>A field that names a terminal or a part as wires' rows do, and as no header does.</summary>
    private static bool IsEnd(string field) => TableEnd.Parse(field, "") is { } end && Designators.KindOf(end.Part) is not null
        && (end.IsNamed || field.Any(char.IsAsciiDigit) || Designators.PlaceOf(field) is not null);

    /// <summary>
    /// Each wire once: the same values between the same terminals, whichever is named first, are the same wire again. Without
    /// terminals they may as well be two: a fuse that feeds a splice twice, two straps to one ground.
    /// </summary>
    private static ImmutableArray<TableLine> Once(ImmutableArray<TableLine> rows, TableHeader header, Action<int, ProblemSeverity, Message> remark)
    {
        var (seen, ends) = (new Dictionary<string, int>(StringComparer.Ordinal), new Dictionary<string, int>(StringComparer.Ordinal));
        var once = ImmutableArray.CreateBuilder<TableLine>();
        foreach (var row in rows)
        {
            string Words(string end) => $"{PlainText.Spaced(header.Of(row, end))}\u001f{PlainText.Spaced(header.Raw(row, end + " pin"))}";
            var (from, to) = (Words("from"), Words("to"));
            var pair = string.CompareOrdinal(from, to) <= 0 ? $"{from}\u001e{to}" : $"{to}\u001e{from}";
            var whole = string.Join('\u001e', header.Columns.Where(c => c is not ("from" or "to" or "from pin" or "to pin" or "remark"))
                .Select(c => PlainText.Spaced(header.Of(row, c))).Prepend(pair));
            var isCertain = WireColumns.IsDirect(header.Of(row, "gauge"))
                || (End(row, header, "from") is { IsNamed: true } && End(row, header, "to") is { IsNamed: true });
            if (!seen.TryAdd(whole, row.Line) && isCertain)
            {
                remark(row.Line, ProblemSeverity.Warning, new Message("table.row-twice", seen[whole]));
                continue;
            }

            if (!ends.TryAdd(pair, row.Line) && header.Of(row, "from").Length > 0)
            {
                remark(row.Line, ProblemSeverity.Warning, new Message("table.row-beside", ends[pair]));
            }

            once.Add(row);
        }

        return once.ToImmutable();
    }

    /// <summary>Says in which unit the numbers without one were taken, where neither the header nor the cell says it.</summary>
    private static void Usual(ImmutableArray<TableLine> rows, TableHeader header, string column, string unit, Action<int, ProblemSeverity, Message> remark)
    {
        if (header.UnitOf(column).Length == 0 && Values(rows, header, column).Any(v => WireColumns.Number(v) is not null))
        {
            remark(0, ProblemSeverity.Warning, new Message($"table.usual-{column}", unit));
        }
    }

    /// <summary>The cells of a column without a word for a guess.</summary>
    private static IEnumerable<string> Values(ImmutableArray<TableLine> rows, TableHeader header, string column) =>
        rows.Select(r => EverydayWords.Guess(header.Of(r, column)).Value);

    private static WireRow? Read(
        TableLine line, TableHeader header, string usualGauge, string usualLength, HashSet<string> twice, Action<int, ProblemSeverity, Message> remark)
    {
        void Say(ProblemSeverity severity, string code, params object[] arguments) => remark(line.Line, severity, new Message(code, arguments));
        var (fromText, toText) = (header.Of(line, "from"), header.Of(line, "to"));
        if (End(line, header, "from") is not { } from || End(line, header, "to") is not { } to)
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
            var lost = ((string[])["length", "colour", "wire", "place"]).Select(c => header.Of(line, c)).Where(c => c.Length > 0).ToList();
            if (lost.Count > 0)
            {
                Say(ProblemSeverity.Warning, "table.direct-left-out", string.Join(", ", lost));
            }

            return new WireRow(line.Line, from, to, null, null, null, null, null);
        }

        var (gaugeGuessed, said) = EverydayWords.Guess(cell);
        var gauge = cell.Length == 0 ? null : WireColumns.Gauge(said, usualGauge);
        if (gauge is null)
        {
            Say(ProblemSeverity.Warning, cell.Length == 0 ? "table.gauge-missing" : "table.gauge-unread", Assumed("gauge"), cell);
        }

        cell = header.Of(line, "length");
        (var lengthGuessed, said) = EverydayWords.Guess(cell);
        var length = cell.Length == 0 ? null : WireColumns.Length(said, usualLength);
        if (length is null)
        {
            Say(ProblemSeverity.Warning, cell.Length == 0 ? "table.length-missing" : "table.length-unread", Assumed("length"), cell);
        }
        else if (Quantity.TryParse(length, Unit.Metre, Limits.Metres, out var metres, out _) && !UsualMetres.Contains(metres))
        {
            Say(ProblemSeverity.Warning, "table.length-odd", length, cell);
        }

        cell = header.Of(line, "colour");
        var colour = cell.Length == 0 ? null : WireColours.Spelled(cell);
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
        if (place is null && cell.Length > 0)
        {
            Say(ProblemSeverity.Warning, "table.place-left-out", cell);
        }

        return new WireRow(
            line.Line, from, to, WireText.Said(gauge ?? Assumed("gauge"), gaugeGuessed || gauge is null),
            WireText.Said(length ?? Assumed("length"), lengthGuessed || length is null), colour, name, place);
    }

    /// <summary>A dash in a column of terminals is told apart when all rows are known.</summary>
    private static TableEnd? End(TableLine line, TableHeader header, string end)
    {
        var text = header.Of(line, end);
        return TableEnd.Parse(text, header.Of(line, end + " pin")) is not { } parsed ? null
            : header.Raw(line, end + " pin") == "-" && parsed.Terminal is null && Designators.PlaceOf(text) is null
                ? parsed with { Terminal = "-", IsDash = true }
                : parsed;
    }

    private static string Assumed(string key) => AssumedValues.Of("wire").Single(v => v.Key == key).Value;
}
