using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Circuits.Importing;

/// <summary>The columns of a table by what they hold (<c>data/table-headers.csv</c>), whatever their order, capitals, language and units.</summary>
internal sealed class TableHeader
{
    private static readonly FrozenDictionary<string, string> Words = DataFile.Read("table-headers.csv")
        .ToFrozenDictionary(r => $"{r.Text("table")} {Plain(r.Text("word"))}", r => r.Text("column"), StringComparer.Ordinal);

    private readonly Dictionary<string, int> _columns = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _units = new(StringComparer.Ordinal);

    /// <param name="others">Keys that stand for themselves where the table has no word for them; null: unknown columns are left out.</param>
    public TableHeader(string table, TableLine line, Func<string, string?>? others = null)
    {
        var unknown = ImmutableArray.CreateBuilder<string>();
        for (var i = 0; i < line.Fields.Length; i++)
        {
            var (words, unit) = WithoutUnit(line.Fields[i]);
            if (words.Length == 0)
            {
                continue;
            }

            var column = Words.GetValueOrDefault($"{table} {Plain(words)}") ?? others?.Invoke(words);
            if (column is null || !_columns.TryAdd(column, i))
            {
                unknown.Add(line.Fields[i].Trim());
                continue;
            }

            _units[column] = unit.Length > 0 ? unit : Plain(words) is "awg" or "mm2" or "sqmm" ? Plain(words) : "";
        }

        Unknown = unknown.ToImmutable();
    }

    /// <summary>Headers that mean nothing here, or the same as one before them.</summary>
    public ImmutableArray<string> Unknown { get; }

    /// <summary>What the columns hold, in the table's order.</summary>
    public IEnumerable<string> Columns => _columns.OrderBy(c => c.Value).Select(c => c.Key);

    public bool Has(string column) => _columns.ContainsKey(column);

    /// <summary>The unit in brackets behind the header; empty where there is none.</summary>
    public string UnitOf(string column) => _units.GetValueOrDefault(column, "");

    /// <summary>The field; empty where the column or the field is missing, or a dash says that it is.</summary>
    public string Of(TableLine line, string column)
    {
        var text = _columns.TryGetValue(column, out var at) && at < line.Fields.Length ? line.Fields[at].Trim() : "";
        return text is "-" or "–" or "—" or "?" or "n/a" or "N/A" ? "" : text;
    }

    /// <summary>Small letters and digits, words with single spaces, accents kept apart from nothing.</summary>
    internal static string Plain(string text)
    {
        var plain = new StringBuilder();
        // Half a character pair, as in a file that is no UTF-8, can't be taken apart into letter and accent.
        var whole = string.Concat(text.Where(c => !char.IsSurrogate(c)));
        foreach (var c in whole.Replace("²", "2", StringComparison.Ordinal).ToLowerInvariant().Normalize(NormalizationForm.FormD))
        {
            if (char.IsLetterOrDigit(c))
            {
                plain.Append(c == 'ß' ? "ss" : c);
            }
            else if (CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark && plain.Length > 0 && plain[^1] != ' ')
            {
                plain.Append(' ');
            }
        }

        return plain.ToString().Trim();
    }

    /// <summary>"Length [mm]" and "Länge (mm)" without and with their unit.</summary>
    private static (string Words, string Unit) WithoutUnit(string header)
    {
        var text = header.Trim();
        var open = text.LastIndexOfAny(['[', '(']);
        return open > 0 && text[^1] is ']' or ')' ? (text[..open].Trim(), text[(open + 1)..^1].Trim()) : (text, "");
    }
}
