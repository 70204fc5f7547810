using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Layout;
using Halfsplit.Drawing.Schematic;

namespace Halfsplit.Drawing;

/// <summary>A circuit with a place on the page for every part, wire and text. Immutable; made by <see cref="CircuitDrawing.Lay"/>.</summary>
public sealed class CircuitLayout
{
    private const double TrackGap = 9, ChannelMargin = 8, FrameMargin = 3, StraightMargin = 4;

    private readonly List<double> _channelTops = [], _rowTops = [];

    private CircuitLayout(Circuit circuit, Grid grid, List<Frame> frames, List<List<Net>> channels)
    {
        (Circuit, Grid, Frames, Channels) = (circuit, grid, frames, channels);
        Stack();
        Width = grid.Boxes.Select(b => b.X + b.Width).DefaultIfEmpty(0).Max() + Frame.Margin;
        Crossings = Layout.WireCrossings.Count(this);
    }

    public Circuit Circuit { get; }

    /// <summary>Pixels of the circuit itself, without title and key.</summary>
    public double Width { get; }

    /// <summary>Pixels of the circuit itself, without title and key.</summary>
    public double Height { get; private set; }

    /// <summary>Places where wires cross that are not joined.</summary>
    public int Crossings { get; }

    internal Grid Grid { get; }

    internal List<Frame> Frames { get; }

    internal List<List<Net>> Channels { get; }

    internal static CircuitLayout Of(Circuit circuit)
    {
        var graph = GraphBuilder.Build(circuit);
        Rows.Assign(graph);
        var grid = new Grid(graph);
        new RowOrder(grid).Apply();
        var frames = Layout.Frames.Find(grid);
        foreach (var box in grid.Boxes)
        {
            box.Arrange();
        }

        Columns.Place(grid);
        var channels = grid.Channels.Select(ChannelNets.Of).ToList();
        return new CircuitLayout(circuit, grid, frames, channels);
    }

    /// <summary>Height of a trunk on the page.</summary>
    internal double TrackY(int channel, int track) => _channelTops[channel] + ChannelMargin + (TrackGap * track);

    /// <summary>Top and bottom of a row, frames included.</summary>
    internal (double From, double To) RowBand(int row) =>
        (_rowTops[row], _rowTops[row] + RowHeight(row));

    private double RowHeight(int row) => Grid.Rows[row].Max(b => b.Height) + (2 * FrameMargin);

    private void Stack()
    {
        var y = 0.0;
        for (var row = 0; row < Grid.Rows.Count; row++)
        {
            var height = RowHeight(row);
            _rowTops.Add(y);
            foreach (var box in Grid.Rows[row])
            {
                box.Y = box == Grid.Graph.Rail ? y + FrameMargin : Math.Round(y + ((height - box.Height) / 2));
            }

            y += height;
            if (row < Channels.Count)
            {
                _channelTops.Add(y);
                var tracks = ChannelRouter.Route(Channels[row]);
                y += tracks == 0 ? StraightMargin : (2 * ChannelMargin) + ((tracks - 1) * TrackGap);
            }
        }

        Height = y;
    }
}
