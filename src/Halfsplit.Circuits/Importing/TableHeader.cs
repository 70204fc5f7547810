using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Importing;

/// <summary>The columns of a table by what they hold (<c>data/table-headers.csv</c>), whatever their order, capitals, language and units.</summary>
internal sealed class TableHeader
{
    private static readonly FrozenDictionary<string, string> Words = DataFile.Read("table-headers.csv")
        .ToFrozenDictionary(r => $"{r.Text("table")} {PlainText.Of(r.Text("word"))}", r => r.Text("column"), StringComparer.Ordinal);

    private readonly Dictionary<string, int> _columns = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _units = new(StringComparer.Ordinal);
    private readonly HashSet<int> _nameless = [];
    private readonly int _width;

    /// <param name="others">Keys that stand for themselves where the table has no word for them; null: unknown columns are left out.</param>
    public TableHeader(string table, TableLine line, Func<string, string?>? others = null)
    {
        var (unknown, second) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<string>());
        _width = line.Fields.Length;
        for (var i = 0; i < line.Fields.Length; i++)
        {
            var (words, unit) = WithoutUnit(line.Fields[i]);
            if (words.Length == 0)
            {
                _nameless.Add(i);
                continue;
            }

            var column = Words.GetValueOrDefault($"{table} {PlainText.Of(words)}") ?? others?.Invoke(words);
            if (column is null || !_columns.TryAdd(column, i))
            {
                (column is null ? unknown : second).Add(line.Fields[i].Trim());
                continue;
            }

            _units[column] = unit.Length > 0 ? unit : PlainText.Of(words) is "awg" or "mm2" or "sqmm" ? PlainText.Of(words) : "";
        }

        Unknown = unknown.ToImmutable();
        Second = second.ToImmutable();
    }

    /// <summary>Headers that mean nothing here.</summary>
    public ImmutableArray<string> Unknown { get; }

    /// <summary>Headers that mean the same as one before them.</summary>
    public ImmutableArray<string> Second { get; }

    /// <summary>What the columns hold, in the table's order.</summary>
    public IEnumerable<string> Columns => _columns.OrderBy(c => c.Value).Select(c => c.Key);

    public bool Has(string column) => _columns.ContainsKey(column);

    /// <summary>Numbers, from 1, of columns that no header names and that hold something in one of the rows.</summary>
    public IEnumerable<int> Nameless(IEnumerable<TableLine> rows) => rows
        .SelectMany(r => Enumerable.Range(0, r.Fields.Length).Where(i => (i >= _width || _nameless.Contains(i)) && !string.IsNullOrWhiteSpace(r.Fields[i])))
        .Distinct().Order().Select(i => i + 1);

    /// <summary>Says which columns are not taken, and why.</summary>
    public void TellLeftOut(int line, IEnumerable<TableLine> rows, Action<int, ProblemSeverity, Message> remark)
    {
        foreach (var unknown in Unknown)
        {
            remark(line, ProblemSeverity.Warning, new Message("table.column-left-out", unknown));
        }

        foreach (var second in Second)
        {
            remark(line, ProblemSeverity.Warning, new Message("table.column-second", second));
        }

        foreach (var nameless in Nameless(rows))
        {
            remark(line, ProblemSeverity.Warning, new Message("table.column-nameless", nameless));
        }
    }

    /// <summary>The unit in brackets behind the header; empty where there is none.</summary>
    public string UnitOf(string column) => _units.GetValueOrDefault(column, "");

    /// <summary>The field; empty where the column or the field is missing, or a dash says that it is.</summary>
    public string Of(TableLine line, string column)
    {
        var text = Raw(line, column);
        return text is "-" or "–" or "—" or "?" or "n/a" or "N/A" ? "" : text;
    }

    /// <summary>The field as it is written; empty where the column or the field is missing.</summary>
    public string Raw(TableLine line, string column) =>
        _columns.TryGetValue(column, out var at) && at < line.Fields.Length ? line.Fields[at].Trim() : "";

    /// <summary>"Length [mm]" and "Länge (mm)" without and with their unit.</summary>
    private static (string Words, string Unit) WithoutUnit(string header)
    {
        var text = header.Trim();
        var open = text.LastIndexOfAny(['[', '(']);
        return open > 0 && text[^1] is ']' or ')' ? (text[..open].Trim(), text[(open + 1)..^1].Trim()) : (text, "");
    }
}
