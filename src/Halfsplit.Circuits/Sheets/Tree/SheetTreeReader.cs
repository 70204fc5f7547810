using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Halfsplit.Circuits.Sheets.Tree;

/// <summary>
/// Turns a sheet's YAML into a tree that knows its positions. Reads events, never objects, and stops at the limits of
/// <see cref="SheetLimits"/>; anchors, aliases and tags are refused, so nothing can grow beyond its own text.
/// </summary>
internal sealed class SheetTreeReader
{
    private readonly ReadingState _state;
    private readonly Parser _parser;
    private int _nodes;
    private bool _stopped;

    private SheetTreeReader(ReadingState state)
    {
        _state = state;
        _parser = new Parser(new StringReader(state.Text));
    }

    /// <summary>The tree, as far as it could be read; null if there is none. Problems go to the state.</summary>
    public static SheetNode? Read(ReadingState state)
    {
        if (state.Text.Length > SheetLimits.Characters)
        {
            state.Error(new SheetPosition(1, 1), "sheet.too-long", SheetLimits.Characters);
            return null;
        }

        if (BadCharacter(state.Text) is { } bad)
        {
            state.Error(bad, "sheet.bad-character");
            return null;
        }

        return new SheetTreeReader(state).Document();
    }

    /// <summary>The first half of a character pair that stands alone, as in a file that is no UTF-8.</summary>
    private static SheetPosition? BadCharacter(string text)
    {
        var (line, column) = (1, 1);
        for (var i = 0; i < text.Length; i++, column++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (char.IsSurrogate(text[i]) || text[i] == '\0')
            {
                return new SheetPosition(line, column);
            }
            else if (text[i] == '\n')
            {
                (line, column) = (line + 1, 0);
            }
        }

        return null;
    }

    /// <summary>Goes to the next event; false at the end, or where the text is no YAML.</summary>
    private bool Advance()
    {
        if (_stopped)
        {
            return false;
        }

        try
        {
            return _parser.MoveNext();
        }
        catch (YamlException e)
        {
            if (TabBefore(e) is { } tab)
            {
                _state.Error(tab, "sheet.tab");
            }
            else
            {
                _state.Error(At(e.Start), "sheet.yaml", Reason(e));
            }
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException)
        {
            // The parser loses its footing on some broken texts instead of saying so.
            _state.Error(At(_parser.Current?.End ?? Mark.Empty), "sheet.yaml", "this cannot stand here");
        }

        _stopped = true;
        return false;
    }

    /// <summary>
    /// The tab in a line's indentation that the parser stumbled on, of which it only says where the text around it begins; null
    /// where it was something else.
    /// </summary>
    private SheetPosition? TabBefore(YamlException e)
    {
        var saysTab = Reason(e).Contains("tab", StringComparison.Ordinal);
        var line = 0;
        foreach (var text in _state.Text.AsSpan().EnumerateLines())
        {
            line++;
            var tab = text[..(text.Length - text.TrimStart().Length)].IndexOf('\t');
            if (tab >= 0 && !text.IsWhiteSpace() && (saysTab || e.Start.Line - line is 0 or 1))
            {
                return new SheetPosition(line, tab + 1);
            }
        }

        return null;
    }

    private SheetNode? Document()
    {
        SheetNode? tree = null;
        while (Advance())
        {
            switch (_parser.Current)
            {
                case StreamStart or StreamEnd or DocumentStart or DocumentEnd:
                    break;
                case { } start when tree is not null:
                    _state.Error(At(start.Start), "sheet.two-documents");
                    return null;
                default:
                    tree = Node(depth: 0);
                    break;
            }
        }

        return _stopped ? null : tree;
    }

    /// <summary>Reads the node the parser stands on.</summary>
    private SheetNode? Node(int depth)
    {
        var start = _parser.Current!;
        var at = At(start.Start);
        if (++_nodes > SheetLimits.Nodes)
        {
            return Stop(at, "sheet.too-many", SheetLimits.Nodes);
        }

        if (start is AnchorAlias)
        {
            _state.Error(at, "sheet.alias");
            return null;
        }

        if (start is NodeEvent node)
        {
            if (!node.Anchor.IsEmpty)
            {
                _state.Error(at, "sheet.anchor");
            }

            if (!node.Tag.IsEmpty && !node.Tag.IsNonSpecific)
            {
                _state.Error(at, "sheet.tag", node.Tag.Value);
            }
        }

        if (start is MappingStart or SequenceStart && depth >= SheetLimits.Depth)
        {
            return Stop(at, "sheet.too-deep", SheetLimits.Depth);
        }

        return start switch
        {
            Scalar scalar => new SheetText(at, scalar.Value, (int)scalar.Start.Index, (int)scalar.End.Index),
            SequenceStart => List(at, depth),
            MappingStart => Map(at, depth),
            _ => null,
        };
    }

    private SheetList List(SheetPosition at, int depth)
    {
        var items = new List<SheetNode>();
        while (Advance() && _parser.Current is not SequenceEnd)
        {
            if (Node(depth + 1) is { } item)
            {
                items.Add(item);
            }
        }

        return new SheetList(at, items);
    }

    private SheetMap Map(SheetPosition at, int depth)
    {
        var entries = new List<SheetEntry>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        while (Advance() && _parser.Current is not MappingEnd)
        {
            var key = Node(depth + 1);
            if (!Advance())
            {
                break;
            }

            var value = Node(depth + 1);
            if (key is not SheetText name)
            {
                if (key is not null)
                {
                    _state.Error(key, "sheet.key-not-text");
                }
            }
            else if (!seen.TryAdd(name.Value, name.Position.Line))
            {
                _state.Error(name, "sheet.duplicate-key", name.Value, seen[name.Value]);
            }
            else if (value is not null)
            {
                entries.Add(new SheetEntry(name, value));
            }
        }

        return new SheetMap(at, entries);
    }

    private SheetNode? Stop(SheetPosition at, string code, int limit)
    {
        _state.Error(at, code, limit);
        _stopped = true;
        return null;
    }

    private static SheetPosition At(Mark mark) => new((int)mark.Line, (int)mark.Column);

    /// <summary>The parser's words without the position that stands before them.</summary>
    private static string Reason(YamlException e)
    {
        var text = e.InnerException?.Message ?? e.Message;
        var behind = text.LastIndexOf("): ", StringComparison.Ordinal);
        return (behind < 0 ? text : text[(behind + 3)..]).TrimEnd('.');
    }
}
