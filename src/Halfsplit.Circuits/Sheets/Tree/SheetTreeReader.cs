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

        try
        {
            return new SheetTreeReader(state).Document();
        }
        catch (YamlException e)
        {
            state.Error(At(e.Start), "sheet.yaml", Reason(e));
            return null;
        }
    }

    private SheetNode? Document()
    {
        SheetNode? tree = null;
        while (!_stopped && _parser.MoveNext())
        {
            switch (_parser.Current)
            {
                case StreamStart or StreamEnd or DocumentStart or DocumentEnd:
                    break;
                case { } start when tree is not null:
                    _state.Error(At(start.Start), "sheet.two-documents");
                    return tree;
                default:
                    tree = Node(depth: 0);
                    break;
            }
        }

        return tree;
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
        while (!_stopped && _parser.MoveNext() && _parser.Current is not SequenceEnd)
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
        while (!_stopped && _parser.MoveNext() && _parser.Current is not MappingEnd)
        {
            var key = Node(depth + 1);
            if (_stopped || !_parser.MoveNext())
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
