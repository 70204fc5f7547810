using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>
/// A fuse and relay box, one of its slots marked: as it looks where the sheet describes its grid, else the slots that the sheet
/// knows in the order of their names.
/// </summary>
public static class FuseBox
{
    private const double Cell = 74, CellHeight = 44, Margin = 14, Gap = 6;

    /// <param name="circuit">The circuit whose fuses and relays lie in the box.</param>
    /// <param name="place">The place that the box is.</param>
    /// <param name="marked">The part whose slot is marked.</param>
    /// <param name="options">Theme, words and ids; layers do not count.</param>
    /// <exception cref="ArgumentException">No part with a slot is in this place.</exception>
    public static string Svg(Circuit circuit, string place, string marked, DrawingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        options ??= DrawingOptions.Default;
        var parts = circuit.Parts.Where(p => p.Notes.Place == place && p.Notes.Slot is not null).ToList();
        if (parts.Count == 0)
        {
            throw new ArgumentException($"No part with a slot is in the place {place}.", nameof(place));
        }

        var found = circuit.Find(marked);
        var grid = circuit.FindPlace(place)?.Grid;
        var seat = SlotWords.Seat(circuit, found);
        var rows = seat is null ? Listed(parts) : Seen(grid!, parts);
        var pen = SmallDrawing.Pen(options);
        var width = Math.Max(280, (rows.Max(r => r.Count) * (Cell + Gap)) + (2 * Margin) + Gap);
        pen.Text("hs-identity", Margin, Margin + 10, place);
        var top = Margin + 20;
        var height = (rows.Count * (CellHeight + Gap)) + Gap;
        pen.Rect("hs-body hs-module", Margin, top, width - (2 * Margin), height, 8);
        for (var row = 0; row < rows.Count; row++)
        {
            for (var i = 0; i < rows[row].Count; i++)
            {
                if (rows[row][i] is { } slot)
                {
                    Draw(pen, options.Formats, slot, slot.Part?.Id == marked, Margin + Gap + (i * (Cell + Gap)), top + Gap + (row * (CellHeight + Gap)));
                }
            }
        }

        var y = top + height + 18;
        if (seat is { } where)
        {
            y += SmallDrawing.Note(pen, options.Texts.Say(new Message("drawing.box-seat", marked, SlotWords.Say(where))), Margin, y, width - (2 * Margin));
        }

        var note = (seat, grid?.Seen) switch
        {
            (null, _) => new Message("drawing.box-note"),
            (_, { } from) => new Message("drawing.box-seen-from", from),
            _ => new Message("drawing.box-seen"),
        };
        y += SmallDrawing.Note(pen, options.Texts.Say(note), Margin, y, width - (2 * Margin));
        var title = found?.Notes.Slot is { } own ? options.Texts.Say(new Message("drawing.box-title", place, own, marked)) : place;
        var described = string.Join(", ", rows.SelectMany(r => r).OfType<BoxSlot>().Where(s => s.Part is not null).Select(s => $"{s.Name}: {s.Part!.Id}"));
        return SmallDrawing.Document(
            options, "box", title, seat is { } at ? $"{options.Texts.Say(new Message("drawing.box-seat", marked, SlotWords.Say(at)))} {described}" : described,
            width, y, pen);
    }

    /// <summary>A slot with the part in it that the sheet knows; null stands for a gap.</summary>
    private sealed record BoxSlot(string Name, Part? Part);

    private static List<List<BoxSlot?>> Seen(BoxGrid grid, List<Part> parts) =>
    [
        .. grid.Rows.Select(row => row.Select(slot => slot switch
        {
            BoxGrid.Gap => null,
            BoxGrid.Nameless => new BoxSlot("", null),
            _ => new BoxSlot(slot, parts.Find(p => p.Notes.Slot == slot)),
        }).ToList()),
    ];

    private static List<List<BoxSlot?>> Listed(List<Part> parts) =>
    [
        .. parts.GroupBy(p => Letters(p.Notes.Slot!)).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.OrderBy(p => Number(p.Notes.Slot!)).ThenBy(p => p.Notes.Slot, StringComparer.Ordinal)
                .Select(p => (BoxSlot?)new BoxSlot(p.Notes.Slot!, p)).ToList()),
    ];

    private static void Draw(Pen pen, CultureInfo formats, BoxSlot slot, bool isMarked, double x, double y)
    {
        if (slot.Part is null)
        {
            // Nothing that the sheet knows of sits here; it is there to be counted.
            pen.Rect("hs-outline", x, y, Cell, CellHeight, 4);
            pen.Text("hs-number", x + 5, y + 12, slot.Name);
            return;
        }

        pen.Open("hs-part", ("data-part", slot.Part.Id));
        pen.Rect(isMarked ? "hs-body hs-live" : "hs-body", x, y, Cell, CellHeight, 4);
        pen.Text("hs-number", x + 5, y + 12, slot.Name);
        pen.Text("hs-identity hs-middle", x + (Cell / 2), y + 26, slot.Part.Id);
        var value = slot.Part switch
        {
            Fuse f => f.RatingAmps.ToString("0.##", formats) + " A",
            Breaker b => b.RatingAmps.ToString("0.##", formats) + " A",
            _ => "",
        };
        pen.Text("hs-value hs-middle", x + (Cell / 2), y + 38, value);
        if (isMarked)
        {
            // An arrow as well as the thick outline: it can't be overlooked in print.
            pen.Path("hs-solid", $"M{Pen.N(x + Cell - 4)} {Pen.N(y + 4)}v10l-10 -10z");
        }

        pen.Close();
    }

    private static string Letters(string slot) => string.Concat(slot.TakeWhile(c => !char.IsAsciiDigit(c)));

    private static int Number(string slot) =>
        int.TryParse(string.Concat(slot.SkipWhile(c => !char.IsAsciiDigit(c)).TakeWhile(char.IsAsciiDigit)), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number : int.MaxValue;
}
