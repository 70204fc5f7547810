using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing;

/// <summary>
/// Draws a circuit as one self-contained SVG: feed at the top, ground at the bottom. Deterministic: the same circuit and
/// options give the same text on every machine. Every part is a group with <c>data-part</c>, every wire one with
/// <c>data-wire</c>, every terminal one with <c>data-terminal</c>.
/// </summary>
public static class CircuitDrawing
{
    /// <summary>Lays out and draws.</summary>
    public static string Svg(Circuit circuit, DrawingOptions? options = null) => Svg(Lay(circuit), options);

    /// <summary>Lays out once, for many drawings of the same circuit.</summary>
    public static CircuitLayout Lay(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        return CircuitLayout.Of(circuit);
    }

    /// <summary>Draws what has been laid out.</summary>
    public static string Svg(CircuitLayout layout, DrawingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(layout);
        return CircuitSvg.Draw(layout, options ?? DrawingOptions.Default);
    }
}
