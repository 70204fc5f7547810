using System.Collections.Immutable;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets;

/// <summary>
/// Reads circuit sheets (<c>docs/sheet-format.md</c>). Never throws on what a text says: every mistake is a problem
/// with its line and column, and as many as can be found are found in one reading.
/// </summary>
public static class SheetReader
{
    /// <summary>The version of the format this reader knows.</summary>
    public const int Version = 1;

    /// <summary>Reads a sheet. There is a circuit exactly if no problem is an error.</summary>
    /// <exception cref="ArgumentNullException">No text at all.</exception>
    public static SheetReading Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var state = new ReadingState(text.Length > 0 && text[0] == '\ufeff' ? text[1..] : text);
        var circuit = SheetTreeReader.Read(state) switch
        {
            SheetMap map => Circuit(map, state),
            { } other => Refused(state, other.Position),
            null => state.ErrorCount == 0 ? Refused(state, new SheetPosition(1, 1)) : null,
        };
        return new SheetReading(circuit, state.Problems(), state.Positions);
    }

    private static Circuit? Refused(ReadingState state, SheetPosition at)
    {
        state.Error(at, "sheet.not-a-sheet");
        return null;
    }

    private static Circuit? Circuit(SheetMap top, ReadingState state)
    {
        var map = new MapReader(top, top, "sheet", [], state);
        if (map.Entry("sheet") is null)
        {
            map.Missing("sheet", "sheet: 1");
        }
        else if (map.Text("sheet") is { } version && version != "1")
        {
            state.Error(map.Entry("sheet")!.Value.Value, "sheet.unknown-version", version, Version);
        }

        if (map.Entry("title") is null)
        {
            map.Missing("title", "title: Pump feed");
        }

        var title = map.Text("title") ?? "";

        var summary = map.Text("summary");
        var cautions = map.Texts("cautions");
        var conditions = Each(map, "conditions", "condition", SurroundingsReader.Condition);
        var places = Each(map, "places", "place", SurroundingsReader.Place);
        var complaints = Each(map, "complaints", "complaint", SurroundingsReader.Complaint);
        var parts = new PartReader(state);
        if (map.Entry("parts") is null)
        {
            map.Missing("parts", "parts:");
        }
        else if (map.Inner("parts", "parts") is { } partMap)
        {
            parts.Read(partMap);
        }

        var paths = Paths(map, state);
        map.Finish();
        var draft = new CircuitDraft(
            title, ConnectorSides.Complete(parts.Parts, paths), paths, places, conditions, complaints, cautions, summary);
        return Build(draft, parts.Broken, state);
    }

    private static Circuit? Build(
        CircuitDraft draft, IReadOnlySet<string> broken, ReadingState state)
    {
        var report = new LintReport(state.Positions);
        ReferenceRules.Check(draft, broken, report);
        foreach (var problem in report.Problems.Where(p => p.Line > 0))
        {
            // Without a line it is about a section that is missing, and that has been said.
            state.Add(problem);
        }

        if (!draft.Parts.OfType<Battery>().Any())
        {
            return null;
        }

        var built = CircuitBuilder.Build(draft);
        foreach (var problem in built.Problems)
        {
            var about = problem.Message.Arguments.FirstOrDefault() as string;
            if (state.IsFull || (about is not null && broken.Contains(about)))
            {
                continue;
            }

            var at = state.Positions.OfKey(WiringReader.Key(problem.Path, problem.Item));
            if (problem.Message.Code == "wiring.unknown-part")
            {
                state.Error(at, "sheet.unknown-part", about!, Spelling.Hint(about!, draft.Parts.Select(p => p.Id)));
            }
            else
            {
                state.Error(at, problem.Message.Code, [.. problem.Message.Arguments]);
            }
        }

        return state.ErrorCount == 0 ? built.Circuit : null;
    }

    private static ImmutableArray<WiringPath> Paths(MapReader map, ReadingState state)
    {
        switch (map.Entry("wiring"))
        {
            case null:
                map.Missing("wiring", "wiring:");
                return [];
            case { Value: SheetList list }:
                return WiringReader.Read(list, state);
            case { } other:
                state.Error(other.Value, "sheet.want-paths");
                return [];
        }
    }

    private static ImmutableArray<T> Each<T>(MapReader map, string key, string what, Func<MapReader, string, T> read)
    {
        if (map.Inner(key, key) is not { } all)
        {
            return [];
        }

        var entries = all.Rest();
        if (entries.Count > SheetLimits.Others)
        {
            map.State.Error(all.Map, "sheet.too-many-of", key, SheetLimits.Others);
        }

        var found = ImmutableArray.CreateBuilder<T>();
        foreach (var entry in entries.Take(SheetLimits.Others))
        {
            if (all.Of(entry, $"{what} {entry.Key.Value}") is { } inner)
            {
                found.Add(read(inner, entry.Key.Value));
                inner.Finish();
            }
        }

        return found.ToImmutable();
    }
}
