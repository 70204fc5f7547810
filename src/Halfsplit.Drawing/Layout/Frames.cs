using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;
using Halfsplit.Drawing.Symbols;

namespace Halfsplit.Drawing.Layout;

/// <summary>A place drawn as a frame round neighbours of one row that live in it.</summary>
/// <param name="Place">The place's name.</param>
/// <param name="Boxes">From left to right; at least two.</param>
/// <param name="Lines">The name, broken so that it fits the row's height when written upwards.</param>
internal sealed record Frame(string Place, List<Box> Boxes, List<string> Lines)
{
    public const double LineWidth = 11, Margin = 5;

    /// <summary>Room for the name at the left.</summary>
    public double Pad => (Lines.Count * LineWidth) + 6;
}

/// <summary>Finds the frames: where neighbours of one row live in one place, its name is written once.</summary>
internal static class Frames
{
    private const double LongestLine = 64;

    public static List<Frame> Find(Grid grid)
    {
        var frames = new List<Frame>();
        foreach (var row in grid.Rows)
        {
            for (var i = 0; i < row.Count;)
            {
                var first = i;
                while (++i < row.Count && row[first].Place is { } place && row[i].Place == place)
                {
                }

                if (i - first < 2)
                {
                    continue;
                }

                var lines = TextMeasure.Wrap(row[first].Place!, TextMeasure.Name, LongestLine);
                var frame = new Frame(row[first].Place!, row[first..i], lines);
                frame.Boxes.ForEach(b => b.IsFramed = true);
                frame.Boxes[0].FramePad = frame.Pad;
                frames.Add(frame);
            }
        }

        return frames;
    }
}
