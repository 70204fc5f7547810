using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>A fuse and relay box as a grid of the slots that a sheet knows, one of them marked.</summary>
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
        var rows = circuit.Parts.Where(p => p.Notes.Place == place && p.Notes.Slot is not null)
            .GroupBy(p => Letters(p.Notes.Slot!)).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.OrderBy(p => Number(p.Notes.Slot!)).ThenBy(p => p.Notes.Slot, StringComparer.Ordinal).ToList())
            .ToList();
        if (rows.Count == 0)
        {
            throw new ArgumentException($"No part with a slot is in the place {place}.", nameof(place));
        }

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
                Draw(pen, options.Formats, rows[row][i], rows[row][i].Id == marked, Margin + Gap + (i * (Cell + Gap)), top + Gap + (row * (CellHeight + Gap)));
            }
        }

        var y = top + height + 18;
        y += SmallDrawing.Note(pen, options.Texts.Say("drawing.box-note"), Margin, y, width - (2 * Margin));
        var found = circuit.Find(marked);
        var title = found?.Notes.Slot is { } slot ? options.Texts.Say(new Message("drawing.box-title", place, slot, marked)) : place;
        return SmallDrawing.Document(
            options, "box", title, string.Join(", ", rows.SelectMany(r => r).Select(p => $"{p.Notes.Slot}: {p.Id}")), width, y, pen);
    }

    private static void Draw(Pen pen, CultureInfo formats, Part part, bool isMarked, double x, double y)
    {
        pen.Open("hs-part", ("data-part", part.Id));
        pen.Rect(isMarked ? "hs-body hs-live" : "hs-body", x, y, Cell, CellHeight, 4);
        pen.Text("hs-number", x + 5, y + 12, part.Notes.Slot!);
        pen.Text("hs-identity hs-middle", x + (Cell / 2), y + 26, part.Id);
        var value = part switch
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
