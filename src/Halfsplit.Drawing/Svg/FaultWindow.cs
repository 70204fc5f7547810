using Halfsplit.Drawing.Layout;
using Halfsplit.Drawing.Schematic;

namespace Halfsplit.Drawing.Svg;

/// <summary>The part of a drawing that is shown round a fault: whole rows, and no name cut through at its sides.</summary>
internal static class FaultWindow
{
    /// <summary>Room round the rows: the mark of a fault stands out that far, and no text of the next row comes so near.</summary>
    private const double Rim = 6;

    /// <param name="size">No wider than this, and no higher, unless the row of the fault alone is: that is shown whole.</param>
    /// <returns>In the coordinates of the layout.</returns>
    public static (double X, double Y, double Width, double Height) Of(
        CircuitLayout layout, Box fault, (double Width, double Height) size)
    {
        var (first, last) = RowsRound(layout, fault, size.Height - (2 * Rim));
        var (top, bottom) = (layout.RowBand(first).From, layout.RowBand(last).To);
        var width = Math.Min(size.Width, Math.Ceiling(layout.Width));
        return (Left(layout, fault, first, last, width), top - Rim, width, bottom - top + (2 * Rim));
    }

    /// <summary>As many rows above and below as there is room for, the nearer side first.</summary>
    private static (int First, int Last) RowsRound(CircuitLayout layout, Box fault, double height)
    {
        var (first, last) = (fault.Row, fault.Row);
        var middle = fault.Y + (fault.Height / 2);
        while (true)
        {
            var isRoomAbove = first > 0 && layout.RowBand(last).To - layout.RowBand(first - 1).From <= height;
            var isRoomBelow = last + 1 < layout.Grid.Rows.Count && layout.RowBand(last + 1).To - layout.RowBand(first).From <= height;
            if (!isRoomAbove && !isRoomBelow)
            {
                return (first, last);
            }

            var isAboveNearer = middle - layout.RowBand(first).From <= layout.RowBand(last).To - middle;
            if (isRoomAbove && (isAboveNearer || !isRoomBelow))
            {
                first--;
            }
            else
            {
                last++;
            }
        }
    }

    /// <summary>The left edge: with the fault in the middle, or as near to that as cuts the fewest symbols and names.</summary>
    private static double Left(CircuitLayout layout, Box fault, int first, int last, double width)
    {
        var spans = layout.Grid.Boxes.Where(b => b.Row >= first && b.Row <= last && b != layout.Grid.Graph.Rail)
            .Select(b => (From: b.X, To: b.X + b.Width))
            .Concat(layout.Frames.Where(f => f.Boxes[0].Row >= first && f.Boxes[0].Row <= last)
                .Select(f => (From: f.Boxes[0].X - f.Pad, To: f.Boxes[0].X)))
            .ToList();
        var (least, most) = (-Rim, Math.Max(-Rim, Math.Ceiling(layout.Width) + Rim - width));
        var wanted = Math.Clamp(fault.X + (fault.Width / 2) - (width / 2), least, most);
        return spans
            .SelectMany(s => (double[])[s.From - Rim, s.To + 1, s.From - 1 - width, s.To + Rim - width])
            .Where(x => x <= fault.X - Rim && x + width >= fault.X + fault.Width + Rim)
            .Append(wanted)
            .Select(x => Math.Clamp(x, least, most))
            .OrderBy(x => spans.Count(s => IsCut(s, x) || IsCut(s, x + width)))
            .ThenBy(x => Math.Abs(x - wanted))
            .First();
    }

    private static bool IsCut((double From, double To) span, double edge) => edge > span.From && edge < span.To;
}
