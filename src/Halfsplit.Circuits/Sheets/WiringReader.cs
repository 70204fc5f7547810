using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets;

/// <summary>Reads the wiring: a list of paths, each a line of items with arrows between.</summary>
internal static class WiringReader
{
    private const string Arrow = "->";

    /// <summary>What is written for an arrow elsewhere.</summary>
    private static readonly string[] OtherArrows = ["=>", "→", "⇒", "–>", "—>"];

    /// <summary>The paths that could be read; the problems of the others go to the state.</summary>
    /// <param name="list">The value of <c>wiring:</c>.</param>
    public static ImmutableArray<WiringPath> Read(SheetList list, ReadingState state)
    {
        var paths = ImmutableArray.CreateBuilder<WiringPath>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        if (list.Items.Count > SheetLimits.Paths)
        {
            state.Error(list, "sheet.too-many-of", "wiring", SheetLimits.Paths);
        }

        var total = 0;
        for (var i = 0; i < list.Items.Count && i < SheetLimits.Paths; i++)
        {
            if (total > SheetLimits.AllItems)
            {
                state.Error(list.Items[i], "sheet.too-many-of", "wiring", SheetLimits.AllItems);
                break;
            }

            if (list.Items[i] is not SheetText text)
            {
                state.Error(list.Items[i], "sheet.path-not-text");
            }
            else if (Path(text, paths.Count, state, names) is { } path)
            {
                paths.Add(path);
                total += path.Items.Length;
            }
        }

        return paths.ToImmutable();
    }

    /// <summary>Key of a path's item in the positions.</summary>
    public static string[] Key(int path, int item) =>
        ["wiring", path.ToString(CultureInfo.InvariantCulture), item.ToString(CultureInfo.InvariantCulture)];

    private static WiringPath? Path(SheetText text, int number, ReadingState state, HashSet<string> names)
    {
        state.Positions.Add(Key(number, 0).AsSpan(0, 2), text.Position, text.Position);
        foreach (var other in OtherArrows)
        {
            if (text.Value.IndexOf(other, StringComparison.Ordinal) is var found and >= 0)
            {
                state.Error(state.Within(text, found), "sheet.other-arrow", other);
                return null;
            }
        }

        var items = ImmutableArray.CreateBuilder<PathItem>();
        var failed = false;
        var start = 0;
        for (var count = 0; start <= text.Value.Length; count++)
        {
            var end = text.Value.IndexOf(Arrow, start, StringComparison.Ordinal);
            end = end < 0 ? text.Value.Length : end;
            var piece = text.Value[start..end];
            var item = piece.Trim();
            var at = state.Within(text, start + piece.Length - piece.TrimStart().Length);
            state.Positions.Add(Key(number, count), at, at);
            if (count == SheetLimits.PathItems)
            {
                state.Error(at, "sheet.path-too-long", SheetLimits.PathItems);
                return null;
            }

            if (Item(item, at, state, names) is { } read)
            {
                items.Add(read);
            }
            else
            {
                failed = true;
            }

            start = end + Arrow.Length;
        }

        if (!failed && items.Count < 2)
        {
            state.Error(text, "sheet.path-too-short");
            return null;
        }

        return failed ? null : new WiringPath(items.ToImmutable());
    }

    private static PathItem? Item(string item, SheetPosition at, ReadingState state, HashSet<string> names)
    {
        if (item.Length == 0)
        {
            state.Error(at, "sheet.path-gap");
            return null;
        }

        if (WireText.IsWire(item))
        {
            if (!WireText.TryParse(item, out var wire, out var problem))
            {
                state.Add(new SheetProblem(ProblemSeverity.Error, at.Line, at.Column, problem!));
                return null;
            }

            if (wire!.Name is { } name && !names.Add(name))
            {
                state.Error(at, "sheet.wire-name-twice", name);
            }

            return wire;
        }

        var terminal = TerminalName.Parse(item);
        var named = item.Contains('.', StringComparison.Ordinal);
        if (!SheetNames.IsPart(terminal.Part) || (named && !SheetNames.IsTerminal(terminal.Name)))
        {
            state.Error(at, "sheet.bad-item", item);
            return null;
        }

        return new PathPart(terminal.Part, named ? terminal.Name : null);
    }
}
