using System.Globalization;
using System.Text;

namespace Halfsplit.Circuits.Sheets.Tree;

/// <summary>
/// Writes a tree as YAML: one line in braces or brackets where it fits, else one line per key; the top two levels
/// always line by line.
/// </summary>
internal static class SheetPrinter
{
    private const int Width = 118;

    public static string Print(SheetMap top)
    {
        var text = new StringBuilder();
        foreach (var entry in top.Entries)
        {
            Entry(text, entry, indent: 0, open: 2);
        }

        return text.ToString();
    }

    /// <param name="open">How many levels from here are written line by line even if they would fit.</param>
    private static void Entry(StringBuilder text, SheetEntry entry, int indent, int open)
    {
        text.Append(' ', indent).Append(Scalar(entry.Key.Value)).Append(':');
        var line = Flow(entry.Value);
        var fits = indent + entry.Key.Value.Length + line.Length + 2 <= Width;
        switch (entry.Value)
        {
            case SheetMap { Entries.Count: > 0 } map when open > 1 || !fits:
                text.Append('\n');
                foreach (var inner in map.Entries)
                {
                    Entry(text, inner, indent + 2, open - 1);
                }

                break;
            case SheetList { Items.Count: > 0 } list when (open > 1 && indent == 0 && entry.Key.Value == "wiring") || !fits:
                text.Append('\n');
                foreach (var item in list.Items)
                {
                    text.Append(' ', indent + 2).Append("- ").Append(Flow(item, inFlow: false)).Append('\n');
                }

                break;
            default:
                text.Append(' ').Append(entry.Value is SheetText scalar ? Scalar(scalar.Value, inFlow: false) : line).Append('\n');
                break;
        }
    }

    /// <summary>A value alone: a text as it is, a map or list in one line.</summary>
    public static string Cell(SheetNode node) => node is SheetText text ? text.Value : Flow(node);

    /// <summary>A value in one line.</summary>
    public static string Flow(SheetNode node, bool inFlow = true) => node switch
    {
        SheetText scalar => Scalar(scalar.Value, inFlow),
        SheetList list => $"[{string.Join(", ", list.Items.Select(i => Flow(i)))}]",
        SheetMap { Entries.Count: 0 } => "{}",
        SheetMap map => $"{{ {string.Join(", ", map.Entries.Select(e => $"{Scalar(e.Key.Value)}: {Flow(e.Value)}"))} }}",
        _ => throw new InvalidOperationException("A sheet's tree has texts, lists and maps only."),
    };

    /// <summary>The text plain if no reader could take it for something else, in double quotes otherwise.</summary>
    private static string Scalar(string text, bool inFlow = true)
    {
        if (IsPlain(text, inFlow))
        {
            return text;
        }

        var quoted = new StringBuilder("\"");
        foreach (var c in text)
        {
            _ = c switch
            {
                '"' or '\\' => quoted.Append('\\').Append(c),
                '\n' => quoted.Append("\\n"),
                '\t' => quoted.Append("\\t"),
                _ when char.IsControl(c) || c is '\ufeff' or '\u2028' or '\u2029' || char.IsSurrogate(c) || c > '\ufffd' =>
                    quoted.Append("\\u").Append(((int)c).ToString("x4", CultureInfo.InvariantCulture)),
                _ => quoted.Append(c),
            };
        }

        return quoted.Append('"').ToString();
    }

    private static bool IsPlain(string text, bool inFlow)
    {
        if (text.Length == 0 || text[^1] is ' ' or ':' || !(char.IsLetterOrDigit(text[0]) || text[0] == '.'))
        {
            return false;
        }

        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            var ok = char.IsLetterOrDigit(c)
                || (c == ' ' && text[i + 1] is not ' ' and not '#')
                || c is '.' or '_' or '+' or '-' or '/' or '%' or '>' or '~' or '(' or ')' or '\u00b0' or '\u00b2' or ';' or '\''
                || (!inFlow && c == ',');
            if (!ok || char.IsSurrogate(c))
            {
                return false;
            }
        }

        return true;
    }
}
