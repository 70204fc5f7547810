using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Schematic;

/// <summary>A wire on its way past a row of symbols.</summary>
internal sealed class RouteBox : Box
{
    public const double Room = 12;

    public override void Arrange()
    {
        (Width, Height) = (Room, 0);
        foreach (var port in Ports)
        {
            port.Offset = Room / 2;
        }
    }
}

/// <summary>A point where a wire turns back, because it joins two tops or two bottoms, or runs upwards.</summary>
internal sealed class BendBox : Box
{
    public override void Arrange()
    {
        (Width, Height) = (RouteBox.Room, 0);
        foreach (var port in Ports)
        {
            port.Offset = RouteBox.Room / 2;
        }
    }
}

/// <summary>The label of a wire: colour, gauge, and room for its amps and its odds.</summary>
internal sealed class LabelBox : Box
{
    /// <summary>The axis of the wire from the box's left edge.</summary>
    public const double Axis = 9;

    public const double LineHeight = 10.5, FirstLine = 10;

    private const string WidestAmps = "-888 mA";

    public LabelBox(Wire wire)
    {
        Wire = wire;
        var gauge = wire.Spec.Gauge;
        var guess = wire.Spec.GaugeGuessed ? "~" : "";
        Lines =
        [
            $"{wire.Spec.Colour ?? "?"}",
            gauge.AwgText is { } awg ? (FormattableString)$"{guess}AWG {awg}" : $"{guess}{gauge.SquareMillimetres:0.##} mm²",
        ];
    }

    public Wire Wire { get; }

    public IReadOnlyList<FormattableString> Lines { get; }

    public override void Arrange()
    {
        var text = Lines.Select(FormattableString.Invariant).Append(WidestAmps).Max(line => TextMeasure.Width(line, TextMeasure.Small));
        Width = Math.Ceiling(Axis + 9 + text);
        Height = FirstLine + (LineHeight * 3) + 4;
        foreach (var port in Ports)
        {
            port.Offset = Axis;
        }
    }
}
