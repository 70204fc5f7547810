using System.Collections.Immutable;
using System.Text;

namespace Halfsplit.Circuits.Data;

/// <summary>One line of a table.</summary>
/// <param name="Line">Where it begins in the text, from 1.</param>
/// <param name="Fields">As written, quotes taken off.</param>
public sealed record TableLine(int Line, ImmutableArray<string> Fields);

/// <summary>
/// Reads tables with a separator between the fields: comma, semicolon or tab. A field in double quotes may hold separators, line ends
/// and, doubled, quotes. Never throws on what a text says: a quote that is never closed ends with the text.
/// </summary>
public static class TableText
{
    private static readonly char[] Separators = [';', '\t', ','];

    /// <summary>The line that some spreadsheets put first to say the separator, as <c>sep=;</c>.</summary>
    private const string Says = "sep=";

    /// <summary>Every line that is not blank, by the separator that a first line <c>sep=;</c> says, else by the one that the first of them uses most.</summary>
    public static ImmutableArray<TableLine> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return SaidSeparator(text) is { } said ? Read(text, said).RemoveAt(0) : Read(text, SeparatorOf(text));
    }

    /// <summary>Every line that is not blank.</summary>
    public static ImmutableArray<TableLine> Read(string text, char separator)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = ImmutableArray.CreateBuilder<TableLine>();
        var fields = ImmutableArray.CreateBuilder<string>();
        var field = new StringBuilder();
        var (line, begun, quoted) = (1, 1, false);
        for (var i = Beginning(text); i < text.Length; i++)
        {
            var c = text[i];
            if (c == '\n')
            {
                line++;
            }

            if (c == '"' && quoted && i + 1 < text.Length && text[i + 1] == '"')
            {
                field.Append('"');
                i++;
            }
            else if (c == '"' && (quoted || string.IsNullOrWhiteSpace(field.ToString())))
            {
                quoted = !quoted;
                field.Length = quoted ? 0 : field.Length;
            }
            else if (quoted)
            {
                field.Append(c);
            }
            else if (c == separator)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else if (c is '\n' or '\r')
            {
                if (c == '\n' || i + 1 >= text.Length || text[i + 1] != '\n')
                {
                    End();
                    begun = line;
                }
            }
            else
            {
                field.Append(c);
            }
        }

        End();
        return lines.ToImmutable();

        void End()
        {
            fields.Add(field.ToString());
            field.Clear();
            if (fields.Any(f => !string.IsNullOrWhiteSpace(f)))
            {
                lines.Add(new TableLine(begun, fields.ToImmutable()));
            }

            fields.Clear();
        }
    }

    /// <summary>A field as it can stand in a table with this separator.</summary>
    public static string Write(string field, char separator)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.Length > 0 && field.All(c => c != separator && c is not ('"' or '\n' or '\r')) && field.Trim() == field
            ? field
            : field.Length == 0 ? "" : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    private static char? SaidSeparator(string text)
    {
        var first = text.AsSpan(Beginning(text));
        first = first[..(first.IndexOfAny('\n', '\r') is var end and >= 0 ? end : first.Length)].Trim(" \"");
        return first.Length == Says.Length + 1 && first.StartsWith(Says, StringComparison.OrdinalIgnoreCase) && Separators.Contains(first[^1]) ? first[^1] : null;
    }

    private static char SeparatorOf(string text)
    {
        var counts = new int[Separators.Length];
        var quoted = false;
        var any = false;
        for (var i = Beginning(text); i < text.Length && !(any && !quoted && text[i] is '\n' or '\r'); i++)
        {
            quoted ^= text[i] == '"';
            any |= !char.IsWhiteSpace(text[i]);
            if (!quoted && Array.IndexOf(Separators, text[i]) is var at and >= 0)
            {
                counts[at]++;
            }
        }

        return Separators[Array.IndexOf(counts, counts.Max())];
    }

    /// <summary>Behind the mark that some programs put before UTF-8.</summary>
    private static int Beginning(string text) => text.Length > 0 && text[0] == '\ufeff' ? 1 : 0;
}
