using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Importing;

/// <summary>A row of the table of parts: what a sheet says of a part, by its keys.</summary>
internal sealed record PartRow(int Line, string Part, ImmutableArray<(string Key, SheetNode Value)> Values)
{
    private const string Table = "parts", Names = "part", Kind = "kind";

    public static ImmutableArray<PartRow> Read(ImmutableArray<TableLine> lines, Action<int, ProblemSeverity, Message> remark)
    {
        if (lines.Length == 0)
        {
            return [];
        }

        var header = new TableHeader(Table, lines[0], key => key.Trim());
        if (!header.Has(Names))
        {
            remark(lines[0].Line, ProblemSeverity.Error, new Message("table.no-column", Names, string.Join(", ", lines[0].Fields)));
            return [];
        }

        header.TellLeftOut(lines[0].Line, lines.Skip(1), remark);
        var rows = new Dictionary<string, PartRow>(StringComparer.Ordinal);
        foreach (var line in lines.Skip(1))
        {
            var part = TableEnd.PartName(header.Of(line, Names));
            if (part.Length == 0 || rows.ContainsKey(part))
            {
                remark(line.Line, ProblemSeverity.Error, new Message(part.Length == 0 ? "table.part-nameless" : "table.part-twice", part));
                continue;
            }

            if (!header.Of(line, Names).Contains(part, StringComparison.Ordinal))
            {
                remark(line.Line, ProblemSeverity.Note, new Message("table.renamed", header.Of(line, Names), part));
            }

            var values = header.Columns.Where(c => c != Names && header.Of(line, c).Length > 0)
                .Select(c => (c, Value(c, header.Of(line, c), header.UnitOf(c), line, remark)));
            rows.Add(part, new PartRow(line.Line, part, [.. values]));
        }

        return [.. rows.Values];
    }

    private static SheetNode Value(string key, string text, string unit, TableLine line, Action<int, ProblemSeverity, Message> remark)
    {
        if (text[0] is '{' or '[' && Braced(text) is { } node)
        {
            return node;
        }

        if (key == Kind)
        {
            if (Designators.KindNamed(text) is { } kind)
            {
                return MapWriter.TextNode(kind);
            }

            remark(line.Line, ProblemSeverity.Warning, new Message("table.kind-unread", text));
        }

        return MapWriter.TextNode(unit.Length > 0 && WireColumns.Number(text) is not null ? $"{text} {unit}" : text);
    }

    /// <summary>A map or list as a sheet writes it in one line; null where it can't be read, and so is text.</summary>
    private static SheetNode? Braced(string text)
    {
        var state = new ReadingState(text);
        var node = SheetTreeReader.Read(state);
        return state.ErrorCount == 0 ? node : null;
    }
}
