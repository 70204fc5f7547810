using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>A connector looked at from its face: its cavities with the wires' colours, and the ones to touch.</summary>
public static class ConnectorFace
{
    private const double Cell = 62, CellHeight = 58, Margin = 14;
    private const int MostInARow = 6;

    /// <param name="circuit">The circuit of the connector.</param>
    /// <param name="connector">Its name.</param>
    /// <param name="red">Where the red lead goes; any other part's terminal is left out.</param>
    /// <param name="black">Where the black lead goes.</param>
    /// <param name="options">Theme, words and ids; layers do not count.</param>
    /// <exception cref="ArgumentException">The circuit has no connector of this name.</exception>
    public static string Svg(
        Circuit circuit, string connector, TerminalName? red = null, TerminalName? black = null, DrawingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        options ??= DrawingOptions.Default;
        if (circuit.Find(connector) is not Connector part)
        {
            throw new ArgumentException($"The circuit has no connector {connector}.", nameof(connector));
        }

        var cavities = circuit.Cavities(connector).OrderBy(NumberOf).ThenBy(c => c, StringComparer.Ordinal).ToList();
        var columns = Math.Clamp(cavities.Count > 3 ? (cavities.Count + 1) / 2 : cavities.Count, 1, MostInARow);
        var rows = Math.Max(1, (cavities.Count + columns - 1) / columns);
        var pen = SmallDrawing.Pen(options);
        var width = Math.Max(260, (columns * Cell) + 24 + (2 * Margin));
        var heading = part.Notes.Name is { } name ? $"{part.Id} – {name}" : part.Id;
        pen.Text("hs-identity", Margin, Margin + 10, heading);
        var top = Margin + 22;
        pen.Rect("hs-body hs-module", Margin, top, (columns * Cell) + 24, (rows * CellHeight) + 12, 10);
        for (var i = 0; i < cavities.Count; i++)
        {
            Draw(pen, circuit, connector, cavities[i], Margin + 12 + (Cell * (i % columns)), top + 8 + (CellHeight * (i / columns)), red, black);
        }

        var y = top + (rows * CellHeight) + 12 + 18;
        y += SmallDrawing.Note(pen, options.Texts.Say("drawing.face-note"), Margin, y, width - (2 * Margin));
        var touched = string.Join(' ', new[] { (red, "drawing.touch-red"), (black, "drawing.touch-black") }
            .Where(l => l.Item1?.Part == connector)
            .Select(l => options.Texts.Say(new Message(l.Item2, l.Item1!.Value.ToString()))));
        return SmallDrawing.Document(
            options, "face-" + connector, heading, $"{string.Join(", ", cavities)}. {touched}".Trim(), width, y, pen);
    }

    private static void Draw(
        Pen pen, Circuit circuit, string connector, string cavity, double x, double y, TerminalName? red, TerminalName? black)
    {
        pen.Open("hs-terminal", ("data-terminal", $"{connector}.{cavity}a"));
        pen.Rect("hs-body", x + 8, y, 26, 26, 4);
        pen.Text("hs-identity hs-middle", x + 21, y + 17, cavity);
        var wire = circuit.Wires.FirstOrDefault(w => IsAt(w.From) || IsAt(w.To));
        if (wire?.Spec.Colour is { } colour)
        {
            WireColours.Sleeve(pen, colour, x + 12, y + 29, 16);
            pen.Text("hs-wire-text", x + 19, y + 40, colour);
        }

        if (red is { } first && IsAt(first))
        {
            pen.Raw(KeyIcons.Lead(isRed: true, x + 36, y + 2, 8));
        }

        if (black is { } second && IsAt(second))
        {
            pen.Raw(KeyIcons.Lead(isRed: false, x + 36, y + 2, 8));
        }

        pen.Close();

        bool IsAt(TerminalName terminal) => terminal.Part == connector && terminal.Name.Length > 1 && terminal.Name[..^1] == cavity;
    }

    private static int NumberOf(string cavity) =>
        int.TryParse(cavity, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : int.MaxValue;
}
