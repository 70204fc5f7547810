using Halfsplit.Circuits.Model;

namespace Halfsplit.Drawing;

/// <summary>A circuit with a place on the page for every part, wire and text. Immutable; made by <see cref="CircuitDrawing.Lay"/>.</summary>
public sealed class CircuitLayout
{
    private CircuitLayout(Circuit circuit) => Circuit = circuit;

    public Circuit Circuit { get; }

    internal static CircuitLayout Of(Circuit circuit) => new(circuit);
}
